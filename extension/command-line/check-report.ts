import type { Check, CheckOutcome } from '../engine/index.ts';
import { checkJson } from './check-json.ts';
import { problemJson } from './estimate-json.ts';
import { problemLines } from './estimate-report.ts';
import type { ReadJob } from './job.ts';

const outcomes: readonly CheckOutcome[] = ['fail', 'decide', 'no-answer', 'near', 'pass'];

const words: Readonly<Record<CheckOutcome, string>> = {
  pass: 'pass',
  near: 'near',
  fail: 'FAIL',
  decide: 'decide',
  'no-answer': 'open',
};

const countWords: Readonly<Record<CheckOutcome, string>> = {
  pass: 'pass',
  near: 'near',
  fail: 'fail',
  decide: 'to decide',
  'no-answer': 'open',
};

/** How many checks came out how, the worst first: `1 fail, 2 near, 5 pass`. */
export function checkCounts(checks: readonly Check[]): string {
  return outcomes
    .flatMap((outcome) => {
      const count = checks.filter((check) => check.outcome === outcome).length;
      return count === 0 ? [] : [`${String(count)} ${countWords[outcome]}`];
    })
    .join(', ');
}

function checkLine(check: Check): string {
  const level = check.outcome === 'fail' && check.level === 'should' ? ' (should)' : '';
  return `  ${words[check.outcome].padEnd(6)} ${check.message}${level}\n`;
}

/** The checks of a job line by line, then its other problems. */
export function checkReport({ file, snapshot, problems }: ReadJob): string {
  const { checks } = snapshot;
  const others = problems.filter(({ code }) => !code.startsWith('check-'));
  const count = checks.length === 1 ? '1 check' : `${String(checks.length)} checks`;
  const head = checks.length === 0 ? '' : `${file}: ${count}: ${checkCounts(checks)}\n`;
  const tail = others.length === 0 ? `${file}: no problems\n` : problemLines(file, others);
  return head + checks.map(checkLine).join('') + tail;
}

/** What `check --json` prints for one file. */
export function checkFileJson(job: ReadJob): object {
  const { file, snapshot, problems } = job;
  return {
    file,
    checks: snapshot.checks.map((check) => checkJson(check, job)),
    problems: problems.map(problemJson),
  };
}
