import type { CutOutline } from './cut-outline.ts';
import type { Kind } from '../book/book.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { length, plain, sameDimension } from '../units/dimension.ts';
import type { Quantity, UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import {
  amountOf,
  countWord,
  customaryUnit,
  measureOf,
  unitWritten,
  type Measure,
} from './amount.ts';
import { billProblem, type BillProblemCode } from './bill-problems.ts';
import type { Amount } from './bill.ts';
import { nameOf, placeOf, quantityIn } from './cells.ts';
import type { MaterialFacts } from './material.ts';

/** What a row, or one of its draws, says of one material. */
export interface Asking {
  readonly row: AnsweredRow;
  readonly kind: Kind;
  readonly panel: AnsweredRow | undefined;
  /** Name of the draw; empty for the row's own material. */
  readonly draw: string;
  readonly material: MaterialFacts;
  readonly settings: UnitSettings;
  /** What falls out of a part, as loops in mm. */
  readonly openings?: (row: AnsweredRow) => CutOutline['holes'];
}

/** Material in one piece. */
export interface Use {
  readonly amount: Amount;
  readonly measure: Measure;
  /** Cell the figure stands in; undefined where it is one by custom. */
  readonly column?: string;
  /** Rectangle to be cut, mm. */
  readonly blank?: { readonly length: number; readonly width: number };
}

/** Key of a cell of the row or of its draw. */
export function columnOf({ draw }: { readonly draw: string }, column: string): string {
  return draw === '' ? column : `draw.${draw}.${column}`;
}

/** A problem at a cell of the row that asks. */
export function refusal(
  asking: Asking,
  at: { readonly code: BillProblemCode; readonly column: string },
  details: Readonly<Record<string, string>> = {},
): Problem {
  const known = { row: nameOf(asking.row), material: asking.material.name, column: at.column };
  return billProblem(at.code, { ...known, ...details }, { place: placeOf(asking.row, at.column) });
}

/** A quantity of the row that may be blank but never negative. */
export function figureIn(asking: Asking, column: string): Result<Quantity | undefined> {
  const reading = quantityIn(asking.row, column);
  if (reading.state === 'blank') return ok(undefined);
  if (reading.state === 'no-answer') {
    return failed(refusal(asking, { code: 'need-unanswered', column }));
  }
  if (reading.value.base < 0) {
    const value = showQuantity(reading.value, asking.settings).text;
    return failed(refusal(asking, { code: 'need-negative', column }, { value }));
  }
  return ok(reading.value);
}

/** A plain number of the row: pieces or a share; `otherwise` where the cell is blank. */
export function numberIn(asking: Asking, column: string, otherwise: number): Result<number> {
  const figure = figureIn(asking, column);
  if (!figure.ok) return figure;
  if (figure.value === undefined) return ok(otherwise);
  return sameDimension(figure.value.dimension, plain)
    ? ok(figure.value.base)
    : failed(refusal(asking, { code: 'need-unanswered', column }));
}

/**
 * Material in one piece: length × width of a blank, the length of a strip, or the column `use`. A
 * counted material is taken once a piece where `use` is blank.
 */
export function useOf(asking: Asking): Result<Use> {
  const { takes } = asking.kind;
  const { form } = asking.material;
  const cut = asking.draw === '' && (takes === 'blank' || takes === 'strip');
  if (!cut) return writtenUse(asking, asking.draw === '' ? 'use' : columnOf(asking, 'use'));
  if (takes === 'blank' || form === 'sheet' || form === 'roll') {
    const blank = blankOf(asking);
    if (!blank.ok || blank.value !== undefined) return blank as Result<Use>;
  }
  const written = quantityIn(asking.row, 'use').state === 'blank';
  return writtenUse(asking, takes === 'strip' && written ? 'length' : 'use');
}

function blankOf(asking: Asking): Result<Use | undefined> {
  const along = figureIn(asking, 'length');
  if (!along.ok) return along;
  const across = figureIn(asking, 'width');
  if (!across.ok) return across;
  if (along.value === undefined || across.value === undefined) {
    const instead = quantityIn(asking.row, 'use').state !== 'blank';
    if (instead || asking.kind.takes === 'strip') return ok(undefined);
    const column = along.value === undefined ? 'length' : 'width';
    return failed(refusal(asking, { code: 'need-blank', column }));
  }
  const wrong = [along.value, across.value].findIndex(
    ({ dimension }) => !sameDimension(dimension, length),
  );
  if (wrong >= 0) {
    const column = wrong === 0 ? 'length' : 'width';
    return failed(refusal(asking, { code: 'need-unanswered', column }));
  }
  const blank = { length: along.value.base, width: across.value.base };
  const unit = customaryUnit('area', asking.settings);
  const amount = amountOf(blank.length * blank.width, 'area', unit);
  return ok({ amount, measure: 'area', column: 'length', blank });
}

function writtenUse(asking: Asking, column: string): Result<Use> {
  const figure = figureIn(asking, column);
  if (!figure.ok) return figure;
  const { material, settings } = asking;
  if (figure.value === undefined) {
    return material.measure === 'count'
      ? ok({ amount: amountOf(1, 'count', material.unit), measure: 'count' })
      : failed(refusal(asking, { code: 'need-blank', column }));
  }
  const measure = measureOf(figure.value.dimension);
  const { text } = asking.row.cell(column);
  if (measure === undefined) {
    const amount = showQuantity(figure.value, settings).text;
    const unit = material.unit;
    return failed(refusal(asking, { code: 'unit-unfitting', column }, { amount, unit }));
  }
  if (measure !== 'count') {
    const amount = amountOf(figure.value.base, measure, unitWritten(text, measure, settings));
    return ok({ amount, measure, column });
  }
  const word = countWord(text, settings);
  if (material.measure === 'count' && !isSameWord(word, material.unit)) {
    const details = { amount: text ?? '', unit: material.unit };
    return failed(refusal(asking, { code: 'count-word-differs', column }, details));
  }
  const unit = material.measure === 'count' ? material.unit : word === '' ? 'each' : word;
  return ok({ amount: amountOf(figure.value.base, 'count', unit), measure, column });
}

function isSameWord(word: string, unit: string): boolean {
  const neutral = ['', 'each', 'piece', 'pieces'];
  return neutral.includes(word) || word === unit || word === `${unit}s`;
}
