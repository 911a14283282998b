import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readUnitAt } from '../units/unit-words.ts';
import type { Step } from './expression.ts';
import { syntaxProblem } from './formula-problems.ts';
import { numberAt } from './number-token.ts';
import type { Token } from './token.ts';

export interface Tokens {
  /** Always ends with an `end` token. */
  readonly tokens: readonly Token[];
  readonly problems: readonly Problem[];
}

const space = /[\s\u00a0\u2007\u2009\u202f]+/y;
const name = /[\p{L}_][\p{L}\p{N}_]*(?:\.[\p{L}_][\p{L}\p{N}_]*)*/uy;
const twoWordUnit = /(?:sq|fl|cu)[ \u00a0]+[A-Za-z]/y;
const symbols = /<>|<=|>=|[-+*/^&=<>%(),;.]/y;
const text = /"(?:[^"]|"")*"/y;

/** Signs people write for an operator, with the operator. */
const otherSigns = new Map([
  ['\u2212', '-'],
  ['\u2013', '-'],
  ['×', '*'],
  ['÷', '/'],
]);

const hints = new Map([
  ['≤', '; write <='],
  ['≥', '; write >='],
  ['≠', '; write <>'],
  ['$', '; an amount of money is written with its code, such as 5USD'],
  ['€', '; an amount of money is written with its code, such as 5EUR'],
  ['£', '; an amount of money is written with its code, such as 5GBP'],
  ['[', '; rows are named by their id, such as base.length'],
  ['!', '; rows are named by their id, such as base.length'],
  [':', '; a list is written all(ring).wall'],
  ['{', '; a list is written all(ring).wall'],
  ["'", '; feet are written 2ft and text stands in double quotes'],
  ['“', '; text stands in straight quotes: "text"'],
  ['”', '; text stands in straight quotes: "text"'],
  ['½', '; write 1/2'],
  ['°', '; degrees are written 15deg, 70degF or 21degC'],
]);

function at(pattern: RegExp, whole: string, offset: number): string | undefined {
  pattern.lastIndex = offset;
  return pattern.exec(whole)?.[0];
}

function stepsOf(written: string, start: number): readonly Step[] {
  let offset = start;
  return written.split('.').map((word) => {
    const step = { word, span: { start: offset, end: offset + word.length } };
    offset += word.length + 1;
    return step;
  });
}

function nameAt(whole: string, start: number, settings: UnitSettings): Token | undefined {
  if (at(twoWordUnit, whole, start) !== undefined) {
    const found = readUnitAt(whole, start, settings);
    if (found !== undefined && !found.unit.word.includes('/')) {
      const span = { start, end: found.end };
      return { kind: 'name', steps: [{ word: found.unit.word, span }], span };
    }
  }
  const written = at(name, whole, start);
  if (written === undefined) return undefined;
  const span = { start, end: start + written.length };
  return { kind: 'name', steps: stepsOf(written, start), span };
}

function textAt(whole: string, start: number, problems: Problem[]): Token | undefined {
  if (whole[start] !== '"') return undefined;
  const written = at(text, whole, start);
  const end = written === undefined ? whole.length : start + written.length;
  const span = { start, end };
  if (written === undefined) {
    const open = whole.slice(start);
    problems.push(syntaxProblem('formula-text-open', { text: open, better: `${open}"` }, { span }));
    return { kind: 'text', text: open.slice(1), span };
  }
  return { kind: 'text', text: written.slice(1, -1).replaceAll('""', '"'), span };
}

function symbolAt(whole: string, start: number): Token | undefined {
  const sign = otherSigns.get(whole[start] ?? '');
  const symbol = sign ?? at(symbols, whole, start);
  if (symbol === undefined) return undefined;
  return { kind: 'symbol', symbol, span: { start, end: start + symbol.length } };
}

function strangeCharacter(whole: string, start: number): Problem {
  const character = String.fromCodePoint(whole.codePointAt(start) ?? 0);
  const hint = hints.get(character) ?? '; take it away';
  const span = { start, end: start + character.length };
  return syntaxProblem('formula-character', { character, hint }, { span });
}

/** Cuts a formula, from an offset after its `=`, into tokens; what cannot be read is left out. */
export function tokensOf(whole: string, start: number, settings: UnitSettings): Tokens {
  const tokens: Token[] = [];
  const problems: Problem[] = [];
  let offset = start;
  const next = (): Token | undefined => {
    const number = numberAt({ text: whole, settings, before: tokens.at(-1) }, offset);
    if (number?.problem !== undefined) problems.push(number.problem);
    return (
      number?.token ??
      nameAt(whole, offset, settings) ??
      textAt(whole, offset, problems) ??
      symbolAt(whole, offset)
    );
  };
  while (offset < whole.length) {
    offset += at(space, whole, offset)?.length ?? 0;
    if (offset >= whole.length) break;
    const token = next();
    if (token === undefined) {
      const problem = strangeCharacter(whole, offset);
      problems.push(problem);
      offset = problem.span?.end ?? offset + 1;
    } else {
      tokens.push(token);
      offset = token.span.end;
    }
  }
  const end = whole.length;
  return { tokens: [...tokens, { kind: 'end', span: { start: end, end } }], problems };
}
