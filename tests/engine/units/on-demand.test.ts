import { describe, expect, test } from 'vitest';
import { onDemand } from '../../../extension/engine/units/on-demand.ts';

const wordsOnDemand = onDemand('words');

describe('onDemand', () => {
  test('a property is worked out when it is asked for, and not before', () => {
    let asked = 0;
    const line = wordsOnDemand({ id: 'resin' }, () => ['bought', String((asked += 1))]);
    expect([line.id, asked]).toEqual(['resin', 0]);
    expect([line.words, asked]).toEqual([['bought', '1'], 1]);
  });

  test('to whoever compares, copies or writes the object out it is a property like any other', () => {
    const line = wordsOnDemand({ id: 'resin' }, () => ['bought']);
    expect(line).toEqual({ id: 'resin', words: ['bought'] });
    expect(line).not.toEqual({ id: 'resin', words: ['charged'] });
    expect({ ...line }).toStrictEqual({ id: 'resin', words: ['bought'] });
    expect(JSON.stringify(line)).toBe('{"id":"resin","words":["bought"]}');
    expect(Object.keys(line)).toEqual(['id', 'words']);
  });

  test('two objects have an answer each, and one object may have two such properties', () => {
    const countOnDemand = onDemand('count');
    const [one, two] = [1, 2].map((count) =>
      countOnDemand(
        wordsOnDemand({}, () => `${count} packs`),
        () => count,
      ),
    );
    expect(one).toEqual({ words: '1 packs', count: 1 });
    expect(two).toEqual({ words: '2 packs', count: 2 });
  });
});
