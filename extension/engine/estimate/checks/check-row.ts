import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import {
  plain,
  sameDimension,
  temperatureDifference,
  type Dimension,
} from '../../units/dimension.ts';
import { dimensionName } from '../../units/dimension-names.ts';
import { percentText } from '../../units/percent-text.ts';
import type { Quantity, UnitSettings } from '../../units/quantity.ts';
import { comparedValues } from '../../units/same-value.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow, CellResult } from '../../workbook/answers.ts';
import { ruleSentence } from '../../workbook/rule-sentence.ts';
import { placeOf, wordIn } from '../cells.ts';
import { checkProblem } from './check-problems.ts';
import type { Check, CheckOutcome } from './check.ts';
import { judge, type Compared, type Judgement } from './judge.ts';

/** A check with what a person has to be told of it. */
export interface CheckedRow {
  readonly row: AnsweredRow;
  readonly check: Check;
  readonly problems: readonly Problem[];
}

export interface CheckContext {
  readonly book: Book;
  readonly settings: UnitSettings;
}

const columns = ['value', 'least', 'most', 'near'] as const;
type Column = (typeof columns)[number];

const columnWords: Readonly<Record<Column, string>> = {
  value: 'value',
  least: 'at least',
  most: 'at most',
  near: 'near',
};

type Figures = Partial<Record<Column, Quantity>>;

/** Why a check has nothing to say yet. */
interface Open {
  readonly why: string;
}

function figuresOf(row: AnsweredRow): Figures | Open {
  const figures: Figures = {};
  for (const column of columns) {
    const { result } = row.cell(column);
    if (result.state === 'no-answer') return { why: result.problem.message };
    if (result.state === 'blank') continue;
    if (result.value.kind !== 'quantity') {
      return { why: `${columnWords[column]} is no figure that could be compared.` };
    }
    figures[column] = { base: result.value.base, dimension: result.value.dimension };
  }
  return figures;
}

/** A difference of two temperatures is no temperature. */
function ofDifference(dimension: Dimension): Dimension {
  return dimension.tag === 'point' ? temperatureDifference : dimension;
}

function unlike(figures: Figures, value: Quantity, settings: UnitSettings): string | undefined {
  for (const column of ['least', 'most', 'near'] as const) {
    const figure = figures[column];
    if (figure === undefined) continue;
    const wanted = column === 'near' ? ofDifference(value.dimension) : value.dimension;
    if (sameDimension(figure.dimension, wanted)) continue;
    const shown = (one: Quantity): string =>
      `${showQuantity(one, settings).text} (${dimensionName(one.dimension)})`;
    return `${columnWords[column]} ${shown(figure)} cannot be compared with the value ${shown(value)}.`;
  }
  return undefined;
}

function comparedIn(row: AnsweredRow, settings: UnitSettings): Compared | Open {
  const figures = figuresOf(row);
  if ('why' in figures) return figures;
  const { value, least, most, near } = figures;
  if (value === undefined) return { why: 'its value is blank: say what is compared.' };
  if (least === undefined && most === undefined) {
    return { why: 'at least and at most are both blank: say what it must keep to.' };
  }
  const fault = unlike(figures, value, settings);
  if (fault !== undefined) return { why: fault };
  if (near !== undefined && near.base < 0) {
    return { why: `near is ${showQuantity(near, settings).text}: a margin is not below nothing.` };
  }
  return {
    value,
    ...(least === undefined ? {} : { least }),
    ...(most === undefined ? {} : { most }),
    ...(near === undefined ? {} : { near }),
  };
}

interface Told {
  readonly name: string;
  readonly text: (quantity: Quantity) => string;
}

function sentence({ name, text }: Told, compared: Compared, judgement: Judgement): string {
  const { outcome, side, limit, margin } = judgement;
  const value = text(compared.value);
  const wanted =
    side === 'least' ? `at least ${text(limit)} is wanted` : `at most ${text(limit)} is allowed`;
  const none = comparedValues(margin.base, 0) === 0;
  const room = none ? 'nothing' : text({ ...margin, base: Math.abs(margin.base) });
  if (outcome === 'fail') {
    return `${name}: ${value}, but ${wanted}: ${room} ${side === 'least' ? 'too little' : 'too much'}.`;
  }
  const only = outcome === 'near' && !none ? 'only ' : '';
  return `${name}: ${value}; ${wanted}, so ${only}${room} is to spare.`;
}

/** A check without a name of its own is called by its kind and what it looks at. */
function checkName(row: AnsweredRow, book: Book): string {
  const name = wordIn(row, 'name');
  if (name !== '') return name;
  const on = wordIn(row, 'on');
  return [book.kinds.get(row.kind)?.name ?? row.id, ...(on === '' ? [] : [`(${on})`])].join(' ');
}

function levelOf(row: AnsweredRow): Check['level'] {
  return wordIn(row, 'level') === 'should' ? 'should' : 'must';
}

/** What the rules of the kind say where they do not hold: somebody has to decide. */
function decisions(
  row: AnsweredRow,
  { book, settings }: CheckContext,
  value: string,
): readonly string[] {
  const known = (column: string): CellResult | string =>
    column === 'value' ? value : row.cell(column).result;
  return (book.kinds.get(row.kind)?.rules ?? []).flatMap(({ name, say }) => {
    const { result } = row.cell(`rule.${name}`);
    const holds = result.state !== 'value' || result.value.kind !== 'yes-no' || result.value.yes;
    return holds ? [] : [ruleSentence(say, known, settings)];
  });
}

function problemsOf(check: Check): readonly Problem[] {
  const { message, place, level } = check;
  const severity = level === 'must' ? 'error' : 'warning';
  switch (check.outcome) {
    case 'pass':
      return [];
    case 'near':
      return [checkProblem('check-near', { message }, { severity: 'note', place })];
    case 'decide':
      return [checkProblem('check-decide', { message }, { severity: 'note', place })];
    case 'fail':
      return [checkProblem('check-failed', { message }, { severity, place })];
    case 'no-answer':
      return [checkProblem('check-open', { message }, { severity: 'warning', place })];
  }
}

/** Works out one row of the checks sheet. */
export function checkRow(row: AnsweredRow, context: CheckContext): CheckedRow {
  const { book, settings } = context;
  const name = checkName(row, book);
  const base = {
    id: row.id,
    occurrence: row.occurrence,
    name,
    kind: row.kind,
    on: wordIn(row, 'on'),
    level: levelOf(row),
    place: placeOf(row, 'value'),
  };
  const made = (
    outcome: CheckOutcome,
    message: string,
    figures: Partial<Check> = {},
  ): CheckedRow => {
    const check: Check = { ...base, ...figures, outcome, message };
    return { row, check, problems: row.broken ? [] : problemsOf(check) };
  };
  const compared = comparedIn(row, settings);
  if ('why' in compared) return made('no-answer', `${name} cannot be checked: ${compared.why}`);
  const judgement = judge(compared);
  if (judgement === undefined) return made('no-answer', `${name} has no limit.`);
  // Shares read better in percent; the kind says so. Limits are kept to closer than panels are cut.
  const unit = book.kinds.get(row.kind)?.words;
  const fine = { ...settings, fraction: 32 } as const;
  const text = (quantity: Quantity): string =>
    unit === '%' && sameDimension(quantity.dimension, plain)
      ? percentText(quantity.base, 2)
      : showQuantity(quantity, fine, unit).text;
  const message = sentence({ name, text }, compared, judgement);
  const { value, least, most } = compared;
  const figures = {
    value,
    ...(least === undefined ? {} : { least }),
    ...(most === undefined ? {} : { most }),
    margin: judgement.margin,
  };
  const open = judgement.outcome === 'fail' ? [] : decisions(row, context, text(value));
  if (open.length > 0) return made('decide', [message, ...open].join(' '), figures);
  return made(judgement.outcome, message, figures);
}
