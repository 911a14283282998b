import type { Shape } from '../geometry/shape.ts';
import { sameDimension, type Dimension } from '../units/dimension.ts';
import type { Quantity } from '../units/quantity.ts';
import type { AnsweredCell, AnsweredRow } from './answers.ts';

/** A cell's quantity, or which of the two reasons there is for having none. */
export type Reading =
  | { readonly state: 'value'; readonly value: Quantity; readonly cell: AnsweredCell }
  | { readonly state: 'blank' }
  | { readonly state: 'no-answer' };

/** The quantity in a cell; a cell that holds something else has no answer to the question. */
export function quantityIn(row: AnsweredRow, column: string): Reading {
  const cell = row.cell(column);
  if (cell.result.state === 'blank') return { state: 'blank' };
  if (cell.result.state !== 'value') return { state: 'no-answer' };
  const { value } = cell.result;
  if (value.kind === 'quantity') {
    return { state: 'value', value: { base: value.base, dimension: value.dimension }, cell };
  }
  return value.kind === 'text' && value.text.trim() === ''
    ? { state: 'blank' }
    : { state: 'no-answer' };
}

/** Base value of a cell of this dimension; undefined where it is blank, unanswered or measures something else. */
export function baseIn(row: AnsweredRow, column: string, dimension: Dimension): number | undefined {
  const reading = quantityIn(row, column);
  return reading.state === 'value' && sameDimension(reading.value.dimension, dimension)
    ? reading.value.base
    : undefined;
}

/** The word in a cell: text, choice, or the id a link names. Empty where there is none. */
export function wordIn(row: AnsweredRow, column: string): string {
  const { result } = row.cell(column);
  if (result.state !== 'value') return '';
  const { value } = result;
  if (value.kind === 'text') return value.text.trim();
  if (value.kind === 'choice') return value.word;
  if (value.kind === 'link') return value.id;
  return '';
}

/** What a person calls the row: its name, or its id where it has none. */
export function nameOf(row: AnsweredRow): string {
  const name = wordIn(row, 'name');
  return name === '' ? row.id : name;
}

/** The shape in a cell; undefined where there is none. */
export function shapeIn(row: AnsweredRow, column: string): Shape | undefined {
  const { result } = row.cell(column);
  return result.state === 'value' && result.value.kind === 'shape' ? result.value.shape : undefined;
}
