import { describe, expect, test } from 'vitest';
import { functionsJson } from '../../extension/command-line/functions-list.ts';
import { catalogue } from '../../extension/engine/index.ts';

interface Listed {
  readonly name: string;
  readonly source: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly type: string;
    readonly dimensions: readonly string[];
    readonly choices: readonly string[];
    readonly range: object | null;
  }[];
  readonly result: { readonly rule: string; readonly dimension: string | null };
}

const { functions } = functionsJson() as { readonly functions: readonly Listed[] };

function listed(name: string): Listed | undefined {
  return functions.find((one) => one.name === name);
}

describe('functionsJson', () => {
  test('every function of the catalogue, each with a source', () => {
    expect(functions.map(({ name }) => name)).toEqual(
      [...catalogue.values()].map(({ name }) => name),
    );
    expect(functions.filter(({ source }) => source === '')).toEqual([]);
  });

  test('a quantity says what it measures', () => {
    const silent = functions.flatMap(({ name, parameters }) =>
      parameters
        .filter(({ type, dimensions }) => type === 'quantity' && dimensions.length === 0)
        .map((parameter) => `${name} ${parameter.name}`),
    );
    expect(silent).toEqual([]);
  });

  test('a function says what it gives, an argument what it takes', () => {
    expect(listed('MIX.QUANTITY')).toMatchObject({
      result: { rule: 'quantity', dimension: 'volume' },
      parameters: [
        { name: 'resin', dimensions: ['mass', 'volume'], range: { least: 0 } },
        {
          name: 'percent',
          dimensions: ['number'],
          range: { least: 0.005, most: 0.04, share: true },
        },
        { name: 'basis', dimensions: [], choices: ['by_mass', 'by_volume', 'ml_per_100g'] },
        { name: 'resin_density', dimensions: ['mass per volume'] },
        { name: 'catalyst_density', dimensions: ['mass per volume'] },
      ],
    });
    expect(listed('RING.LOW')?.parameters[1]).toMatchObject({
      type: 'shape-or-length',
      dimensions: ['length'],
    });
    expect(listed('ROUNDTO')?.result).toEqual({ rule: 'same', dimension: null });
    expect(listed('AIM.TILT')?.parameters[0]?.range).toBeNull();
  });
});
