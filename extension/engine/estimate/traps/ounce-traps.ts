import type { Problem } from '../../problems.ts';
import { density, mass, volume, arealWeight } from '../../units/dimension.ts';
import type { AnsweredCell, AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf, wordIn } from '../cells.ts';
import { callsOf, linked, shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

const literalOunces = /^\s*([\d./ -]*\d)\s*oz\s*$/i;
const anyOunces = /\d\s*oz\b(?!\s*\/)/i;

function ounces(
  cell: AnsweredCell,
  row: AnsweredRow,
  of: { readonly material: AnsweredRow; readonly view: TrapView },
): readonly Problem[] {
  const { material, view } = of;
  const text = cell.text ?? '';
  if (cell.origin !== 'typed' || wordIn(material, 'form') !== 'liquid' || !anyOunces.test(text)) {
    return [];
  }
  const dense = baseIn(material, 'density', density);
  const grams = baseIn(row, cell.column, mass);
  const { settings } = view;
  const number = literalOunces.exec(text)?.[1];
  const floz = number === undefined ? 'floz' : `${number} floz`;
  const place = placeOf(row, cell.column);
  const details = {
    row: nameOf(row),
    column: cell.column,
    amount: number === undefined ? 'oz' : text,
    material: nameOf(material),
    volume:
      dense === undefined || grams === undefined
        ? 'not a volume'
        : shown(grams / dense, volume, { settings, unit: 'floz' }),
    floz,
  };
  const fixes =
    number === undefined ? {} : { fixes: [{ title: `Make it ${floz}`, place, text: floz }] };
  return [trapProblem('ounce-by-weight', details, { severity: 'warning', place, ...fixes })];
}

function ofPart(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const own = linked(row, 'material', { table: 'material', view });
  const mine = own === undefined ? [] : ounces(row.cell('use'), row, { material: own, view });
  const drawn = row.draws.flatMap((draw) => {
    const cell = row.cell(`draw.${draw}.use`);
    if (cell.origin !== 'typed' || cell.text === undefined) return [];
    const material = linked(row, `draw.${draw}.material`, { table: 'material', view });
    return material === undefined ? [] : ounces(cell, row, { material, view });
  });
  return [...mine, ...drawn];
}

function ofPack(row: AnsweredRow, view: TrapView): readonly Problem[] {
  if (!anyOunces.test(`${row.cell('holds').text ?? ''} ${row.cell('step').text ?? ''}`)) return [];
  const material = linked(row, 'material', { table: 'material', view });
  if (material === undefined) return [];
  return ['holds', 'step'].flatMap((column) => ounces(row.cell(column), row, { material, view }));
}

/** Bare oz for a liquid: a weight, read as fluid ounces 15 % out for laminating resin. */
export const ounceTraps: readonly Trap[] = [
  { tables: ['part'], find: ofPart },
  { tables: ['pack'], find: ofPack },
];

const byArea = /([\d.]+)\s*oz\s*\/\s*sq\s*(ft|yd)/i;

/** Mat runs from 3/4 to 3 oz a square foot; cloth begins at about 4 oz a square yard. */
const heaviestMat = 3;

const matNames = /\bmat\b|chopped|csm/i;

function materialWeight(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  const { text = '' } = row.cell('weight');
  const found = byArea.exec(text);
  const base = baseIn(row, 'weight', arealWeight);
  if (found === null || base === undefined) return [];
  const [, number = '', area = ''] = found;
  const byYard = area.toLowerCase() === 'yd';
  const light = Number(number) <= heaviestMat;
  const wrong = byYard ? light && matNames.test(nameOf(row)) : !light;
  if (!wrong) return [];
  const place = placeOf(row, 'weight');
  const other = `${number} oz/${byYard ? 'sqft' : 'sqyd'}`;
  const details = {
    material: nameOf(row),
    weight: `${number} oz`,
    metric: shown(base, arealWeight, { settings, unit: 'g/m2' }),
    other,
  };
  const code = byYard ? 'glass-by-yard' : 'glass-by-foot';
  const fixes = [{ title: `Make it ${other}`, place, text: other }];
  return [trapProblem(code, details, { severity: 'warning', place, fixes })];
}

// The lightest mat, 3/4 oz a square foot, has 229 g/m²; a ninth of the heaviest has 102.
const lightestMat = 150 / 1e6;

function matRow(row: AnsweredRow, view: TrapView): readonly Problem[] {
  if (!['mat', 'mat_layer'].includes(row.kind)) return [];
  const material = linked(row, 'material', { table: 'material', view });
  const weight = material && baseIn(material, 'weight', arealWeight);
  if (material === undefined || weight === undefined || weight >= lightestMat) return [];
  const { settings } = view;
  const metric = shown(weight, arealWeight, { settings, unit: 'g/m2' });
  const details = { row: nameOf(row), material: nameOf(material), metric };
  const place = placeOf(row, 'material');
  return [trapProblem('glass-too-light', details, { severity: 'warning', place })];
}

function glassFormula(row: AnsweredRow, view: TrapView): readonly Problem[] {
  return view.formulas().flatMap((cell) =>
    callsOf(cell.text, 'RESIN.GLASS').flatMap(([, weight = '']) => {
      const [whole, number = '', area = ''] = byArea.exec(weight) ?? [];
      const byYard = area.toLowerCase() === 'yd';
      const light = Number(number) <= heaviestMat;
      if (whole === undefined || byYard !== light) return [];
      const other = `${number}oz/${byYard ? 'sqft' : 'sqyd'}`;
      const details = { row: nameOf(row), column: cell.column, weight: whole, other };
      const place = placeOf(row, cell.column);
      return [trapProblem('glass-unit-in-formula', details, { severity: 'warning', place })];
    }),
  );
}

/** Glass weighed by the square foot or by the square yard: nine times out. */
export const glassTraps: readonly Trap[] = [
  { tables: ['material'], find: materialWeight },
  { tables: ['part'], find: matRow },
  { tables: ['part', 'measure'], find: glassFormula },
];
