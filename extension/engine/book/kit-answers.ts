import { isReservedId, isWellFormedId } from '../job/reserved-words.ts';
import { problemMaker } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { angle, length, money, plain, type Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Kit, KitQuestion } from './book.ts';
import { shapeAnswer } from './shape-answer.ts';

const answerProblem = problemMaker({
  'answer-missing': '{label}: an answer is needed.',
  'answer-no-choice': '{label}: “{text}” is not offered; choose one of {choices}.',
  'answer-no-id':
    '{label}: “{text}” cannot begin an id; use small letters, digits and _, letter first, such as mid.',
  'answer-id-reserved':
    '{label}: “{text}” is a word with a meaning of its own in formulas; choose another, such as {text}_1.',
  'answer-other': '{label}: {message}',
});

/** Answers by question key, as a person typed or chose them; a key left out takes the start. */
export type KitAnswers = Readonly<Record<string, string>>;

/** What is wrong with the answer to one question. */
export interface AnswerProblem {
  readonly key: string;
  readonly message: string;
}

const usual: UnitSettings = { units: 'in', currency: 'USD' };

const dimensions: Partial<Record<KitQuestion['type'], Dimension>> = {
  number: plain,
  length,
  angle,
  money,
};

/** The text offered for a question in a job of these units; it may still hold `{other_key}`. */
export function kitStart(question: KitQuestion, settings: UnitSettings = usual): string {
  return settings.units === 'mm' ? (question.startMm ?? question.start) : question.start;
}

/** All keys with the text answered or offered, other answers filled in. */
export function filledAnswers(
  kit: Kit,
  answers: KitAnswers,
  settings: UnitSettings = usual,
): ReadonlyMap<string, string> {
  const own = new Map(
    kit.questions.map((question) => [
      question.key,
      (answers[question.key] ?? kitStart(question, settings)).trim(),
    ]),
  );
  return new Map([...own].map(([key, text]) => [key, filled(text, own)]));
}

/** `{key}` and `{key:stem}` replaced by answers; a key nobody asks for stays as it is. */
export function filled(template: string, answers: ReadonlyMap<string, string>): string {
  return template.replace(
    /\{([a-z][a-z0-9_]*)(:stem)?\}/g,
    (whole, key: string, stem: string | undefined) => {
      const answer = answers.get(key);
      if (answer === undefined) return whole;
      return stem === undefined ? answer : answer.replace(/_[^_]*$/, '');
    },
  );
}

function word(question: KitQuestion, text: string): Result<string> {
  const { label, type, of } = question;
  const choices = type === 'yes-no' ? ['yes', 'no'] : of;
  if (choices.includes(text)) return ok(text);
  return failed(answerProblem('answer-no-choice', { label, text, choices: choices.join(', ') }));
}

function id({ label }: KitQuestion, text: string): Result<string> {
  if (!isWellFormedId(text)) return failed(answerProblem('answer-no-id', { label, text }));
  return isReservedId('part', text)
    ? failed(answerProblem('answer-id-reserved', { label, text }))
    : ok(text);
}

function quantity(type: KitQuestion['type'], text: string, settings: UnitSettings): Result<string> {
  const wanted = dimensions[type];
  if (wanted === undefined) return ok(text);
  const read = readQuantity(text, { settings, wanted });
  return read.ok ? ok(read.value.text) : read;
}

function written(question: KitQuestion, text: string, settings: UnitSettings): Result<string> {
  const { label, type } = question;
  const settled = type === 'shape' ? shapeAnswer(text, settings) : quantity(type, text, settings);
  return settled.ok
    ? settled
    : failed(answerProblem('answer-other', { label, message: settled.problem.message }));
}

/** An answer as it is written in the file: `24 1/2"` becomes `24 1/2 in`, a bare 24 becomes `24 in`. */
export function settledAnswer(
  question: KitQuestion,
  text: string,
  settings: UnitSettings = usual,
): Result<string> {
  const { label, type, required } = question;
  if (text === '') return required ? failed(answerProblem('answer-missing', { label })) : ok('');
  if (type === 'choice' || type === 'yes-no') return word(question, text);
  if (type === 'id') return id(question, text);
  return text.startsWith('=') ? ok(text) : written(question, text, settings);
}

/** What is wrong with the answers, question by question; none when the kit can be written. */
export function kitProblems(
  kit: Kit,
  answers: KitAnswers,
  settings: UnitSettings = usual,
): readonly AnswerProblem[] {
  const texts = filledAnswers(kit, answers, settings);
  return kit.questions.flatMap((question) => {
    const settled = settledAnswer(question, texts.get(question.key) ?? '', settings);
    return settled.ok ? [] : [{ key: question.key, message: settled.problem.message }];
  });
}
