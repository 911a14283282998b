import {
  calculate,
  catalogue,
  dimensionName,
  openSession,
  showQuantity,
  showShape,
  type CellValue,
  type UnitSettings,
} from '../engine/index.ts';
import { steady } from './steady.ts';

/** What `calc` answers, as its JSON says it. */
export type CalcAnswer =
  | { readonly ok: true; readonly dimension: string; readonly base: number; readonly text: string }
  | { readonly ok: true; readonly type: CellValue['kind']; readonly text: string }
  | { readonly ok: false; readonly problem: string };

function answerOf(value: CellValue, settings: UnitSettings): CalcAnswer {
  switch (value.kind) {
    case 'quantity': {
      const dimension = dimensionName(value.dimension);
      const { text } = showQuantity(value, settings);
      return { ok: true, dimension, base: steady(value.base), text };
    }
    case 'text':
      return { ok: true, type: value.kind, text: value.text };
    case 'choice':
      return { ok: true, type: value.kind, text: value.word };
    case 'yes-no':
      return { ok: true, type: value.kind, text: value.yes ? 'yes' : 'no' };
    case 'shape':
      return { ok: true, type: value.kind, text: showShape(value.shape, settings) };
    case 'link':
      return { ok: true, type: value.kind, text: value.id };
  }
}

/**
 * Answers one formula that stands in no job. Constants and charts are those of the built-in demo
 * book.
 */
export function calcAnswer(formula: string, settings: UnitSettings): CalcAnswer {
  const { book } = openSession('format = 1\n').snapshot();
  const text = formula.trim();
  const whole = text.startsWith('=') ? text : `=${text}`;
  const result = calculate(whole, settings, catalogue, book);
  if (!result.ok) return { ok: false, problem: result.problem.message };
  return answerOf(result.value.value, settings);
}
