import {
  catalogue,
  openCalculator,
  openSession,
  showQuantity,
  showShape,
  type CellValue,
  type UnitSettings,
} from '../../extension/engine/index.ts';

const inches: UnitSettings = { units: 'in', currency: 'USD' };
const { book } = openSession('format = 1\n').snapshot();
const calculators = new Map<string, ReturnType<typeof openCalculator>>();

/** One for each way of showing values: opening one costs far more than asking it. */
function calculatorFor(settings: UnitSettings): ReturnType<typeof openCalculator> {
  const key = JSON.stringify(settings);
  const known = calculators.get(key) ?? openCalculator(settings, catalogue, book);
  calculators.set(key, known);
  return known;
}

/** What a formula comes to by the front door of the engine, on the demo book, or why it has no answer. */
export function answered(formula: string, settings: UnitSettings = inches): CellValue | string {
  const result = calculatorFor(settings)(`=${formula}`);
  return result.ok ? result.value.value : result.problem.message;
}

/** The answer as people see it. */
export function shown(formula: string, settings: UnitSettings = inches): string {
  const answer = answered(formula, settings);
  if (typeof answer === 'string') return answer;
  if (answer.kind === 'quantity') return showQuantity(answer, settings).text;
  if (answer.kind === 'shape') return showShape(answer.shape, settings);
  return answer.kind === 'text' ? answer.text : answer.kind;
}

/** A formula's answer in base units (mm, g, min, radians, °C, currency). */
export function baseOf(formula: string, settings: UnitSettings = inches): number {
  const answer = answered(formula, settings);
  if (typeof answer === 'string') throw new Error(`${formula}: ${answer}`);
  if (answer.kind !== 'quantity') throw new Error(`${formula} is no quantity`);
  return answer.base;
}

/** A formula's answer as a number in a unit. */
export function numberOf(formula: string, unit = '', settings: UnitSettings = inches): number {
  return baseOf(formula, settings) / (unit === '' ? 1 : baseOf(`1 ${unit}`, settings));
}

/** A number as a formula writes it. */
export function literal(number: number, unit = ''): string {
  return `${String(number)}${unit === '' ? '' : ` ${unit}`}`;
}
