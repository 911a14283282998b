import type { CellValue, ValueType } from '../formula/value.ts';
import type { OutlineSource } from '../geometry/outline-files.ts';
import { readShape } from '../geometry/shape-text.ts';
import type { ColumnType } from '../job/column.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { suggestion } from '../formula/near-name.ts';
import { offWord } from './row-texts.ts';
import { placeOfCell, type Cell } from './row.ts';
import { workbookProblem } from './workbook-problems.ts';

/** What reading a literal needs to know of the job. */
export interface LiteralContext {
  readonly settings: UnitSettings;
  /** Finds outlines in the drawing files of the job. */
  readonly outlines: OutlineSource | undefined;
  /** Word in which the material of the cell is counted. */
  readonly countWord: string | undefined;
  /** Ids of the tables that a link may name; how often each. */
  readonly linkable: (tables: readonly string[], id: string) => number;
  readonly ids: (tables: readonly string[]) => Iterable<string>;
}

export interface Literal {
  readonly value: CellValue;
  readonly type: ValueType;
}

function quantity(
  cell: Cell,
  text: string,
  wanted: Extract<ColumnType, { kind: 'quantity' }>['dimension'],
  context: LiteralContext,
): Result<Literal> {
  const { settings, countWord } = context;
  const read = readQuantity(text, {
    settings,
    wanted,
    strict: true,
    place: placeOfCell(cell),
    ...(countWord === undefined ? {} : { countWord }),
  });
  if (!read.ok) return read;
  const { base, dimension } = read.value.value;
  const zero = base === 0 && wanted === 'any' && read.value.unit === '';
  return ok({
    value: { kind: 'quantity', base, dimension },
    type: zero ? { kind: 'zero' } : { kind: 'quantity', dimension },
  });
}

function yesNo(cell: Cell, text: string): Result<Literal> {
  const word = text.toLowerCase();
  const yes = ['yes', 'true'].includes(word);
  if (!yes && !['no', 'false'].includes(word)) {
    return failed(workbookProblem('yes-no-unknown', { column: cell.column, text }));
  }
  return ok({ value: { kind: 'yes-no', yes }, type: { kind: 'yes-no' } });
}

function choice(cell: Cell, text: string, choices: readonly string[]): Result<Literal> {
  if (choices.includes(text)) {
    return ok({ value: { kind: 'choice', word: text }, type: { kind: 'choice', choices } });
  }
  const details = { column: cell.column, text, choices: choices.join(', ') };
  return failed(workbookProblem('choice-unknown', details));
}

function link(
  cell: Cell,
  text: string,
  tables: readonly string[],
  context: LiteralContext,
): Result<Literal> {
  const literal: Literal = { value: { kind: 'link', id: text }, type: { kind: 'link', tables } };
  if (text === offWord && cell.column.endsWith('material')) return ok(literal);
  const count = context.linkable(tables, text);
  if (count === 1) return ok(literal);
  const details = { column: cell.column, text, tables: tables.join(' or ') };
  if (count > 1) return failed(workbookProblem('link-repeated', details));
  const near = suggestion(text, context.ids(tables));
  return failed(workbookProblem('link-unknown', { ...details, suggestion: near }));
}

function guessed(cell: Cell, text: string, context: LiteralContext): Result<Literal> {
  const read = /^[-+\d.]/.test(text) ? quantity(cell, text, 'any', context) : undefined;
  return read?.ok === true ? read : ok({ value: { kind: 'text', text }, type: { kind: 'text' } });
}

/** A constant may be a word that formulas choose by: `by_mass`. */
function constantWord(cell: Cell, text: string): Literal | undefined {
  const isWord = cell.row.table === 'constant' && /^[a-z]+(?:_[a-z0-9]+)+$/.test(text);
  if (!isWord) return undefined;
  return { value: { kind: 'choice', word: text }, type: { kind: 'choice', choices: [text] } };
}

function readAs(
  cell: Cell,
  text: string,
  type: ColumnType | undefined,
  context: LiteralContext,
): Result<Literal> {
  switch (type?.kind) {
    case undefined:
      return guessed(cell, text, context);
    case 'quantity': {
      const word = constantWord(cell, text);
      return word === undefined ? quantity(cell, text, type.dimension, context) : ok(word);
    }
    case 'yes-no':
      return yesNo(cell, text);
    case 'choice':
      return choice(cell, text, type.choices);
    case 'link':
      return link(cell, text, type.tables, context);
    case 'shape': {
      const { settings, outlines } = context;
      const read = readShape(text, {
        settings,
        strict: true,
        place: placeOfCell(cell),
        ...(outlines === undefined ? {} : { outlines }),
      });
      if (!read.ok) return read;
      return ok({ value: { kind: 'shape', shape: read.value.shape }, type: { kind: 'shape' } });
    }
    default:
      return ok({ value: { kind: 'text', text }, type: { kind: 'text' } });
  }
}

function placed(problem: Problem, cell: Cell): Problem {
  return { ...problem, place: placeOfCell(cell) };
}

/** The value that a cell's text spells, read by the type of its column, or what is wrong with it. */
export function readLiteral(
  cell: Cell,
  text: string,
  type: ColumnType | undefined,
  context: LiteralContext,
): Result<Literal> {
  const read = readAs(cell, text, type, context);
  return read.ok ? read : failed(placed(read.problem, cell));
}
