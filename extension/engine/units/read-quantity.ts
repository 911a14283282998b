import type { Place, Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { plain, sameDimension, type Dimension } from './dimension.ts';
import type { Quantity, UnitSettings } from './quantity.ts';
import { readNumberAt } from './read-number.ts';
import { completingUnit } from './standard-units.ts';
import { tidied } from './tidy-text.ts';
import { unitProblem } from './unit-problems.ts';
import { unitOf, type Unit } from './unit-words.ts';
import { unitAfterNumber, wantedUnitFault } from './value-unit.ts';
import { exampleOf, wantedName } from './wanted.ts';

export interface ReadOptions {
  readonly settings: UnitSettings;
  /** What the cell holds; `any` or absent: whatever is written. */
  readonly wanted?: Dimension | 'any';
  /** Label a material is counted in (each, can, roll): `25 each` is the plain number 25. */
  readonly countWord?: string;
  /** The reader of files: a bare number where a dimension is wanted is a problem with a fix. */
  readonly strict?: boolean;
  /** Cell that the text stands in, for the problem and its fix. */
  readonly place?: Place;
}

export interface ReadQuantity {
  readonly value: Quantity;
  /** Canonical unit word; empty for a plain number. */
  readonly unit: string;
  /** The text as the file holds it: `5 1/2 in`. */
  readonly text: string;
  /** The unit was not written and is the job's. */
  readonly completed: boolean;
}

interface Term {
  readonly number: number;
  readonly text: string;
  readonly unit: Unit | undefined;
  readonly end: number;
}

/** Units that may be joined in one value, larger first. */
const joins = new Set(['ft in', 'lb oz', 'h min', 'min s']);

function termAt(text: string, offset: number, options: ReadOptions): Result<Term> {
  const example = exampleOf(options.wanted, options.settings);
  const number = readNumberAt(text, offset, example);
  if (number === undefined) return failed(unitProblem('value-not-a-number', { text, example }));
  if (!number.ok) return number;
  const unit = unitAfterNumber(text, number.value.end, { ...options, example });
  if (!unit.ok) return unit;
  const { unit: found, end } = unit.value;
  return ok({ number: number.value.value, text: number.value.text, unit: found, end });
}

function joinFault(
  where: { readonly text: string; readonly offset: number; readonly options: ReadOptions },
  before: Term,
  term: Result<Term>,
): Problem | undefined {
  const { text, offset, options } = where;
  const read = text.slice(0, offset).trim();
  const rest = text.slice(offset).trim();
  if (!term.ok && /^[\d.]/.test(rest)) return term.problem;
  const [first, second] = [before.unit?.word, term.ok ? term.value.unit?.word : undefined];
  if (first === undefined || second === undefined) {
    const example = exampleOf(options.wanted, options.settings);
    return unitProblem('value-left-over', { text, read, rest, example });
  }
  return joins.has(`${first} ${second}`)
    ? undefined
    : unitProblem('value-parts-out-of-order', { text, first, second });
}

function termsOf(text: string, start: number, options: ReadOptions): Result<readonly Term[]> {
  const terms: Term[] = [];
  let offset = start;
  while (terms.length === 0 || offset < text.length) {
    const term = termAt(text, offset, options);
    const before = terms.at(-1);
    const fault =
      before === undefined ? undefined : joinFault({ text, offset, options }, before, term);
    if (fault !== undefined) return failed(fault);
    if (!term.ok) return term;
    terms.push(term.value);
    const gap = /^(?: ?- ?| )(?=[\d.])/.exec(text.slice(term.value.end));
    offset = term.value.end + (gap?.[0].length ?? 0);
  }
  return ok(terms);
}

function sumOf(terms: readonly Term[], negative: boolean): ReadQuantity {
  const first = terms[0]?.unit;
  const sign = negative ? -1 : 1;
  const base = terms.reduce((sum, term) => sum + term.number * (term.unit?.factor ?? 1), 0);
  const text = terms
    .map((term) => (term.unit === undefined ? term.text : `${term.text} ${term.unit.word}`))
    .join(' ');
  return {
    value: { base: base * sign + (first?.offset ?? 0), dimension: first?.dimension ?? plain },
    unit: first?.word ?? '',
    text: negative ? `-${text}` : text,
    completed: false,
  };
}

function completedBare(bare: ReadQuantity, options: ReadOptions): Result<ReadQuantity> {
  const { wanted, settings } = options;
  if (wanted === undefined || wanted === 'any' || sameDimension(wanted, plain)) return ok(bare);
  if (options.strict === true && bare.value.base === 0 && wanted.tag !== 'point') {
    return ok({ ...bare, value: { base: 0, dimension: wanted } });
  }
  const word = completingUnit(wanted, settings);
  const unit = word === undefined ? undefined : unitOf(word, settings);
  const missing = {
    text: bare.text,
    wanted: wantedName(wanted),
    example: exampleOf(wanted, settings),
  };
  if (unit === undefined) return failed(unitProblem('unit-missing', missing));
  const text = `${bare.text} ${unit.word}`;
  if (options.strict === true) {
    const fix = { title: `Write ${text}`, place: options.place ?? { table: '' }, text };
    return failed(unitProblem('unit-missing', { ...missing, example: text }, { fixes: [fix] }));
  }
  const base = bare.value.base * unit.factor + unit.offset;
  return ok({ value: { base, dimension: wanted }, unit: unit.word, text, completed: true });
}

function read(text: string, options: ReadOptions): Result<ReadQuantity> {
  const example = exampleOf(options.wanted, options.settings);
  if (text === '') return failed(unitProblem('value-empty', { example }));
  const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
  const money = /^([$€£]) ?(.*)$/.exec(text.slice(sign.length));
  const plainText = money === null ? text : `${sign}${money[2] ?? ''} ${money[1] ?? ''}`;
  const terms = termsOf(plainText, sign.length, options);
  if (!terms.ok) return terms;
  const sum = sumOf(terms.value, sign.startsWith('-'));
  if (sum.unit === '') return completedBare(sum, options);
  const fault = wantedUnitFault(sum, options);
  return fault === undefined ? ok(sum) : failed(fault);
}

/**
 * Reads a value as a person types it or a file holds it: decimals, fractions, mixed fractions, feet
 * with inches, inch and foot marks, currency signs, a percent sign or a count word.
 *
 * @returns the value in base units with its canonical text, or a sentence on what to write instead
 * @example readQuantity('5-1/2"', { settings, wanted: length }) // 139.7 mm, '5 1/2 in'
 */
export function readQuantity(text: string, options: ReadOptions): Result<ReadQuantity> {
  const result = read(tidied(text), options);
  if (result.ok || options.place === undefined) return result;
  return failed({ ...result.problem, place: options.place });
}
