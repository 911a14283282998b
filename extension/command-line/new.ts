import {
  answerEdits,
  applyEdits,
  jobFromTemplate,
  ownTemplates,
  readFile,
  readTemplate,
  type Ask,
  type Template,
} from '../engine/index.ts';
import { refused, unwritable } from './endings.ts';
import { problemLines } from './estimate-report.ts';
import { readJob } from './job.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

function limits({ least, most }: Ask): string {
  const words = [least === '' ? '' : `from ${least}`, most === '' ? '' : `to ${most}`];
  return words.filter((text) => text !== '').join(' ');
}

function choices({ form }: Ask): string {
  if (form.kind === 'choice') return form.choices.join(', ');
  return form.kind === 'yes-no' ? 'yes, no' : '';
}

function askLine(ask: Ask): string {
  const more = [choices(ask), limits(ask)].filter((text) => text !== '').join('; ');
  const offered = ask.start === '' ? '' : ` = ${ask.start}`;
  return `  ${ask.id}${offered}${more === '' ? '' : ` (${more})`}: ${ask.name}`;
}

/** The built-in templates with what each asks. */
export function templatesReport(): string {
  return ownTemplates()
    .map(({ word, name, help, asks }) =>
      [`${word}: ${name}. ${help}`, ...asks.map(askLine), ''].join('\n'),
    )
    .join('\n');
}

/** The same for programs. */
export function templatesJson(): object {
  return {
    format: 1,
    templates: ownTemplates().map(({ word, name, help, version, asks }) => ({
      template: word,
      name,
      help,
      version,
      asks: asks.map((ask) => ({
        id: ask.id,
        name: ask.name,
        help: ask.help,
        type: ask.form.kind,
        offered: ask.start,
        least: ask.least === '' ? null : ask.least,
        most: ask.most === '' ? null : ask.most,
        choices: ask.form.kind === 'choice' ? ask.form.choices : [],
      })),
    })),
  };
}

function found(name: string, world: World): Template | string {
  const own = ownTemplates();
  const known = own.find(
    (one) => one.word === name || one.name.toLowerCase() === name.toLowerCase(),
  );
  if (known !== undefined) return known;
  const text = world.read(name);
  if (text !== undefined) return readTemplate(text);
  const words = own.map(({ word }) => word).join(', ');
  return `There is no template ${name}, nor a file of that name. Built in are: ${words}.`;
}

function answersOf(texts: readonly string[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    texts.map((text) => {
      const at = text.indexOf('=');
      return [text.slice(0, at), text.slice(at + 1)];
    }),
  );
}

type NewRequest = Extract<ReuseRequest, { command: 'new' }>;

/** The text of the job, or a sentence why there is none. */
function jobText(
  template: Template,
  request: NewRequest,
): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly fault: string } {
  const { title, units, currency, book, date } = request;
  const begun = jobFromTemplate(template.text, {
    title: title ?? template.name,
    date: date ?? template.reading.head.get('date')?.text ?? '',
    units,
    currency,
    book,
  });
  if (!begun.ok) return { ok: false, fault: begun.problem.message };
  const reading = readFile(begun.value);
  const edits = answerEdits(reading, answersOf(request.answers));
  if (!edits.ok) return { ok: false, fault: edits.problem.message };
  const made = applyEdits(reading, edits.value);
  return made.ok
    ? { ok: true, text: made.value.reading.text }
    : { ok: false, fault: made.problem.message };
}

/** Writes a job from a template; its problems go to the other stream, as they are the job's own. */
export function newJobFile(request: NewRequest, world: World): ExitCode {
  const template = found(request.template, world);
  if (typeof template === 'string') return refused(template, world);
  const { out } = request;
  if (world.read(out) !== undefined)
    return refused(`${out} is there already; choose another name.`, world);
  const job = jobText(template, request);
  if (!job.ok) {
    world.err(`panelwright: ${job.fault}\n`);
    return exitCodes.problems;
  }
  if (!world.write(out, job.text)) return refused(unwritable(out), world);
  world.out(`${out}\n`);
  const read = readJob(out, {
    ...world,
    read: (file) => (file === out ? job.text : world.read(file)),
  });
  if (read !== undefined) world.err(problemLines(out, read.problems));
  return exitCodes.fine;
}
