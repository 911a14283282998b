import type { Shape } from '../geometry/shape.ts';
import { sameDimension, type Dimension } from '../units/dimension.ts';
import type { AnsweredRow } from '../workbook/answers.ts';

/** Base value of a cell of this dimension; undefined where it has no such answer. */
export function baseOf(row: AnsweredRow, column: string, dimension: Dimension): number | undefined {
  const { result } = row.cell(column);
  if (result.state !== 'value' || result.value.kind !== 'quantity') return undefined;
  return sameDimension(result.value.dimension, dimension) ? result.value.base : undefined;
}

/** The word in a cell: text, choice, or the id that a link names; empty where there is none. */
export function wordOf(row: AnsweredRow, column: string): string {
  const { result } = row.cell(column);
  if (result.state !== 'value') return '';
  const { value } = result;
  if (value.kind === 'text') return value.text.trim();
  if (value.kind === 'choice') return value.word;
  return value.kind === 'link' ? value.id : '';
}

export function shapeIn(row: AnsweredRow, column: string): Shape | undefined {
  const { result } = row.cell(column);
  if (result.state !== 'value' || result.value.kind !== 'shape') return undefined;
  return result.value.shape;
}

/** What a person calls the row: its name, or its id where it has none. */
export function nameOfRow(row: AnsweredRow): string {
  const name = wordOf(row, 'name');
  return name === '' ? row.id : name;
}
