import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { RowRef } from '../../../extension/engine/job/source.ts';
import { sample } from './arbitrary-files.ts';

function renamed(text: string, row: RowRef, id: string): string {
  const result = applyEdits(readFile(text), [{ kind: 'rename-row', row, id }]);
  return result.ok ? result.value.reading.text : result.problem.code;
}

/** Cells of a part in which a formula stands, after the part `base` is renamed `board`. */
function formulaAfter(formula: string): string {
  const text = `format = 1\n\n[[part]]\nid = "base"\n\n[[part]]\nid = "ring"\n\nsize = '${formula}'\n`;
  const after = readFile(renamed(text, { table: 'part', id: 'base' }, 'board'));
  return after.tables.get('part')?.[1]?.cells.get('size')?.text ?? '';
}

describe('applyEdits, rename-row', () => {
  test('[J20] links and formulas that mean the row take its new id, nothing else does', () => {
    const text = renamed(sample, { table: 'part', id: 'base' }, 'board');
    expect(text).toBe(
      sample
        .replace('id = "base"', 'id = "board"')
        .replaceAll('on = "base"', 'on = "board"')
        .replace('base.perimeter', 'board.perimeter')
        .replace('on(base, ring)', 'on(board, ring)'),
    );
    const driver = renamed(sample, { table: 'driver', id: 'mid' }, 'woofer');
    expect(driver).toBe(
      sample.replace('id = "mid"', 'id = "woofer"').replace('driver = "mid"', 'driver = "woofer"'),
    );
  });

  test('[J20] a measure is meant behind job, a constant behind book', () => {
    const measure = renamed(sample, { table: 'measure', id: 'cavity' }, 'window');
    expect(measure).toContain('job.window');
    expect(measure).not.toContain('job.cavity');
    const text = `format = 1\n[[constant]]\nid = "gap"\n[[part]]\nid = "a"\nsize = "=book.gap + job.gap"\n`;
    expect(renamed(text, { table: 'constant', id: 'gap' }, 'room')).toContain(
      '"=book.room + job.gap"',
    );
  });

  test.each([
    ['=base.depth + base.size', '=board.depth + board.size'],
    ['=-base.depth * 50%', '=-board.depth * 50%'],
    ['=SUM(on(base, base).wall)', '=SUM(on(board, base).wall)'],
    ['=SUM(all(base).wall)', '=SUM(all(base).wall)'],
    ['=SKIN.AREA(base)', '=SKIN.AREA(board)'],
    ['=base + on.base', '=base + on.base'],
    ['="base.depth"', '="base.depth"'],
    ['=baseline.depth', '=baseline.depth'],
    ['=base.depth +', '=base.depth +'],
    ['base.depth', 'base.depth'],
  ])('[J20] %s becomes %s', (before, after) => {
    expect(formulaAfter(before)).toBe(after);
  });

  test('[J20] a word that is a column of the row stays, whatever rows are called', () => {
    const text = `format = 1\n[[part]]\nid = "size"\n[[part]]\nid = "a"\ndepth = "=MAX(size, size.depth)"\n`;
    expect(renamed(text, { table: 'part', id: 'size' }, 'big')).toContain(
      '"=MAX(size, big.depth)"',
    );
  });

  test('[J4] where two rows bear the id, only the row that is meant is renamed', () => {
    const text = `${sample}\n[[part]]\nid = "base"\n`;
    const after = renamed(text, { table: 'part', id: 'base', occurrence: 1 }, 'board');
    expect(after).toBe(`${sample}\n[[part]]\nid = "board"\n`);
  });

  test('[J20] kinds are renamed where rows and lists of ids name them, templates are not', () => {
    const text = `format = 1
[[part]]
id = "a"
kind = "rib"
size = "=MAX(all(rib, ring).size)"
[[kind]]
id = "rib"
name = "rib"
on = ["base", "rib"]
[[kit_row]]
id = "k"
set.kind = "rib"
`;
    const after = renamed(text, { table: 'kind', id: 'rib' }, 'stay');
    expect(after).toBe(
      text
        .replace('kind = "rib"', 'kind = "stay"')
        .replace('all(rib', 'all(stay')
        .replace('id = "rib"', 'id = "stay"')
        .replace('["base", "rib"]', '["base", "stay"]'),
    );
  });

  test('[J20] a material’s links, draws included', () => {
    const text = `format = 1\n[[part]]\nid = "a"\nmaterial = "ply"\ndraw.glue.material = "ply"\nname = "ply"\n[[material]]\nid = "ply"\n`;
    const after = renamed(text, { table: 'material', id: 'ply' }, 'birch');
    expect(after).toBe(text.replaceAll(/(material|id) = "ply"/g, '$1 = "birch"'));
  });

  test('[J21] a column that is renamed keeps its key', () => {
    const text = 'format = 1\n\n[[column]]\nid = "reveal"\n\ntable = "part"\n';
    expect(renamed(text, { table: 'column', id: 'reveal' }, 'gap')).toBe(
      'format = 1\n\n[[column]]\nid = "gap"\n\ntable = "part"\nkey = "reveal"\n',
    );
  });

  test('[J20] a formula among the settings is one too', () => {
    const text = `format = 1\n[job]\nnote = "=base.depth"\n[[part]]\nid = "base"\n`;
    expect(renamed(text, { table: 'part', id: 'base' }, 'board')).toContain(
      'note = "=board.depth"',
    );
  });

  test('[J5] a row without an id gets one', () => {
    const text = 'format = 1\n\n[[part]]\nname = "x"\n';
    expect(renamed(text, { table: 'part', id: '' }, 'base')).toContain(
      '[[part]]\nid = "base"\nname',
    );
  });

  test('an id that is taken or barred is refused, the same id is no change', () => {
    const base = { table: 'part', id: 'base' };
    expect(renamed(sample, base, 'skin')).toBe('edit-id-taken');
    expect(renamed(sample, base, 'on')).toBe('edit-id-reserved');
    expect(renamed(sample, base, 'base')).toBe(sample);
    expect(renamed(sample, { table: 'part', id: 'gone' }, 'x')).toBe('edit-row-missing');
  });
});
