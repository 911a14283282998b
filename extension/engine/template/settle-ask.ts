import { shapeAnswer } from '../book/shape-answer.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Ask, AskAnswers } from './ask.ts';
import { templateProblem } from './template-problems.ts';

/** What is wrong with the answer to one question. */
export interface AskFault {
  readonly id: string;
  readonly problem: Problem;
}

function baseOf(text: string, ask: Ask, settings: UnitSettings): number | undefined {
  if (ask.form.kind !== 'quantity') return undefined;
  const read = readQuantity(text, { settings, wanted: ask.form.dimension });
  return read.ok ? read.value.value.base : undefined;
}

function limited(
  ask: Ask,
  { base, text }: { readonly base: number; readonly text: string },
  settings: UnitSettings,
): Result<string> {
  const { name } = ask;
  const [least, most] = [baseOf(ask.least, ask, settings), baseOf(ask.most, ask, settings)];
  // What is written as the limit itself passes, whatever its unit does in the last digits.
  const near = 1e-9 * Math.max(1, Math.abs(base));
  if (least !== undefined && base < least - near)
    return failed(templateProblem('answer-below', { name, text, limit: ask.least }));
  if (most !== undefined && base > most + near)
    return failed(templateProblem('answer-above', { name, text, limit: ask.most }));
  return ok(text);
}

function quantity(ask: Ask, text: string, settings: UnitSettings): Result<string> {
  const { form, name } = ask;
  if (form.kind !== 'quantity') return ok(text);
  const read = readQuantity(text, { settings, wanted: form.dimension });
  if (!read.ok) {
    return failed(templateProblem('answer-unfit', { name, message: read.problem.message }));
  }
  return limited(ask, { base: read.value.value.base, text: read.value.text }, settings);
}

function word(ask: Ask, text: string, choices: readonly string[]): Result<string> {
  const found = choices.find((choice) => choice === text);
  const details = { name: ask.name, text, choices: choices.join(', ') };
  return found === undefined ? failed(templateProblem('answer-not-offered', details)) : ok(found);
}

function shape(ask: Ask, text: string, settings: UnitSettings): Result<string> {
  const read = shapeAnswer(text, settings);
  if (read.ok) return read;
  const { name } = ask;
  return failed(templateProblem('answer-unfit', { name, message: read.problem.message }));
}

const mayBeBlank: readonly string[] = ['text', 'date'];

/** An answer as it is written in the file, or what is wrong with it: form, dimension, limits. */
export function settledAsk(ask: Ask, typed: string, settings: UnitSettings): Result<string> {
  const text = typed.trim();
  const { form, name } = ask;
  if (text === '') {
    // What the template leaves blank may stay blank.
    const blank = mayBeBlank.includes(form.kind) || ask.start === '';
    return blank ? ok('') : failed(templateProblem('answer-needed', { name }));
  }
  switch (form.kind) {
    case 'quantity':
      return quantity(ask, text, settings);
    case 'choice':
      return word(ask, text, form.choices);
    case 'yes-no':
      return word(ask, text, ['yes', 'no']);
    case 'shape':
      return text.startsWith('=') ? ok(text) : shape(ask, text, settings);
    default:
      return ok(text);
  }
}

/** What is wrong with the answers, question by question; none where the job can be written. */
export function askFaults(
  asks: readonly Ask[],
  answers: AskAnswers,
  settings: UnitSettings,
): readonly AskFault[] {
  return asks.flatMap((ask) => {
    const settled = settledAsk(ask, answers[ask.id] ?? ask.start, settings);
    return settled.ok ? [] : [{ id: ask.id, problem: settled.problem }];
  });
}
