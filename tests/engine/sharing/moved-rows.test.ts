import { describe, expect, test } from 'vitest';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { matchRows } from '../../../extension/engine/sharing/match-rows.ts';
import { movedRows } from '../../../extension/engine/sharing/moved-rows.ts';
import { parts } from '../job/editing.ts';

function moved(before: string, after: string): readonly string[] {
  const [was, now] = [readFile(before), readFile(after)];
  return [...movedRows(was, now, matchRows(was, now).pairs)].map(({ id }) => id).sort();
}

describe('movedRows', () => {
  const three = parts('a 1000', 'b 2000', 'c 3000');

  test('a row that was put above two others has moved alone', () => {
    expect(moved(three, parts('a 1000', 'b 2000', 'c 500'))).toEqual(['c']);
  });

  test('new numbers in the same order are no move', () => {
    expect(moved(three, parts('a 10', 'b 20', 'c 30'))).toEqual([]);
  });

  test('a row moves by no row that came or went', () => {
    expect(moved(three, parts('aa 1', 'b 2000', 'c 3000'))).toEqual([]);
  });

  test('two rows that changed places have both moved', () => {
    expect(moved(three, parts('a 2000', 'b 1000', 'c 3000'))).toEqual(['a', 'b']);
  });

  test('rows without a number stand by their place in the file', () => {
    expect(moved(parts('a 1000', 'b', 'c'), parts('a 1000', 'c', 'b'))).toEqual(['b', 'c']);
  });
});
