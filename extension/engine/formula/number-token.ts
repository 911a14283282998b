import type { Problem, Span } from '../problems.ts';
import { plain } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { readUnitAt, unitOf, type Unit } from '../units/unit-words.ts';
import { syntaxProblem } from './formula-problems.ts';
import { isSymbol, type Token } from './token.ts';

interface Reading {
  readonly text: string;
  readonly settings: UnitSettings;
  readonly before: Token | undefined;
}

export interface NumberToken {
  readonly token: Token;
  readonly problem: Problem | undefined;
}

interface FoundUnit {
  readonly unit: Unit;
  readonly end: number;
}

const blanks = /[ \t\u00a0\u2007\u2009\u202f]*/y;
const numberPattern = /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const mixedTail = / (\d+)\/(\d+)(?![\d.])/y;
const hyphenTail = /-(\d+)\/(\d+)(?![\d.])/y;
const slashTail = /\/((?:\d+(?:\.\d*)?|\.\d+))/y;

const squares = new Map([
  ['in 2', 'sqin'],
  ['ft 2', 'sqft'],
  ['yd 2', 'sqyd'],
  ['mm 2', 'mm2'],
  ['cm 2', 'cm2'],
  ['m 2', 'm2'],
  ['in 3', 'cuin'],
  ['ft 3', 'cuft'],
  ['cm 3', 'cm3'],
  ['m 3', 'm3'],
]);

function matchAt(pattern: RegExp, text: string, offset: number): RegExpExecArray | undefined {
  pattern.lastIndex = offset;
  return pattern.exec(text) ?? undefined;
}

function afterBlanks(text: string, offset: number): number {
  return offset + (matchAt(blanks, text, offset)?.[0].length ?? 0);
}

/** `10in/min(2, 3)` is ten inches divided by a function, not inches a minute. */
function withoutFunction(found: FoundUnit, reading: Reading, start: number): FoundUnit | undefined {
  const { text, settings } = reading;
  if (text[afterBlanks(text, found.end)] !== '(') return found;
  const slash = text.indexOf('/', start);
  if (slash === -1 || slash >= found.end) return undefined;
  const unit = unitOf(text.slice(start, slash), settings);
  return unit === undefined ? undefined : { unit, end: slash };
}

function unitAfter(reading: Reading, end: number): FoundUnit | undefined {
  const start = afterBlanks(reading.text, end);
  const found = readUnitAt(reading.text, start, reading.settings);
  return found === undefined ? undefined : withoutFunction(found, reading, start);
}

function made(number: number, unit: Unit | undefined, span: Span, problem?: Problem): NumberToken {
  return { token: { kind: 'quantity', number, unit, span }, problem };
}

function ambiguous(
  reading: Reading,
  span: Span,
  ways: readonly [first: string, second: string],
): Problem {
  const text = reading.text.slice(span.start, span.end);
  return syntaxProblem('literal-ambiguous', { text, first: ways[0], second: ways[1] }, { span });
}

/** A unit, or an inch or foot mark, after the number that ends here. */
function markAfter(reading: Reading, end: number): string | undefined {
  const sign = reading.text[end];
  return sign === '"' || sign === "'" ? sign : undefined;
}

function markProblem(reading: Reading, start: number, end: number): Problem {
  const written = reading.text.slice(start, end);
  const inches = reading.text[end] === '"';
  const number = written.replace('-', ' ');
  const ways = inches
    ? ([`${number}in`, `"${written}"`] as const)
    : ([`${number}ft`, `${number}min`] as const);
  return ambiguous(reading, { start, end: end + 1 }, ways);
}

function powerProblem(reading: Reading, start: number, found: FoundUnit): Problem | undefined {
  const { text } = reading;
  const power = /^\s*\^\s*(\d+)/.exec(text.slice(found.end));
  if (power === null || found.unit.word === '%') return undefined;
  const literal = text.slice(start, found.end);
  const unitStart = literal.search(/[A-Za-z]/);
  const number = literal.slice(0, unitStart).trim();
  const exponent = power[1] ?? '';
  const named = squares.get(`${found.unit.word} ${exponent}`);
  const second =
    named === undefined ? `${number}*(1${found.unit.word})^${exponent}` : number + named;
  const span = { start, end: found.end + power[0].length };
  return ambiguous(reading, span, [`(${literal})^${exponent}`, second]);
}

function remainderProblem(reading: Reading, start: number, found: FoundUnit): Problem | undefined {
  if (found.unit.word !== '%') return undefined;
  const next = /^\s*(\d[\d.]*)/.exec(reading.text.slice(found.end));
  if (next === null) return undefined;
  const literal = reading.text.slice(start, found.end);
  const right = next[1] ?? '';
  const span = { start, end: found.end + next[0].length };
  return ambiguous(reading, span, [
    `${literal}*${right}`,
    `MOD(${literal.slice(0, -1).trim()}, ${right})`,
  ]);
}

function unknownUnit(reading: Reading, start: number, end: number): NumberToken | undefined {
  const { text, settings } = reading;
  const word = /^[ \u00a0]*[\p{L}][\p{L}\p{N}]*/u.exec(text.slice(end))?.[0];
  if (word === undefined) return undefined;
  const number = Number(text.slice(start, end));
  const read = readQuantity(text.slice(start, end + word.length), { settings });
  if (read.ok) return undefined;
  const { code } = read.problem;
  if (/^[ \u00a0]/.test(word) && code === 'unit-unknown') return undefined;
  const span = { start, end: end + word.length };
  return made(number, undefined, span, { ...read.problem, span });
}

function simpleNumber(reading: Reading, start: number, end: number): NumberToken {
  const number = Number(reading.text.slice(start, end));
  if (markAfter(reading, end) !== undefined) {
    return made(number, undefined, { start, end: end + 1 }, markProblem(reading, start, end));
  }
  const found = unitAfter(reading, end);
  if (found === undefined) {
    return unknownUnit(reading, start, end) ?? made(number, undefined, { start, end });
  }
  return withUnit(reading, { number, start }, found);
}

function withUnit(
  reading: Reading,
  written: { readonly number: number; readonly start: number },
  found: FoundUnit,
): NumberToken {
  const { number, start } = written;
  const problem = powerProblem(reading, start, found) ?? remainderProblem(reading, start, found);
  return made(number, found.unit, problem?.span ?? { start, end: found.end }, problem);
}

function topHeavy(reading: Reading, span: Span): Problem | undefined {
  const { text, settings } = reading;
  const read = readQuantity(text.slice(span.start, span.end), { settings });
  return read.ok ? undefined : { ...read.problem, span };
}

/** `1 3/8in`: whole, one space, fraction, unit. */
function mixedNumber(reading: Reading, start: number, end: number): NumberToken | undefined {
  const { text, settings } = reading;
  const tail = matchAt(mixedTail, text, end);
  if (tail === undefined || !/^\d+$/.test(text.slice(start, end))) return undefined;
  const whole = Number(text.slice(start, end));
  const number = whole + Number(tail[1]) / Number(tail[2]);
  const stop = end + tail[0].length;
  if (markAfter(reading, stop) !== undefined) {
    return made(number, undefined, { start, end: stop + 1 }, markProblem(reading, start, stop));
  }
  const found = unitAfter(reading, stop);
  const span = { start, end: found?.end ?? stop };
  if (found === undefined) {
    const details = { text: text.slice(start, stop), whole, fraction: tail[0].trim() };
    const more = { ...details, unit: settings.units };
    return made(number, undefined, span, syntaxProblem('literal-mixed-no-unit', more, { span }));
  }
  const fault = topHeavy(reading, span);
  return fault === undefined
    ? withUnit(reading, { number, start }, found)
    : made(number, found.unit, span, fault);
}

/** `5-1/2in`: five and a half inches, or half an inch taken from five? */
function hyphenNumber(reading: Reading, start: number, end: number): NumberToken | undefined {
  const { text } = reading;
  const tail = matchAt(hyphenTail, text, end);
  if (tail === undefined || !/^\d+$/.test(text.slice(start, end))) return undefined;
  const stop = end + tail[0].length;
  const number = Number(text.slice(start, end));
  if (markAfter(reading, stop) !== undefined) {
    return made(number, undefined, { start, end: stop + 1 }, markProblem(reading, start, stop));
  }
  const found = unitAfter(reading, stop);
  if (found === undefined) return undefined;
  const span = { start, end: found.end };
  const whole = text.slice(start, end);
  const fraction = text.slice(end + 1, found.end);
  const ways = [`${whole} ${fraction}`, `${whole} - ${fraction}`] as const;
  return made(number, found.unit, span, ambiguous(reading, span, ways));
}

/** `3/8in` as one literal; every other number before a number with a unit is refused. */
function slashNumber(reading: Reading, start: number, end: number): NumberToken | undefined {
  const { text } = reading;
  const tail = matchAt(slashTail, text, end);
  if (tail === undefined) return undefined;
  const stop = end + tail[0].length;
  const [top, bottom] = [text.slice(start, end), tail[1] ?? ''];
  const number = Number(top) / Number(bottom);
  if (markAfter(reading, stop) !== undefined) {
    return made(number, undefined, { start, end: stop + 1 }, markProblem(reading, start, stop));
  }
  const found = unitAfter(reading, stop);
  if (found === undefined) return undefined;
  const span = { start, end: found.end };
  const unit = text.slice(stop, found.end).trim();
  const refused = (ways: readonly [string, string]): NumberToken =>
    made(number, found.unit, span, ambiguous(reading, span, ways));
  if (found.unit.word === '%') {
    return refused([`${String(Number(number.toPrecision(12)))}%`, `${top}/(${bottom}%)`]);
  }
  if (isSymbol(reading.before, '/', '^')) {
    return refused([`(${top}/${bottom}${unit})`, `${top} / (${bottom}${unit})`]);
  }
  const proper = /^\d+$/.test(top) && /^\d+$/.test(bottom) && Number(top) < Number(bottom);
  if (!proper) return refused([`(${top}/${bottom})*1${unit}`, `${top}/(${bottom}${unit})`]);
  return withUnit(reading, { number, start }, found);
}

/**
 * The number at an offset with its unit, by the rules that keep fractions and divisions apart.
 * Undefined where no number stands.
 */
export function numberAt(reading: Reading, start: number): NumberToken | undefined {
  const digits = matchAt(numberPattern, reading.text, start)?.[0];
  if (digits === undefined) return undefined;
  const end = start + digits.length;
  return (
    mixedNumber(reading, start, end) ??
    hyphenNumber(reading, start, end) ??
    slashNumber(reading, start, end) ??
    simpleNumber(reading, start, end)
  );
}

/** Dimension of a number token: plain without a unit. */
export function tokenDimension(unit: Unit | undefined): Unit['dimension'] {
  return unit?.dimension ?? plain;
}
