import { describe, expect, test } from 'vitest';
import { gap } from '../../../extension/engine/workbook/formula-templates.ts';
import {
  openRegisterFile,
  type Content,
  type RegisterFile,
} from '../../../extension/engine/workbook/register-file.ts';
import { newCell, newRow, type Cell } from '../../../extension/engine/workbook/row.ts';

let cells = 0;

function cellOf(table: string, id: string, column: string): Cell {
  const source = { identity: {}, texts: new Map<string, string>(), broken: false };
  return newCell(newRow({ table, id, occurrence: 0, source }), column, cells++);
}

function opened(): RegisterFile {
  return openRegisterFile({
    site: () => undefined,
    constant: () => undefined,
    functions: { settings: { units: 'mm', currency: 'USD' } } as never,
    shapes: new Map(),
    asked: () => undefined,
    numberAt: () => -1,
    nameAt: () => '',
  });
}

/** What each cell says once all are written. */
function written(file: RegisterFile, contents: readonly (readonly [Cell, Content])[]): unknown[] {
  const said = new Map(file.write(contents).map(({ cell, raw }) => [cell, raw]));
  return contents.map(([cell]) => said.get(cell));
}

const doubled = `((${gap}*2)+SUM(${gap},${gap}))`;

describe('cellWriter', () => {
  test('formulas alike but for where they read are parsed once and read their own cells', () => {
    const file = opened();
    const [a, b, c] = [cellOf('part', 'a', 'size'), cellOf('driver', 'b', 'size')].concat(
      cellOf('part', 'c', 'depth'),
    ) as [Cell, Cell, Cell];
    written(file, [
      [a, 3],
      [b, 5],
      [c, 7],
    ]);
    const at = file.standing;
    const formula = (...read: readonly Cell[]): Content => ({
      text: doubled,
      fillings: read.map(at),
    });
    const answers = written(file, [
      [cellOf('part', 'd', 'use'), formula(a, b, c)],
      [cellOf('part', 'e', 'use'), formula(c, c, a)],
      [cellOf('check', 'f', 'value'), formula(b, a, a)],
    ]);
    expect(answers).toEqual([18, 24, 16]);
    expect(file.texts()).toBe(1);
  });

  test('they follow the cells they read, and may be written over', () => {
    const file = opened();
    const [a, b, sum] = [
      cellOf('part', 'a', 'size'),
      cellOf('part', 'b', 'size'),
      cellOf('part', 'c', 'size'),
    ];
    const read = (cell: Cell): Content => ({
      text: `(-${gap})`,
      fillings: [file.standing(cell)],
    });
    written(file, [
      [a, 3],
      [b, read(a)],
      [sum, read(b)],
    ]);
    const said = new Map(file.write([[a, 4]]).map(({ cell, raw }) => [cell, raw]));
    expect(said.get(sum)).toBe(4);
    expect(written(file, [[sum, read(a)]])).toEqual([-4]);
    expect(file.write([[b, 10]]).map(({ cell }) => cell)).not.toContain(sum);
  });

  test('numbers are filled in too', () => {
    const file = opened();
    const faulty = (number: number): Content => ({
      text: `PW.FAULT(${gap})`,
      fillings: [number],
    });
    const [one, other] = written(file, [
      [cellOf('part', 'a', 'size'), faulty(1)],
      [cellOf('part', 'b', 'size'), faulty(2)],
    ]);
    expect(one).not.toEqual(other);
    expect(file.texts()).toBe(1);
  });

  test('a range beside a reference stays a range', () => {
    const file = opened();
    const list = ['a', 'b', 'c'].map((id) => cellOf('part', id, 'size'));
    written(
      file,
      list.map((cell, index) => [cell, index + 1]),
    );
    const [first, , last] = list.map(file.standing);
    if (first === undefined || last === undefined) throw new Error('Cells have places.');
    const text = `(SUM(${file.written(first)}:${file.written(last)})+${gap})`;
    expect(
      written(file, [
        [cellOf('part', 'd', 'use'), { text, fillings: [first] }],
        [cellOf('part', 'e', 'use'), { text, fillings: [last] }],
      ]),
    ).toEqual([7, 9]);
  });
});
