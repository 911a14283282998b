import { describe, expect, test } from 'vitest';
import { entryText } from '../../../extension/engine/session/entry.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { demoBook } from '../../helpers/sample-session.ts';

function told(text: string): readonly string[] {
  return openSession(text)
    .snapshot()
    .problems.map(({ problem, line }) => `${String(line)} ${problem.code}`);
}

const book = `format = 1

[book]
title = "Small shop"
currency = "USD"

[[material]]
id = "board"

name = "Board"
form = "sheet"

thickness = "3/4 in"

length = "96 in"
width = "48 in"

[[pack]]
id = "board_sheet"

material = "board"
holds = "1 sheet"
price = "40 USD"
`;

describe('openSession on a shop book', () => {
  test('the demo shop’s book has nothing to mend', () => {
    expect(told(demoBook)).toEqual([]);
  });

  test('its rows have values, and links reach what is built in', () => {
    const { workbook } = openSession(
      book.replace('material = "board"', 'material = "panelboard_3"'),
    ).snapshot();
    const pack = workbook.row('pack', 'board_sheet');
    expect(pack?.cell('material').result).toMatchObject({ state: 'value' });
    expect(workbook.row('material', 'board')?.cell('thickness').result).toMatchObject({
      state: 'value',
      value: { base: expect.closeTo(19.05) as number },
    });
  });

  test('a pack of no material, and one without a price, are told at their cells', () => {
    expect(told(book.replace('material = "board"', 'material = "bord"'))).toEqual([
      '21 link-unknown',
      // The sheet is counted by its material, which is not known.
      '22 unit-unknown',
    ]);
    expect(told(book.replace('price = "40 USD"\n', ''))).toEqual(['18 pack-incomplete']);
  });

  test('two rows of one id both stand, and the id is told', () => {
    const twice = `${book}
[[pack]]
id = "board_sheet"

material = "board"
holds = "2 sheet"
price = "75 USD"
`;
    const { workbook, problems } = openSession(twice).snapshot();
    const own = workbook.rows('pack').filter(({ id }) => id === 'board_sheet');
    expect(own.map((row) => row.cell('price').text)).toEqual(['40 USD', '75 USD']);
    expect(problems.map(({ problem }) => problem.code)).toContain('row-id-repeated');
  });

  test('a constant that the book changes keeps the words that are built in, lighter', () => {
    const { workbook } = openSession(
      `${book}\n[[constant]]\nid = "pack_slack"\n\nvalue = "2 %"\n`,
    ).snapshot();
    const row = workbook.row('constant', 'pack_slack');
    expect(row?.cell('value')).toMatchObject({ text: '2 %', origin: 'typed' });
    expect(row?.cell('name')).toMatchObject({ origin: 'default' });
    expect(row?.cell('name').text).not.toBe('');
  });

  test('formulas of kinds are kept as they are: they speak of the rows of the kind', () => {
    const { workbook, problems } = openSession(
      `${book}\n[[kind]]\nid = "lid"\n\nname = "Lid"\ntable = "part"\n\ndefault.depth = "=2 * thickness"\n`,
    ).snapshot();
    expect(workbook.row('kind', 'lid')?.cell('default.depth').text).toBe('=2 * thickness');
    expect(problems).toEqual([]);
  });

  test('what is typed is read as in a job: marks become words, bare numbers get the unit', () => {
    const snapshot = openSession(book).snapshot();
    const place = { table: 'material', id: 'board', occurrence: 0, column: 'width' };
    expect(entryText(place, '48 1/2"', snapshot)).toMatchObject({ ok: true, value: '48 1/2 in' });
    expect(entryText({ ...place, column: 'form' }, 'plank', snapshot).ok).toBe(false);
  });

  test('a changed price moves nothing else, and an edit is one line', () => {
    const session = openSession(book);
    const plan = session.plan([
      {
        kind: 'set-cell',
        row: { table: 'pack', id: 'board_sheet' },
        column: 'price',
        text: '44 USD',
      },
    ]);
    if (!plan.ok) throw new Error(plan.problem.message);
    expect(plan.value.changes).toHaveLength(1);
    session.take(plan.value);
    expect(session.snapshot().workbook.row('pack', 'board_sheet')?.cell('price').text).toBe(
      '44 USD',
    );
  });

  test('a setting of the book is written in its head', () => {
    const session = openSession(book);
    const plan = session.plan([{ kind: 'set-head', key: 'units', text: 'mm' }]);
    if (!plan.ok) throw new Error(plan.problem.message);
    session.take(plan.value);
    expect(session.snapshot().settings.units).toBe('mm');
  });
});
