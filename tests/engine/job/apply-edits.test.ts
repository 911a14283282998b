import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { sample } from './arbitrary-files.ts';
import { edited, refusal, set, change, order, parts } from './editing.ts';

describe('applyEdits, set-cell', () => {
  test('[J19] one cell is one value on one line', () => {
    expect(change(set('tilt', '18 deg'))).toEqual(['-tilt = "15 deg"', '+tilt = "18 deg"']);
    const result = applyEdits(readFile(sample), [set('tilt', '18 deg')]);
    const start = sample.indexOf('"15 deg"');
    expect(result.ok && result.value.changes).toEqual([
      { start, end: start + 8, text: '"18 deg"' },
    ]);
    expect(change(set('tilt', '15 deg'))).toEqual([]);
  });

  test('[J16] a remark behind a value stays with it', () => {
    const driver = { table: 'driver', id: 'mid' };
    expect(change(set('depth', '3 in', driver))).toEqual([
      '-depth = "2 3/4 in" # with the terminals',
      '+depth = "3 in" # with the terminals',
    ]);
  });

  test('[J7] a new key joins its group, in column order', () => {
    expect(change(set('shape', 'circle(8in)'))).toEqual(['+shape = "circle(8in)"']);
    expect(edited(sample, set('shape', 'circle(8in)'))).toContain('shape = "circle(8in)"\nsize =');
    expect(edited(sample, set('turn', '30 deg'))).toContain('tilt = "15 deg"\nturn = "30 deg"\n');
  });

  test('[J7] a new key of a new group stands between blank lines', () => {
    expect(edited(sample, set('seat', 'top'))).toContain('"15 deg"\n\nseat = "top"\n\nqty = 2\n');
    expect(edited(sample, set('note', 'x'))).toContain('qty = 2\n\nnote = "x"\n\norder = 2000');
    expect(edited(sample, set('odd_key', 'x'))).toContain('\n\nodd_key = "x"\n\norder = 2000');
    expect(edited(sample, set('draw.glue.use', '1 floz'))).toContain(
      '\n\ndraw.glue.use = "1 floz"\n\norder = 2000',
    );
  });

  test('[J7] draws stand by name, then in the order of their words', () => {
    const text = edited(
      sample,
      set('draw.glue.qty', '2'),
      set('draw.glue.use', '1 floz'),
      set('draw.brads.material', 'none'),
      set('draw.glue.material', 'pva'),
    );
    expect(text).toContain(
      '\ndraw.brads.material = "none"\n\ndraw.glue.material = "pva"\ndraw.glue.use = "1 floz"\n\ndraw.glue.qty = 2\n',
    );
  });

  test('[J7] a row written without blank lines keeps its manner', () => {
    const text =
      'format = 1\n[[part]]\nid = "base"\nsize = "8 in"\norder = 5\n[[part]]\nid = "x"\n';
    const base = { table: 'part', id: 'base' };
    expect(edited(text, set('tilt', '5 deg', base), set('kind', 'ring', base))).toBe(
      'format = 1\n[[part]]\nid = "base"\nkind = "ring"\nsize = "8 in"\ntilt = "5 deg"\norder = 5\n[[part]]\nid = "x"\n',
    );
    expect(edited(text, set('tilt', '5 deg', { table: 'part', id: 'x' }))).toBe(
      `${text}\ntilt = "5 deg"\n`,
    );
  });

  test('[J16] a cleared key takes its line and the remark above it along, and an empty group its blank line', () => {
    expect(change(set('tilt', undefined))).toEqual(['-# as the client sits', '-tilt = "15 deg"']);
    expect(change(set('size', undefined))).toEqual(['-size = "8 in"', '-']);
    expect(change(set('seat', undefined))).toEqual([]);
  });

  test('[J1] a file of Windows lines and one without a last line break stay what they are', () => {
    const windows = sample.replaceAll('\n', '\r\n');
    const many = [set('seat', 'top'), set('tilt', undefined), set('name', 'x')];
    expect(edited(windows, ...many)).toBe(edited(sample, ...many).replaceAll('\n', '\r\n'));
    const open = 'format = 1\n\n[[part]]\nid = "base"';
    const base = { table: 'part', id: 'base' };
    expect(edited(open, set('name', 'x', base))).toBe(`${open}\n\nname = "x"`);
    expect(edited(open, set('name', 'x', base), set('name', undefined, base))).toBe(open);
    expect(
      edited(`${open}\r\n\r\nname = "x"`.replaceAll('1\n', '1\r\n'), set('name', undefined, base)),
    ).toBe(open.replaceAll('1\n', '1\r\n'));
  });

  test('[J4] an id is set alone where two rows bear it, and must be free', () => {
    const text = parts('base 1000', 'base 2000');
    const second = { table: 'part', id: 'base', occurrence: 1 };
    expect(order(edited(text, set('id', 'base_2', second)))).toEqual(['base 1000', 'base_2 2000']);
    expect(refusal(sample, set('id', 'skin'))).toBe('edit-id-taken');
    expect(refusal(sample, set('id', undefined))).toBe('edit-id-needed');
    expect(refusal(sample, set('id', 'Big Ring'))).toBe('edit-id-ill-formed');
    expect(refusal(sample, set('id', 'driver'))).toBe('edit-id-reserved');
  });

  test('[J19] many cells set at once are one gesture, and one that cannot be set stops all', () => {
    const rows = ['base', 'mid_ring', 'skin'].map((id) => ({ table: 'part', id }));
    const fill = rows.map((row) => set('qty', '3', row));
    const text = edited(sample, ...fill);
    const quantities = readFile(text)
      .tables.get('part')
      ?.map((row) => row.cells.get('qty')?.text);
    expect(quantities).toEqual(['3', '3', '3']);
    expect(refusal(sample, ...fill, set('qty', '1', { table: 'part', id: 'gone' }))).toBe(
      'edit-row-missing',
    );
    expect(refusal(sample, ...fill, set('draw', 'x', { table: 'part', id: 'skin' }))).toBe(
      'edit-key-clash',
    );
  });

  test('[J17] a locked row takes no edit, the others do', () => {
    const text = `${sample}\n[[part]]\nid = "odd"\nsize = 8 in\n`;
    expect(refusal(text, set('size', '8 in', { table: 'part', id: 'odd' }))).toBe(
      'edit-row-locked',
    );
    expect(edited(text, set('tilt', '1 deg'))).toBe(text.replace('15 deg', '1 deg'));
  });

  test.each([
    ['format = 2\n', 'file-newer'],
    ['<<<<<<< ours\n', 'file-conflicted'],
    ['no job at all\n', 'file-unreadable'],
  ])('[J18] a file that begins %j takes no edit', (text, code) => {
    expect(refusal(text, { kind: 'set-head', key: 'title', text: 'x' })).toBe(code);
  });
});

describe('applyEdits, set-head', () => {
  test('[J3] keys of the head stand in their groups', () => {
    const edits: Edit[] = [
      { kind: 'set-head', key: 'fraction', text: '32' },
      { kind: 'set-head', key: 'client', text: undefined },
      { kind: 'set-head', key: 'date', text: '2026-12-01' },
    ];
    const text = edited(sample, ...edits);
    expect(text).toContain(
      'title = "Front door pair"\nvehicle = "Demo coupe"\n\ndate = 2026-12-01\n',
    );
    expect(text).toContain('currency = "USD"\nfraction = "32"\n\nbook');
  });

  test('[J3] a file without a head gets one below its format', () => {
    const title: Edit = { kind: 'set-head', key: 'title', text: 'x' };
    expect(edited('format = 1\n', title)).toBe('format = 1\n\n[job]\ntitle = "x"\n');
    expect(edited('', title)).toBe('[job]\ntitle = "x"\n');
    expect(edited('[[part]]\nid = "a"\n', title)).toBe(
      '[job]\ntitle = "x"\n\n[[part]]\nid = "a"\n',
    );
    expect(edited('format = 1', { ...title, text: undefined })).toBe('format = 1');
    const broken = 'format = 1\n[job]\ntitle = x y\n[[part]]\nid = "a"\n';
    expect(refusal(broken, title)).toBe('edit-head-locked');
  });
});
