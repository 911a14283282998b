import { describe, expect, test } from 'vitest';
import { needed } from '../../../extension/engine/trade/arguments.ts';
import { quantityFunction } from '../../../extension/engine/trade/quantity-function.ts';
import { tradeProblem } from '../../../extension/engine/trade/trade-problems.ts';
import { length } from '../../../extension/engine/units/dimension.ts';
import { contextOf, inches } from '../../helpers/trade-call.ts';

const half = quantityFunction({
  name: 'HALF',
  group: 'router',
  help: 'Half of a length, or its quarter.',
  parameters: [needed('size', length, 'The length.')],
  choice: { name: 'part', help: 'half or quarter.', choices: ['half', 'quarter'] },
  dimension: length,
  example: { formula: '=HALF(2in, half)', shows: '1 in' },
  source: 'definition',
  ranges: { size: 'positive' },
  refuse: ({ size }, show) =>
    size > 1000
      ? tradeProblem('hole-saw-too-large', {
          function: 'HALF',
          diameter: show(size, length),
          most: show(1000, length),
        })
      : undefined,
  answer: ({ size }, part) => (part === 'half' ? size / 2 : size / 4),
});

function run(base: number, word?: string) {
  const answer = half.run?.(
    [
      { kind: 'quantity', base, dimension: length },
      word === undefined ? undefined : { kind: 'choice', word },
    ],
    contextOf(inches),
  );
  if (answer === undefined) throw new Error('no code');
  return answer.ok ? answer.value : answer.problem.code;
}

describe('quantityFunction', () => {
  test('the choice is the last parameter and decides', () => {
    expect(half.parameters.map(({ name }) => name)).toEqual(['size', 'part']);
    expect(run(100, 'half')).toEqual({ kind: 'quantity', base: 50, dimension: length });
    expect(run(100, 'quarter')).toEqual({ kind: 'quantity', base: 25, dimension: length });
  });

  test('ranges come first, then what the numbers make together', () => {
    expect(run(-1, 'half')).toBe('argument-not-positive');
    expect(run(2000, 'half')).toBe('hole-saw-too-large');
    expect(run(100)).toBe('argument-missing');
    expect(run(100, 'third')).toBe('argument-missing');
  });
});
