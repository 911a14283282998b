import type { CellRef, Nameable, Resolved, Scope } from '../../extension/engine/formula/scope.ts';
import type { Step } from '../../extension/engine/formula/expression.ts';
import type { ValueType } from '../../extension/engine/formula/value.ts';
import { quantityType } from '../../extension/engine/formula/value-type.ts';
import { problemMaker } from '../../extension/engine/problems.ts';
import {
  angle,
  area,
  length,
  mass,
  money,
  plain,
  temperature,
  volume,
} from '../../extension/engine/units/dimension.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import { catalogue } from './workbook-of.ts';

const scopeProblem = problemMaker({ 'name-missing': 'Nothing here is called “{name}”.' });

export const wrapChoices = ['round_baffle', 'round_tube', 'square_wall'];

/** Cells of the row that formulas of these tests stand in. */
const ownCells: Readonly<Record<string, ValueType>> = {
  length: quantityType(length),
  width: quantityType(length),
  area: quantityType(area),
  weight: quantityType(mass),
  use: quantityType(volume),
  price: quantityType(money),
  tilt: quantityType(angle),
  layers: quantityType(plain),
  note: { kind: 'text' },
  taxed: { kind: 'yes-no' },
  build: { kind: 'choice', choices: wrapChoices },
  shape: { kind: 'shape' },
  empty: { kind: 'blank' },
};

/** Columns of every other row. */
const rowCells: Readonly<Record<string, ValueType>> = {
  length: quantityType(length),
  area: quantityType(area),
  wall: quantityType(area),
};

const jobCells: Readonly<Record<string, ValueType>> = {
  temperature: quantityType(temperature),
  cavity: quantityType(length),
};

const rows = ['base', 'mid_ring', 'tweeter_ring'];

function found<Thing>(thing: Thing): Resolved<Thing> {
  return { found: true, thing };
}

function missing(steps: readonly Step[]): Resolved<never> {
  const name = steps.map((step) => step.word).join('.');
  const problem = scopeProblem('name-missing', { name });
  return { found: false, problem, watches: [`name:${name}`] };
}

function ref(id: string, column: string): CellRef {
  return { table: 'part', id, occurrence: 0, column };
}

function cellOf(steps: readonly Step[]): { cell: CellRef; type: ValueType } | undefined {
  const [first = '', second] = steps.map((step) => step.word);
  const [id, column, types] =
    second === undefined
      ? ['own', first, ownCells]
      : first === 'job'
        ? ['job', second, jobCells]
        : [
            first === 'on' ? 'base' : first,
            second,
            rows.includes(first) || first === 'on' ? rowCells : {},
          ];
  const type = types[column];
  return type === undefined ? undefined : { cell: ref(id, column), type };
}

const lists: Readonly<Record<string, readonly ValueType[]>> = {
  wall: [quantityType(area), { kind: 'blank' }, quantityType(area)],
  use: [quantityType(volume), quantityType(mass)],
  none: [{ kind: 'blank' }, { kind: 'blank' }],
  depth: [quantityType(length), quantityType(length)],
};

function nameables(steps: readonly string[]): readonly Nameable[] {
  const columns = (of: object): readonly Nameable[] =>
    Object.keys(of).map((word) => ({ word, kind: 'column', detail: '' }));
  if (steps.length === 0) {
    return [
      ...columns(ownCells),
      { word: 'on', kind: 'link', detail: 'Stands on' },
      ...rows.map((word): Nameable => ({ word, kind: 'row', detail: 'Part' })),
      { word: 'job', kind: 'root', detail: 'The job' },
      { word: 'ring', kind: 'kind', detail: 'Ring' },
      { word: 'part', kind: 'table', detail: 'Every row' },
    ];
  }
  return columns(steps[0] === 'job' ? jobCells : rowCells);
}

/** A small job: this row's columns, three other rows with a length and areas, a few settings. */
export function smallScope(settings: UnitSettings = { units: 'in', currency: 'USD' }): Scope {
  return {
    settings,
    catalogue,
    cell: (steps) => {
      const cell = cellOf(steps);
      if (cell === undefined) return missing(steps);
      const links = steps[0]?.word === 'on' ? [ref('own', 'on')] : [];
      return found({ ...cell, links });
    },
    row: (steps) => {
      const id = steps[0]?.word ?? '';
      if (id === 'on') {
        const row = { table: 'part', id: 'base', occurrence: 0 };
        return found({ row, links: [ref('own', 'on')] });
      }
      if (!rows.includes(id)) return missing(steps);
      return found({ row: { table: 'part', id, occurrence: 0 }, links: [] });
    },
    list: (form, row, kinds, column) => {
      const types = lists[column.word];
      if (types === undefined) return missing([...kinds, column]);
      const cells = types.map((type, index) => ({
        cell: ref(rows[index + 1] ?? 'late', column.word),
        pieces: ref(rows[index + 1] ?? 'late', 'qty'),
        type,
      }));
      const watches = [`${form}:${row?.[0]?.word ?? kinds[0]?.word ?? ''}`];
      return found({ cells, links: [], watches });
    },
    names: nameables,
  };
}
