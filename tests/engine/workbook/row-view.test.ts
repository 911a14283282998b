import { describe, expect, test } from 'vitest';
import { isSameRow, loneView, rowViewOf } from '../../../extension/engine/workbook/row-view.ts';
import { openSkinJob } from '../../helpers/skin-job.ts';

const { workbook } = openSkinJob().snapshot();
const [base, ring] = ['base', 'mid'].map((id) => workbook.row('part', id));
if (base === undefined || ring === undefined) throw new Error('The job has lost its rows.');

describe('rowViewOf', () => {
  test('has what stands on the row, directly or through others, and its values', () => {
    const view = rowViewOf(base, workbook);
    expect(view.standing.map(({ id }) => id)).toEqual(['mid', 'tweeter', 'skin']);
    expect(view.value('thickness')).toMatchObject({ base: 6.35 });
    expect(view.standing[0]?.value('size')).toMatchObject({ base: 190.5 });
  });
});

describe('loneView', () => {
  test('has the row’s values and nothing that stands on it; a blank is no value', () => {
    const view = loneView(ring);
    expect(view).toMatchObject({ id: 'mid', kind: 'ring', standing: [] });
    expect(view.value('at_x')).toMatchObject({ base: -114.3 });
    expect(view.value('driver')).toBeUndefined();
  });
});

describe('isSameRow', () => {
  test('goes by table, id and occurrence', () => {
    expect(isSameRow(base, workbook.row('part', 'base'))).toBe(true);
    expect(isSameRow(base, ring)).toBe(false);
    expect(isSameRow(base, undefined)).toBe(false);
  });
});
