import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { mergeJobs, type MergedJob } from '../../../extension/engine/sharing/merge-jobs.ts';
import { sample } from '../job/arbitrary-files.ts';

function edited(text: string, ...edits: readonly Edit[]): string {
  const done = applyEdits(readFile(text), edits);
  if (!done.ok) throw new Error(done.problem.message);
  return done.value.reading.text;
}

const ring = { table: 'part', id: 'mid_ring' };

function set(column: string, text: string | undefined, row = ring): Edit {
  return { kind: 'set-cell', row, column, text };
}

function merged(ours: string, theirs: string, base: string | undefined = sample): MergedJob {
  const done = mergeJobs(base, ours, theirs);
  if (done === undefined) throw new Error('not a job');
  return done;
}

function clean(ours: string, theirs: string): string {
  const { text, conflicts } = merged(ours, theirs);
  expect(conflicts).toEqual([]);
  return text;
}

/** What the merged text says of the first conflict. */
function only(ours: string, theirs: string): readonly unknown[] {
  const { conflicts, text } = merged(ours, theirs);
  expect(conflicts).toHaveLength(1);
  expect(readFile(text).state).toBe('conflicted');
  const [one] = conflicts;
  return [one?.kind, one?.key, one?.base, one?.ours, one?.theirs];
}

describe('mergeJobs, cells', () => {
  test('two cells of one row, on lines next to each other, merge', () => {
    const ours = edited(sample, set('tilt', '18 deg'));
    const theirs = edited(sample, set('depth', '2 in'));
    expect(clean(ours, theirs)).toBe(edited(sample, set('depth', '2 in'), set('tilt', '18 deg')));
  });

  test('a cell that both set alike is no conflict', () => {
    const ours = edited(sample, set('tilt', '18 deg'));
    expect(clean(ours, edited(ours, set('qty', '4')))).toBe(edited(ours, set('qty', '4')));
  });

  test('a cell that both changed is a conflict with all three texts', () => {
    const ours = edited(sample, set('tilt', '18 deg'));
    const theirs = edited(sample, set('tilt', '20 deg'));
    const found = only(ours, theirs);
    expect(found).toEqual(['cell', 'part/mid_ring#0/tilt', '15 deg', '18 deg', '20 deg']);
    expect(merged(ours, theirs).text).toBe(
      ours.replace(
        'tilt = "18 deg"\n',
        '<<<<<<< ours\ntilt = "18 deg"\n||||||| base\ntilt = "15 deg"\n=======\ntilt = "20 deg"\n>>>>>>> theirs\n',
      ),
    );
  });

  test('a cell cleared on one side and changed on the other is a conflict', () => {
    const ours = edited(sample, set('qty', undefined));
    const found = only(ours, edited(sample, set('qty', '4')));
    expect(found).toEqual(['cell', 'part/mid_ring#0/qty', '2', undefined, '4']);
    expect(merged(ours, edited(sample, set('qty', '4'))).text).toContain(
      '<<<<<<< ours\n||||||| base\nqty = 2\n=======\nqty = 4\n>>>>>>> theirs\n',
    );
  });

  test('settings merge key by key', () => {
    const ours = edited(sample, { kind: 'set-head', key: 'client', text: 'A' });
    const theirs = edited(sample, { kind: 'set-head', key: 'vehicle', text: 'B' });
    const both = readFile(clean(ours, theirs)).head;
    expect([both.get('client')?.text, both.get('vehicle')?.text]).toEqual(['A', 'B']);
  });

  test('a value is taken over as it is spelt', () => {
    const theirs = sample.replace('qty = 2\n', "qty = '''2'''\n").replace('= "8 in"', "= '9 in'");
    const text = clean(edited(sample, set('tilt', '18 deg')), theirs);
    expect(text).toContain("size = '9 in'");
  });
});

describe('mergeJobs, rows', () => {
  const insert = (id: string, size: string): Edit => {
    return { kind: 'insert-row', table: 'part', id, cells: { kind: 'ring', size } };
  };

  test('rows put in on both sides both stay, each in its place', () => {
    const text = clean(
      edited(sample, insert('aaa', '5 in')),
      edited(sample, insert('zzz', '6 in')),
    );
    expect(text).toBe(
      edited(sample, insert('aaa', '5 in'), insert('zzz', '6 in')).replace(
        'order = 5000',
        'order = 4000',
      ),
    );
  });

  test('a row taken out on one side goes where the other left it as it was', () => {
    const ours = edited(sample, { kind: 'delete-row', row: { table: 'task', id: 'fit' } });
    const text = clean(ours, edited(sample, set('tilt', '18 deg')));
    expect(text).toBe(edited(ours, set('tilt', '18 deg')));
  });

  test('a row taken out on one side and changed on the other is a conflict', () => {
    const row = { table: 'task', id: 'fit' };
    const ours = edited(sample, { kind: 'delete-row', row });
    const theirs = edited(sample, set('name', 'Hang both doors', row));
    expect(only(ours, theirs).slice(0, 2)).toEqual(['row', 'task/fit#0']);
    expect(only(theirs, ours).slice(0, 2)).toEqual(['row', 'task/fit#0']);
  });

  test('a row taken out on one side that a formula of the other speaks of is a conflict', () => {
    const row = { table: 'part', id: 'skin' };
    const ours = edited(sample, { kind: 'delete-row', row });
    const theirs = edited(sample, set('size', '=skin.length'));
    expect(only(ours, theirs).slice(0, 2)).toEqual(['row', 'part/skin#0']);
  });

  test('a row moved on both sides is a conflict; moved on one it moves', () => {
    const move = (after: string | null): Edit => ({ kind: 'move-row', row: ring, after });
    expect(only(edited(sample, move(null)), edited(sample, move('skin'))).slice(0, 2)).toEqual([
      'cell',
      'part/mid_ring#0/order',
    ]);
    const ours = edited(sample, move('skin'));
    expect(clean(ours, edited(sample, set('tilt', '18 deg')))).toBe(
      edited(ours, set('tilt', '18 deg')),
    );
  });

  test('two different rows under one id are told apart, references and all', () => {
    const ours = edited(sample, insert('extra', '5 in'));
    const theirs = edited(sample, insert('extra', '6 in'), set('size', '=extra.size'));
    const found = only(ours, theirs);
    expect(found.slice(0, 2)).toEqual(['twice', 'part/extra_2#0']);
    const both = mergeJobs(sample, ours, theirs, { choose: () => 'both' });
    expect(both?.conflicts).toEqual([]);
    expect(both?.text).toContain('size = "=extra_2.size"');
    const one = mergeJobs(sample, ours, theirs, { choose: () => 'theirs' })?.text ?? '';
    expect(one).toContain('size = "=extra.size"');
    expect(one).toContain('size = "6 in"');
    expect(one).not.toContain('size = "5 in"');
  });

  test('one row put in alike on both sides is one row', () => {
    const ours = edited(sample, insert('extra', '5 in'), set('tilt', '18 deg'));
    const theirs = edited(sample, insert('extra', '5 in'), set('qty', '4'));
    expect(clean(ours, theirs).split('id = "extra"')).toHaveLength(2);
  });
});

describe('mergeJobs, names', () => {
  const rename = (id: string): Edit => ({ kind: 'rename-row', row: ring, id });

  test('a formula written on one side follows the row that the other renamed', () => {
    const ours = edited(sample, rename('woofer_ring'));
    const theirs = edited(
      sample,
      set('size', '=mid_ring.size + 1in', { table: 'part', id: 'skin' }),
    );
    for (const text of [clean(ours, theirs), clean(theirs, ours)]) {
      expect(text).toContain('size = "=woofer_ring.size + 1in"');
      expect(text).toContain('basis = "=woofer_ring.depth + SUM(on(base, ring).wall) / 1in"');
      expect(text).not.toContain('id = "mid_ring"');
    }
  });

  test('a cell changed on one side lands in the row that the other renamed', () => {
    const ours = edited(sample, rename('woofer_ring'));
    const text = clean(ours, edited(sample, set('tilt', '18 deg')));
    expect(text).toBe(edited(ours, set('tilt', '18 deg', { table: 'part', id: 'woofer_ring' })));
  });

  test('a row renamed on both sides is a conflict over its name', () => {
    const ours = edited(sample, rename('a_ring'));
    const theirs = edited(sample, rename('b_ring'));
    expect(only(ours, theirs)).toEqual([
      'name',
      'part/a_ring#0/id',
      'mid_ring',
      'a_ring',
      'b_ring',
    ]);
    const chosen = mergeJobs(sample, ours, theirs, { choose: () => 'theirs' });
    expect(chosen?.text).toBe(theirs);
  });

  test('a row renamed on one side and taken out on the other is a conflict', () => {
    const row = { table: 'part', id: 'skin' };
    const ours = edited(sample, { kind: 'rename-row', row, id: 'cover' });
    const theirs = edited(sample, { kind: 'delete-row', row });
    expect(only(ours, theirs).slice(0, 2)).toEqual(['row', 'part/cover#0']);
  });

  test('a name that the other side gave to a new row is a conflict', () => {
    const ours = edited(sample, rename('extra'));
    const theirs = edited(sample, {
      kind: 'insert-row',
      table: 'part',
      id: 'extra',
      cells: { kind: 'ring', size: '5 in' },
    });
    expect(only(ours, theirs).slice(0, 2)).toEqual(['twice', 'part/extra_2#0']);
    expect(only(theirs, ours)).toEqual([
      'name',
      'part/mid_ring#0/id',
      'mid_ring',
      'mid_ring',
      'extra',
    ]);
  });
});

describe('mergeJobs, what is no cell', () => {
  const ours = edited(sample, set('qty', '4'));

  test('a remark above a key, behind a value, above a row and between blank lines comes over', () => {
    const theirs = sample
      .replace('tilt = "15 deg"', '# second line\ntilt = "15 deg" # measured twice')
      .replace('# The left one needs the wider ring.\n', '# Both need the wider ring.\n')
      .replace('size = "8 in"\n', 'size = "8 in"\n\n# set off\n');
    const text = clean(ours, theirs);
    expect(text).toBe(theirs.replace('qty = 2', 'qty = 4'));
    expect(clean(theirs, ours)).toBe(text);
  });

  test('remarks that both wrote at one place both stay', () => {
    const remark = (words: string): string =>
      sample.replace('# as the client sits\n', `# as the client sits\n# ${words}\n`);
    const text = clean(remark('a'), remark('b'));
    expect(text).toContain('# as the client sits\n# a\n# b\ntilt = ');
  });

  test('a remark that one side took away is gone', () => {
    const theirs = sample.replace('# as the client sits\n', '');
    expect(clean(ours, theirs)).toBe(theirs.replace('qty = 2', 'qty = 4'));
  });

  test('an unknown table comes over, and is a conflict where both wrote it', () => {
    const odd = (words: string): string => `${sample}\n[odd]\nwords = "${words}"\n`;
    expect(clean(ours, odd('a'))).toBe(odd('a').replace('qty = 2', 'qty = 4'));
    expect(only(odd('a'), odd('b')).slice(0, 2)).toEqual(['text', 'text odd#0']);
  });
});

describe('mergeJobs, as a whole', () => {
  test('a side that changed nothing gives way to the other to the letter', () => {
    const other = `${sample}\n# a last word`;
    expect(merged(sample, other).text).toBe(other);
    expect(merged(other, sample).text).toBe(other);
    expect(merged(other, other).text).toBe(other);
  });

  test('a file that cannot be read as a job is left to others', () => {
    const broken = sample.replace('tilt = "15 deg"', 'tilt = = 15');
    expect(mergeJobs(sample, edited(sample, set('qty', '4')), broken)).toBeUndefined();
  });

  test('a block that is broken alike in all versions is no hindrance', () => {
    const base = sample.replace('name = "Hang the door"', 'name = = 15');
    const ours = edited(base, set('qty', '4'));
    const theirs = edited(base, set('tilt', '18 deg'));
    expect(merged(ours, theirs, base).text).toBe(edited(ours, set('tilt', '18 deg')));
  });

  test('where the version before is not known every difference is a choice', () => {
    const ours = edited(sample, set('tilt', '18 deg'));
    const theirs = edited(sample, { kind: 'delete-row', row: { table: 'task', id: 'fit' } });
    const done = mergeJobs(undefined, ours, theirs);
    expect(done?.conflicts.map(({ key }) => key)).toEqual(['part/mid_ring#0/tilt', 'task/fit#0']);
    expect(done?.text).toContain(
      '<<<<<<< ours\ntilt = "18 deg"\n=======\ntilt = "15 deg"\n>>>>>>> theirs\n',
    );
  });

  test('a file with CRLF keeps it, whatever the other side has', () => {
    const ours = edited(sample, set('qty', '4')).replaceAll('\n', '\r\n');
    const theirs = edited(sample, {
      kind: 'insert-row',
      table: 'part',
      id: 'zzz',
      cells: { kind: 'ring' },
    });
    const { text, conflicts } = merged(ours, theirs, sample.replaceAll('\n', '\r\n'));
    expect(conflicts).toEqual([]);
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    expect(text).toContain('id = "zzz"\r\n');
  });
});
