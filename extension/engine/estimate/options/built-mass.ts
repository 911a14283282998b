import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers } from '../../workbook/answers.ts';
import { measureOf } from '../amount.ts';
import type { Bill, RowNeed } from '../bill.ts';
import { nameOf } from '../cells.ts';
import { conversion } from '../convert.ts';
import { readMaterial } from '../material.ts';

/** What the panels weigh, as far as their materials say. */
export interface BuiltMass {
  /** Of all panels of the job, in g, without waste. */
  readonly grams: number;
  /** Names of materials that say neither weight nor density, or whose mass cannot be told. */
  readonly unknown: readonly string[];
}

const noProblems = { packs: [], prices: [] };

function massOf(need: RowNeed, answers: Answers, settings: UnitSettings): number | undefined {
  const row = answers.row('material', need.material);
  const measure = measureOf(need.use.dimension);
  if (row === undefined || measure === undefined || need.use.count) return undefined;
  const { properties } = readMaterial(row, noProblems, settings);
  const way = conversion(measure, 'mass', properties);
  return way.ok ? need.use.base * need.pieces * need.panels * way.factor : undefined;
}

/**
 * What is built weighs: use × pieces × panels of everything but shop supplies, in g, by each material's
 * density or weight; drivers and counted goods say no mass and are named.
 */
export function builtMass(bill: Bill, answers: Answers, settings: UnitSettings): BuiltMass {
  const unknown = new Set<string>();
  let grams = 0;
  for (const line of bill.lines) {
    if (line.group === 'shop') continue;
    for (const need of line.rows) {
      const mass = massOf(need, answers, settings);
      const material = answers.row('material', need.material);
      if (mass === undefined) unknown.add(material === undefined ? line.name : nameOf(material));
      else grams += mass;
    }
  }
  return { grams, unknown: [...unknown] };
}
