import type { Problem } from '../../problems.ts';
import { area, sameDimension } from '../../units/dimension.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { nameOf, placeOf, quantityIn } from '../cells.ts';
import { callsOf, linked } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView, TypedFormula } from './trap.ts';

const contact = /contact/i;

function glueOf(
  { column }: TypedFormula,
  row: AnsweredRow,
  view: TrapView,
): AnsweredRow | undefined {
  const draw = /^draw\.([^.]+)\./.exec(column)?.[1];
  const from = draw === undefined ? 'material' : `draw.${draw}.material`;
  return linked(row, from, { table: 'material', view });
}

function oneFace(row: AnsweredRow, view: TrapView): readonly Problem[] {
  return view.formulas().flatMap((cell) =>
    callsOf(cell.text, 'GLUE.NEED').flatMap(([, faces = '']) => {
      const glue = faces === '1' ? glueOf(cell, row, view) : undefined;
      if (glue === undefined || !contact.test(nameOf(glue))) return [];
      const details = { row: nameOf(row), column: cell.column, material: nameOf(glue) };
      const place = placeOf(row, cell.column);
      return [trapProblem('glue-one-face', details, { severity: 'warning', place })];
    }),
  );
}

function dividesByCoverage(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const written = view
    .formulas()
    .filter(({ text }) => /\/\s*GLUE\.COVERAGE\s*\(/i.test(text))
    .map(({ column }) => column);
  const byMaterial = coveredUse(row, view) ? ['use'] : [];
  return [...written, ...byMaterial].map((column) =>
    trapProblem(
      'glue-coated-area',
      { row: nameOf(row), column },
      { severity: 'warning', place: placeOf(row, column) },
    ),
  );
}

/** A contact adhesive asked for by area: its coverage turns that into an amount for one face. */
function coveredUse(row: AnsweredRow, view: TrapView): boolean {
  const use = quantityIn(row, 'use');
  if (use.state !== 'value' || use.cell.origin !== 'typed') return false;
  if (!sameDimension(use.value.dimension, area)) return false;
  const glue = linked(row, 'material', { table: 'material', view });
  if (glue === undefined || !contact.test(nameOf(glue))) return false;
  return quantityIn(glue, 'coverage').state === 'value';
}

/** Coated against bonded area of adhesives that go on both faces. */
export const glueTraps: readonly Trap[] = [
  { tables: ['part'], find: oneFace },
  { tables: ['part', 'measure'], find: dividesByCoverage },
];
