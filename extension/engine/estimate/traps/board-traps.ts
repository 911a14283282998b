import type { Problem } from '../../problems.ts';
import { area, length, sameDimension } from '../../units/dimension.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf, quantityIn, wordIn } from '../cells.ts';
import { sizesNamed } from './driver-traps.ts';
import { linked, shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

/**
 * How far a panel's average may lie from what is specified, mm.
 *
 * @source ANSI A208.2-2009: ± 0.125 mm (0.005 in)
 */
const tolerance = 0.125;

const sixteenth = 25.4 / 16;

function isFraction(base: number): boolean {
  return base > 0 && Math.abs(base / sixteenth - Math.round(base / sixteenth)) < 1e-6;
}

/** True where the thickness is typed over the one that the material gives. */
function isTypedBoard(row: AnsweredRow, view: TrapView): boolean {
  const { origin, formula } = row.cell('thickness');
  const given = view.kind(row)?.defaults.get('thickness') === '=material.thickness';
  return given && origin === 'typed' && !formula;
}

function typedThickness(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const written = isTypedBoard(row, view) ? baseIn(row, 'thickness', length) : undefined;
  const material = linked(row, 'material', { table: 'material', view });
  const real = material && baseIn(material, 'thickness', length);
  if (material === undefined || written === undefined || real === undefined) return [];
  const near = Math.abs(written - real) <= tolerance;
  if (near || !isFraction(written) || wordIn(material, 'form') !== 'sheet') return [];
  const details = {
    row: nameOf(row),
    written: row.cell('thickness').text ?? '',
    material: nameOf(material),
    real: material.cell('thickness').text ?? shown(real, length, { settings: view.settings }),
  };
  const place = placeOf(row, 'thickness');
  return [trapProblem('board-nominal', details, { severity: 'warning', place })];
}

const plySizes = [1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4].map((inches) => inches * 25.4);

function ofMaterial(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  if (wordIn(row, 'form') !== 'sheet') return [];
  const thickness = baseIn(row, 'thickness', length);
  if (thickness === undefined) return [];
  const name = nameOf(row);
  const written = row.cell('thickness').text ?? '';
  const more = { severity: 'warning', place: placeOf(row, 'thickness') } as const;
  const metric = /\d\s*mm\b/i.test(name) && /in\b|"/.test(written);
  const [named] = metric ? sizesNamed(name, settings) : [];
  if (named !== undefined && named < 50 && Math.abs(named - thickness) > tolerance) {
    const details = {
      material: name,
      named: `${String(Math.round(named * 10) / 10)} mm`,
      written,
      apart: `${String(Math.round(Math.abs(named - thickness) * 100) / 100)} mm`,
    };
    return [trapProblem('board-name-differs', details, more)];
  }
  const exact = plySizes.some((size) => Math.abs(size - thickness) < 1e-6);
  if (!exact || !/\bply/i.test(name)) return [];
  return [trapProblem('plywood-nominal', { material: name, written }, more)];
}

/** Nominal against real thickness of boards. */
export const boardTraps: readonly Trap[] = [
  { tables: ['part'], find: typedThickness },
  { tables: ['material'], find: ofMaterial },
];

// Mat is torn to fit and a stack is cut from squares: an area is what these rows mean.
const byArea = ['mat', 'mat_layer', 'stacked_ring'];

function areaForBlank(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const use = quantityIn(row, 'use');
  if (use.state !== 'value' || use.cell.origin !== 'typed' || byArea.includes(row.kind)) return [];
  if (!sameDimension(use.value.dimension, area)) return [];
  const material = linked(row, 'material', { table: 'material', view });
  const form = material === undefined ? '' : wordIn(material, 'form');
  if (material === undefined || (form !== 'roll' && form !== 'sheet')) return [];
  const width = baseIn(material, 'width', length);
  if (width === undefined || width <= 0) return [];
  const { settings } = view;
  const across = shown(width, length, { settings });
  const details = {
    row: nameOf(row),
    area: shown(use.value.base, area, { settings }),
    material: nameOf(material),
    way: form === 'roll' ? `by the length, off a bolt ${across} wide` : `in sheets ${across} wide`,
    length: shown(use.value.base / width, length, { settings }),
  };
  const place = placeOf(row, 'use');
  return [trapProblem('area-not-blank', details, { severity: 'warning', place })];
}

/** An area where a blank is meant. */
export const blankTraps: readonly Trap[] = [{ tables: ['part'], find: areaForBlank }];
