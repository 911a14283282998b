import { describe, expect, test } from 'vitest';
import { openSession } from '../../../extension/engine/index.ts';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { conflictHunks, sideOfConflicts } from '../../../extension/engine/sharing/conflict-text.ts';
import { mergeJobs } from '../../../extension/engine/sharing/merge-jobs.ts';
import { cellTexts, differences } from '../../helpers/merge-pairs.ts';
import {
  isDisjoint,
  mergedPair,
  newProblems,
  pairOf,
  wrongCells,
  type Pair,
} from '../../helpers/merge-trial.ts';
import { sourceText } from '../../helpers/source-files.ts';

const job = sourceText('sample-jobs/two-ring-door.paneljob');
const book = sourceText('sample-jobs/books/demo-shop.panelbook');

/** Seeds of the pairs; `MERGE_PAIRS=5000` tries more. */
const count = Number(process.env['MERGE_PAIRS'] ?? '200');
const pairs: readonly Pair[] = Array.from({ length: count }, (_, seed) => pairOf(job, seed + 1));

describe('two branches of random gestures', () => {
  test('that touched different cells never conflict, and give what both gestures give', () => {
    const wrong: unknown[] = [];
    let disjoint = 0;
    for (const [index, pair] of pairs.entries()) {
      if (!isDisjoint(pair)) continue;
      disjoint++;
      const { text, conflicts } = mergedPair(pair);
      const cells = wrongCells(text, pair);
      const spoilt = conflicts.length > 0 || (cells !== undefined && cells.length > 0);
      if (spoilt)
        wrong.push({ seed: index + 1, conflicts: conflicts.map(({ key }) => key), cells });
    }
    expect(wrong).toEqual([]);
    expect(disjoint).toBeGreaterThan(count / 2);
  });

  test('merge alike in either order, but for the sides of what is in conflict', () => {
    const wrong: unknown[] = [];
    for (const [index, pair] of pairs.entries()) {
      const one = mergedPair(pair);
      const other = mergedPair({ base: pair.base, ours: pair.theirs, theirs: pair.ours });
      const same =
        one.conflicts.length === other.conflicts.length &&
        (one.conflicts.length > 0 ||
          differences(cellTexts(one.text), cellTexts(other.text)).length === 0);
      if (!same) wrong.push(index + 1);
    }
    expect(wrong).toEqual([]);
  });

  test('never leave a problem that neither had, nor lose markers', () => {
    const wrong: unknown[] = [];
    for (const [index, pair] of pairs.entries()) {
      const { text, conflicts } = mergedPair(pair);
      const problems = conflicts.length === 0 ? newProblems(text, pair) : [];
      const marked = conflictHunks(text).length === conflicts.length;
      const sides = ['ours', 'theirs'] as const;
      const readable = sides.every(
        (side) => readFile(sideOfConflicts(text, side) ?? '').state === 'readable',
      );
      if (problems.length > 0 || !marked || !readable) wrong.push([index + 1, problems]);
    }
    expect(wrong).toEqual([]);
  });

  test('where one did nothing, or both the same, the other’s file comes out to the letter', () => {
    for (const { base, ours, theirs } of pairs.slice(0, 50)) {
      expect(mergeJobs(base, base, theirs.text)?.text).toBe(theirs.text);
      expect(mergeJobs(base, ours.text, base)?.text).toBe(ours.text);
      expect(mergeJobs(base, ours.text, ours.text)?.text).toBe(ours.text);
    }
  });

  test('where ours changed one setting only, the other’s file comes out with that one line more', () => {
    const setting = { kind: 'set-head', key: 'exclusions', text: 'paint' } as const;
    const withSetting = (text: string): string => {
      const done = applyEdits(readFile(text), [setting]);
      return done.ok ? done.value.reading.text : '';
    };
    for (const { base, theirs } of pairs.slice(0, 50)) {
      const merged = mergeJobs(base, withSetting(base), theirs.text);
      expect(merged?.conflicts).toEqual([]);
      expect(cellTexts(merged?.text ?? '')).toEqual(cellTexts(withSetting(theirs.text)));
    }
  });

  test('calculate: no cell of the merged job has a problem that neither branch had', () => {
    const told = (text: string): readonly string[] =>
      openSession(text, book)
        .snapshot()
        .problems.filter(({ problem }) => problem.severity === 'error')
        .map(
          ({ problem }) =>
            `${problem.code} ${problem.place?.table ?? ''} ${problem.place?.column ?? ''}`,
        );
    const wrong: unknown[] = [];
    for (const [index, pair] of pairs.slice(0, 15).entries()) {
      const { text, conflicts } = mergedPair(pair);
      if (conflicts.length > 0) continue;
      const known = new Set([...told(pair.ours.text), ...told(pair.theirs.text)]);
      const fresh = told(text).filter((one) => !known.has(one));
      if (fresh.length > 0) wrong.push([index + 1, fresh]);
    }
    expect(wrong).toEqual([]);
  });
});
