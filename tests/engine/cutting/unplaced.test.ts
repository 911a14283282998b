import { describe, expect, test } from 'vitest';
import { unplacedParts } from '../../../extension/engine/cutting/unplaced.ts';

describe('unplacedParts', () => {
  test('copies of a part are counted together', () => {
    const base = { id: 'base', length: 1, width: 1, count: 3 };
    const ring = { id: 'ring', length: 1, width: 1, count: 1 };
    expect(unplacedParts([base, ring, base])).toEqual([
      { part: 'base', count: 2 },
      { part: 'ring', count: 1 },
    ]);
  });
});
