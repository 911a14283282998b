import { describe, expect, test } from 'vitest';
import { openMaterials } from '../../../extension/engine/estimate/materials.ts';
import { changedRows, tablesOf } from '../../../extension/engine/estimate/table-changes.ts';
import { answersOver, fakeRow, inches } from '../../helpers/fake-answers.ts';

const glue = fakeRow('material', { id: 'glue', form: 'liquid' });
const board = fakeRow('material', { id: 'board', form: 'sheet' });
const quart = fakeRow('pack', { id: 'quart', material: 'glue', holds: '1 qt', price: '9 USD' });

function tables(materials: readonly ReturnType<typeof fakeRow>[], packs = [quart]) {
  return tablesOf(
    answersOver(
      new Map([
        ['material', materials],
        ['pack', packs],
      ]),
    ),
  );
}

describe('openMaterials', () => {
  test('only what changed is read again', () => {
    const materials = openMaterials(inches);
    const first = tables([glue, board]);
    const before = materials.update(first, changedRows(new Map(), first).keys).materials;
    const dearer = fakeRow('pack', {
      id: 'quart',
      material: 'glue',
      holds: '1 qt',
      price: '10 USD',
    });
    const second = tables([glue, board], [dearer]);
    const after = materials.update(second, changedRows(first, second).keys);
    expect(after.changed).toEqual(['material/glue']);
    expect(after.materials.get('board')).toBe(before.get('board'));
    expect(after.materials.get('glue')?.packs[0]?.price).toBe(1000);
  });

  test('a material that went is named', () => {
    const materials = openMaterials(inches);
    const first = tables([glue, board]);
    materials.update(first, changedRows(new Map(), first).keys);
    const second = tables([glue]);
    expect(materials.update(second, changedRows(first, second).keys).changed).toEqual([
      'material/board',
    ]);
  });

  test('an edit elsewhere touches none', () => {
    const materials = openMaterials(inches);
    const first = tables([glue]);
    const before = materials.update(first, changedRows(new Map(), first).keys).materials;
    const after = materials.update(first, new Set(['part/base']));
    expect(after.changed).toEqual([]);
    expect(after.materials).toBe(before);
  });
});
