import { describe, expect, test, vi } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import type { Snapshot } from '../../../extension/engine/session/snapshot.ts';
import { answerEdits } from '../../../extension/engine/template/answer-asks.ts';
import type { Ask, AskAnswers } from '../../../extension/engine/template/ask.ts';
import { askProblems } from '../../../extension/engine/template/check-asks.ts';
import { jobFromTemplate } from '../../../extension/engine/template/make-job.ts';
import { ownTemplates, type Template } from '../../../extension/engine/template/template.ts';

vi.setConfig({ testTimeout: 120_000 });

interface Wish {
  readonly units?: 'in' | 'mm';
  /** Works out the skin as well, which takes its time. */
  readonly settled?: boolean;
}

function made(template: Template, answers: AskAnswers, wish: Wish = {}): Snapshot {
  const { units = 'in' } = wish;
  const start = { title: 'Trial', date: '2026-11-25', units, currency: 'USD', book: undefined };
  const begun = jobFromTemplate(template.text, start);
  if (!begun.ok) throw new Error(begun.problem.message);
  const reading = readFile(begun.value);
  const edits = answerEdits(reading, answers);
  if (!edits.ok) throw new Error(edits.problem.message);
  const applied = applyEdits(reading, edits.value);
  if (!applied.ok) throw new Error(applied.problem.message);
  const session = openSession(applied.value.reading);
  if (wish.settled === true) settleNow(session);
  return session.snapshot();
}

function told({ problems }: Snapshot, least: 'error' | 'warning'): readonly string[] {
  const severities = least === 'error' ? ['error'] : ['error', 'warning'];
  return problems
    .filter(({ problem }) => severities.includes(problem.severity))
    .map(({ problem, place }) => `${place?.row ?? ''} ${problem.code}: ${problem.message}`);
}

/** Answers at the borders of what a question takes. */
function borders({ id, form, least, most }: Ask): readonly AskAnswers[] {
  const words = form.kind === 'choice' ? form.choices : form.kind === 'yes-no' ? ['yes', 'no'] : [];
  return [least, most, ...words].filter((text) => text !== '').map((text) => ({ [id]: text }));
}

describe.each(ownTemplates().map((template) => [template.name, template] as const))(
  'the template “%s”',
  (_, template) => {
    test('asks of cells that are there, and offers what it takes', () => {
      expect(askProblems(template.reading)).toEqual([]);
      expect(template.asks.length).toBeGreaterThan(2);
      expect(template.help).not.toBe('');
    });

    test('gives a job that estimates whole and without problems as it is offered', () => {
      const snapshot = made(template, {}, { settled: true });
      expect(told(snapshot, 'warning')).toEqual([]);
      expect(snapshot.price.state).toBe('whole');
      expect(snapshot.reading.tables.get('ask') ?? []).toEqual([]);
    });

    test('in a shop that works in mm it offers mm and estimates as well', () => {
      const snapshot = made(template, {}, { units: 'mm' });
      expect(told(snapshot, 'warning')).toEqual([]);
      expect(snapshot.price.state).toBe('whole');
    });

    test('at every limit of its questions nothing is impossible', () => {
      const faults = template.asks.flatMap(borders).flatMap((answers) => {
        const snapshot = made(template, answers);
        const state = snapshot.price.state === 'whole' ? [] : [snapshot.price.state];
        const asked = JSON.stringify(answers);
        return [...told(snapshot, 'error'), ...state].map((fault) => `${asked} ${fault}`);
      });
      expect(faults).toEqual([]);
    });
  },
);
