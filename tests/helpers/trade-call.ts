import type {
  Argument,
  FunctionContext,
  FunctionEntry,
} from '../../extension/engine/formula/catalogue.ts';
import type { CellValue } from '../../extension/engine/formula/value.ts';
import { showShape } from '../../extension/engine/geometry/shape-text.ts';
import { tradeFunctions } from '../../extension/engine/trade/trade-functions.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import { readQuantity } from '../../extension/engine/units/read-quantity.ts';
import { showQuantity } from '../../extension/engine/units/show.ts';

export const inches: UnitSettings = { units: 'in', currency: 'USD' };
export const millimetres: UnitSettings = { units: 'mm', currency: 'EUR' };

/** Bands of East Coast Fibreglass's catalyst addition chart, in °C. */
export const publishedChart = [
  { from: 5, to: 13, value: 0.04 },
  { from: 13, to: 16, value: 0.03 },
  { from: 16, to: 20, value: 0.02 },
  { from: 20, to: 35, value: 0.01 },
];

export function contextOf(settings: UnitSettings): FunctionContext {
  return { settings, chart: (name) => (name === 'catalyst' ? publishedChart : []) };
}

export function entryOf(name: string): FunctionEntry {
  const entry = tradeFunctions.find((one) => one.name === name);
  if (entry === undefined) throw new Error(`No function ${name}`);
  return entry;
}

function argumentsOf(text: string): string[] {
  const parts: string[] = [];
  let [depth, part] = [0, ''];
  for (const sign of text) {
    if (sign === ',' && depth === 0) {
      parts.push(part.trim());
      part = '';
      continue;
    }
    depth += sign === '(' ? 1 : sign === ')' ? -1 : 0;
    part += sign;
  }
  return part.trim() === '' && parts.length === 0 ? [] : [...parts, part.trim()];
}

function argumentOf(text: string, settings: UnitSettings): Argument {
  if (text === '') return undefined;
  if (text.includes('(')) return valueOf(text, settings);
  const read = readQuantity(text, { settings });
  if (read.ok) return { kind: 'quantity', ...read.value.value };
  return { kind: 'choice', word: text };
}

function valueOf(call: string, settings: UnitSettings): CellValue {
  const answer = answerOf(call, settings);
  if (typeof answer === 'string') throw new Error(answer);
  return answer;
}

/**
 * The answer of a call of literals, such as `RING.LOW(2in, 7 1/2in, 15deg)`, or the sentence why
 * there is none.
 */
export function answerOf(call: string, settings: UnitSettings = inches): CellValue | string {
  const [, name = '', inside = ''] = /^=?([A-Za-z][A-Za-z0-9.]*)\((.*)\)$/.exec(call) ?? [];
  const args = argumentsOf(inside).map((text) => argumentOf(text, settings));
  const answer = entryOf(name).run?.(args, contextOf(settings));
  if (answer === undefined) throw new Error(`${name} has no code of its own`);
  return answer.ok ? answer.value : answer.problem.message;
}

/** The answer as people see it. */
export function shown(call: string, settings: UnitSettings = inches): string {
  const answer = answerOf(call, settings);
  if (typeof answer === 'string') return answer;
  if (answer.kind === 'quantity') return showQuantity(answer, settings).text;
  if (answer.kind === 'shape') return showShape(answer.shape, settings);
  return answer.kind === 'text' ? answer.text : answer.kind;
}

/** The answer as a number in a unit. */
export function numberOf(call: string, unit = '', settings: UnitSettings = inches): number {
  const answer = answerOf(call, settings);
  if (typeof answer === 'string') throw new Error(answer);
  if (answer.kind !== 'quantity') throw new Error(`${call} is no quantity`);
  const one = readQuantity(`1 ${unit}`.trim(), { settings });
  if (!one.ok) throw new Error(one.problem.message);
  return answer.base / one.value.value.base;
}
