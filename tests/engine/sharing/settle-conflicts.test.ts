import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { mergeJobs } from '../../../extension/engine/sharing/merge-jobs.ts';
import type { Choice } from '../../../extension/engine/sharing/conflict.ts';
import {
  openConflicts,
  settledText,
  stretchChange,
} from '../../../extension/engine/sharing/settle-conflicts.ts';
import { changedText } from '../../../extension/engine/job/text-changes.ts';
import { sample } from '../job/arbitrary-files.ts';
import { pairOf } from '../../helpers/merge-trial.ts';
import { sourceText } from '../../helpers/source-files.ts';

function edited(text: string, ...edits: readonly Edit[]): string {
  const done = applyEdits(readFile(text), edits);
  if (!done.ok) throw new Error(done.problem.message);
  return done.value.reading.text;
}

const ring = { table: 'part', id: 'mid_ring' };

function set(column: string, text: string | undefined, row = ring): Edit {
  return { kind: 'set-cell', row, column, text };
}

/** What git writes into a file where nobody set up merging. */
function byGit(ours: string, theirs: string, base = sample, style = '--diff3'): string {
  const folder = mkdtempSync(join(tmpdir(), 'panelwright-hunks-'));
  const files = { ours, base, theirs };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const args = ['merge-file', '-p', ...(style === '' ? [] : [style]), 'ours', 'base', 'theirs'];
  const { stdout } = spawnSync('git', args, { cwd: folder, encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  return stdout;
}

const steep = edited(sample, set('tilt', '18 deg'), set('qty', '4'));
const steeper = edited(sample, set('tilt', '20 deg'), set('depth', '2 in'));

function choices(...list: readonly (readonly [string, Choice])[]): ReadonlyMap<string, Choice> {
  return new Map(list);
}

describe('openConflicts', () => {
  test('a stretch of lines that git marked is one cell in conflict; the rest merges by itself', () => {
    const text = byGit(steep, steeper);
    expect(text).toContain('<<<<<<<');
    const open = openConflicts(text);
    expect(open?.byCell).toBe(true);
    expect(open?.conflicts.map(({ key, base, ours, theirs }) => [key, base, ours, theirs])).toEqual(
      [['part/mid_ring#0/tilt', '15 deg', '18 deg', '20 deg']],
    );
  });

  test('where git’s markers do not tell what stood before, the version before may be given', () => {
    const text = byGit(steep, steeper, sample, '');
    expect(openConflicts(text)?.conflicts.every(({ baseKnown }) => !baseKnown)).toBe(true);
    expect(openConflicts(text, sample)?.conflicts.map(({ base }) => base)).toEqual(['15 deg']);
  });

  test('a file without markers has none', () => {
    expect(openConflicts(sample)).toBeUndefined();
  });

  test('sides that cannot be read as jobs are stretches of lines', () => {
    const text = `${sample}\n<<<<<<< a\nbroken = = 1\n=======\nbroken = = 2\n>>>>>>> b\n`;
    const open = openConflicts(text);
    expect(open?.byCell).toBe(false);
    expect(settledText(text, choices(['lines 1', 'theirs']))).toBe(`${sample}\nbroken = = 2\n`);
  });
});

/** The text after one choice after the other, theirs and ours in turn. */
function settledToTheEnd(start: string): string {
  let text = start;
  for (let step = 0; step < 80; step++) {
    const [first] = openConflicts(text)?.conflicts ?? [];
    if (first === undefined) break;
    text = settledText(text, choices([first.key, step % 2 === 0 ? 'theirs' : 'ours']));
  }
  return openConflicts(text) === undefined ? text : settledText(text, new Map());
}

describe('settledText', () => {
  test('the last choice takes the markers away and keeps every other letter', () => {
    const text = byGit(steep, steeper);
    const both = edited(sample, set('qty', '4'), set('depth', '2 in'));
    const key = 'part/mid_ring#0/tilt';
    const tilt = (degrees: string): string => edited(both, set('tilt', degrees));
    expect(settledText(text, choices([key, 'ours']))).toBe(tilt('18 deg'));
    expect(settledText(text, choices([key, 'theirs']))).toBe(tilt('20 deg'));
  });

  test('what is still open stays marked and can be gone on with', () => {
    const ours = edited(sample, set('tilt', '18 deg'), set('size', '7 in'));
    const theirs = edited(sample, set('tilt', '20 deg'), set('size', '9 in'));
    for (const style of ['--diff3', '']) {
      const text = byGit(ours, theirs, sample, style);
      const half = settledText(text, choices(['part/mid_ring#0/tilt', 'theirs']));
      expect(readFile(half).state).toBe('conflicted');
      expect(openConflicts(half)?.conflicts.map(({ key }) => key)).toEqual([
        'part/mid_ring#0/size',
      ]);
      const whole = settledText(half, choices(['part/mid_ring#0/size', 'ours']));
      expect(whole).toBe(edited(sample, set('tilt', '20 deg'), set('size', '7 in')));
    }
  });

  test('a row that the other side uses is still a choice when the file is read again', () => {
    const row = { table: 'part', id: 'skin' };
    const ours = edited(sample, { kind: 'delete-row', row });
    const theirs = edited(sample, set('size', '=skin.length'));
    const { text = '' } = mergeJobs(sample, ours, theirs) ?? {};
    expect(openConflicts(text)?.conflicts.map(({ key }) => key)).toEqual(['part/skin#0']);
    expect(settledText(text, choices(['part/skin#0', 'theirs']))).toBe(theirs);
  });

  test('two rows under one id: ours, theirs or both, and what speaks of them follows', () => {
    const insert = (size: string): Edit => {
      return { kind: 'insert-row', table: 'part', id: 'extra', cells: { kind: 'ring', size } };
    };
    const ours = edited(sample, insert('5 in'));
    const theirs = edited(sample, insert('6 in'), set('size', '=extra.size'));
    const { text = '' } = mergeJobs(sample, ours, theirs) ?? {};
    expect(text).toContain('>>>>>>> theirs, put in as extra\n');
    const [found] = openConflicts(text)?.conflicts ?? [];
    expect(found).toMatchObject({ kind: 'twice', choices: ['ours', 'theirs', 'both'] });
    const key = found?.key ?? '';
    const one = readFile(settledText(text, choices([key, 'ours'])));
    const sizes = (reading: typeof one): readonly unknown[] =>
      (reading.tables.get('part') ?? []).map(({ id, cells }) => [id, cells.get('size')?.text]);
    expect(sizes(one)).toContainEqual(['extra', '5 in']);
    expect(sizes(one)).toContainEqual(['mid_ring', '=extra.size']);
    expect(sizes(one)).not.toContainEqual(['extra_2', '6 in']);
    const other = readFile(settledText(text, choices([key, 'theirs'])));
    expect(sizes(other)).toContainEqual(['extra', '6 in']);
    const both = readFile(settledText(text, choices([key, 'both'])));
    expect(sizes(both)).toContainEqual(['extra_2', '6 in']);
    expect(sizes(both)).toContainEqual(['mid_ring', '=extra_2.size']);
    expect(both.state).toBe('readable');
  });

  test('a row renamed on both sides: its new name is chosen, references and all', () => {
    const rename = (id: string): Edit => ({ kind: 'rename-row', row: ring, id });
    const [ours, theirs] = [edited(sample, rename('a_ring')), edited(sample, rename('b_ring'))];
    const { text = '' } = mergeJobs(sample, ours, theirs) ?? {};
    const [found] = openConflicts(text)?.conflicts ?? [];
    expect(found?.kind).toBe('name');
    expect(settledText(text, choices([found?.key ?? '', 'theirs']))).toBe(theirs);
  });

  test('every file that git or we mark can be settled to the end, one choice after the other', () => {
    const job = sourceText('sample-jobs/two-ring-door.paneljob');
    for (let seed = 1; seed <= 20; seed++) {
      const { ours, theirs } = pairOf(job, seed);
      const marked = mergeJobs(job, ours.text, theirs.text)?.text ?? '';
      for (const text of [marked, byGit(ours.text, theirs.text, job, '')]) {
        expect([seed, readFile(settledToTheEnd(text)).state]).toEqual([seed, 'readable']);
      }
    }
  });
});

describe('stretchChange', () => {
  test('is the one stretch in which two texts differ', () => {
    expect(stretchChange('abc', 'abc')).toEqual([]);
    expect(stretchChange('a1c', 'a22c')).toEqual([{ start: 1, end: 2, text: '22' }]);
    expect(changedText('aaa', stretchChange('aaa', 'aa'))).toBe('aa');
  });
});
