import { describe, expect, test } from 'vitest';
import { catalogue, type FunctionEntry } from '../../../extension/engine/index.ts';
import { plain } from '../../../extension/engine/units/dimension.ts';
import { dimensionName } from '../../../extension/engine/units/dimension-names.ts';
import { answered } from '../../helpers/calculated.ts';
import { exampleArguments, exampleWith } from '../../helpers/example-call.ts';

/*
 * What is asked of every function of the trade: how many arguments it takes, an ordinary case, the
 * edges of its ranges, text that looks like a number, and a problem that is passed through.
 */
type Parameter = FunctionEntry['parameters'][number];
type Range = NonNullable<Parameter['range']>;

const trade = [...catalogue.values()].filter(({ group }) => group !== 'standard');
const alone = trade.filter(({ rows }) => rows === undefined);
const each = alone.map((entry) => [entry.name, entry] as const);

function signed(entry: FunctionEntry, args: readonly string[]): string {
  return `${entry.name}(${args.join(', ')})`;
}

describe('argument count', () => {
  test.each(each)('%s says how many arguments it takes, not fewer and not more', (_, entry) => {
    const needed = entry.parameters.filter(({ optional }) => optional !== true).length;
    const written = exampleArguments(entry);
    const full = entry.parameters.map((__, index) => written[index] ?? written[0] ?? '1');
    const fewer = answered(signed(entry, written.slice(0, needed - 1)));
    const repeats = entry.parameters.some((one) => one.repeats === true);
    const more = repeats ? [] : [answered(signed(entry, [...full, '1']))];
    for (const answer of [fewer, ...more]) {
      expect(answer).toContain(`${entry.name} takes `);
      expect(answer).toContain(`${entry.name}(${entry.parameters[0]?.name ?? ''}`);
    }
  });
});

describe('ordinary case', () => {
  // A path is in a job: its answers stand with the drawing files.
  test.each(each.filter(([name]) => name !== 'path'))('%s answers its example', (_, entry) => {
    expect(typeof answered(exampleWith(entry))).toBe('object');
  });
});

const words: Readonly<Record<string, (base: number) => string>> = {
  number: String,
  angle: (base) => `${String((base * 180) / Math.PI)}deg`,
  temperature: (base) => (base < 0 ? `-${String(-base)}degC` : `${String(base)}degC`),
};

function dimensionWord({ type }: Parameter): string {
  return type.kind === 'quantity' ? dimensionName(type.dimensions[0] ?? plain) : '';
}

/** A value as a formula writes it; nothing and next to nothing of what has no word as a share of the example. */
function written(entry: FunctionEntry, index: number, base: number): string {
  const parameter = entry.parameters[index];
  const word = parameter === undefined ? undefined : words[dimensionWord(parameter)];
  return word === undefined
    ? `${String(base)}*(${exampleArguments(entry)[index] ?? ''})`
    : word(base);
}

interface Edge {
  readonly inside?: number;
  readonly outside: number;
}

function beyond(base: number, sign: 1 | -1): number {
  return base === 0 ? sign * 1e-4 : base * (1 + sign * 1e-4);
}

function edgesOf({ least, above, most, below, whole }: Range): readonly Edge[] {
  return [
    ...(least === undefined ? [] : [{ inside: least, outside: beyond(least, -1) }]),
    ...(above === undefined ? [] : [{ inside: beyond(above, 1), outside: above }]),
    ...(most === undefined ? [] : [{ inside: most, outside: beyond(most, 1) }]),
    ...(below === undefined ? [] : [{ inside: beyond(below, -1), outside: below }]),
    ...(whole === true ? [{ outside: (least ?? 0) + 0.5 }] : []),
  ];
}

const edges = alone.flatMap((entry) =>
  entry.parameters.flatMap((parameter, index) =>
    parameter.range === undefined || exampleArguments(entry)[index] === undefined
      ? []
      : edgesOf(parameter.range).map((edge) => ({ entry, parameter, index, edge })),
  ),
);

/** Values at the edge of their range that another argument of the example does not go with. */
const refusedWithOthers: Readonly<Record<string, string>> = {
  'BEARING.OFFSET cutter': 'is larger than the cutter',
  'BOX.VOLUME qtc': 'only raises the Q',
  'BUSHING.OFFSET bushing': 'is not smaller than the bushing',
  'BUSHING.TEMPLATE bushing': 'is not smaller than the bushing',
  'GRILLE.SIZE opening': 'nothing is left',
  'JIG.RADIUS diameter': 'is not smaller than the hole',
  'RING.STRIP size': 'does not fit inside a bend',
  'RING.STRIP tilt': 'does not fit inside a bend',
  'BEARING.SIZE cutter': 'no bearing is that small',
  'RING.VOLUME tilt': 'the low side of this ring',
  'RING.WALL tilt': 'the low side of this ring',
  'RING.VOLUME depth': 'the low side of this ring',
  'RING.WALL depth': 'the low side of this ring',
  'TIME.THREEPOINT high': 'they must not fall',
  'TIME.THREEPOINT likely': 'they must not fall',
  'CLOTH.REPEAT width': 'bolts from 50 in',
  'DRIVER.OFFAXISLOSS angle': 'is a null',
};

describe('edge of range', () => {
  test('most arguments have a range', () => {
    expect(edges.length).toBeGreaterThan(150);
  });

  test.each(edges.map((one) => [one.entry.name, one.parameter.name, one] as const))(
    '%s takes %s to the edge of its range and not beyond',
    (name, parameter, { entry, index, edge }) => {
      const outside = answered(
        exampleWith(entry, { [index]: written(entry, index, edge.outside) }),
      );
      expect(outside).toContain(`${name}: `);
      if (edge.inside === undefined) return;
      const inside = answered(exampleWith(entry, { [index]: written(entry, index, edge.inside) }));
      if (typeof inside === 'object') return;
      const reason = refusedWithOthers[`${name} ${parameter}`] ?? 'no reason is known';
      expect(inside).toContain(reason);
    },
  );

  test.each(edges.map((one) => [one.entry.name, one.parameter.name, one] as const))(
    '%s names %s, its value and the way out where it refuses it',
    (_, parameter, { entry, index, edge }) => {
      const answer = answered(exampleWith(entry, { [index]: written(entry, index, edge.outside) }));
      const word = parameter.replaceAll('_', ' ').replace('glass fraction', 'share of glass');
      expect(answer).toMatch(new RegExp(`${word}|catalyst|margin|units`));
      expect(answer).toMatch(/\d/);
      expect(answer).toMatch(
        /must be|cannot be|it is put|glue is put|rule holds|outside|more than|whole number/,
      );
    },
  );
});

const typed = alone.flatMap((entry) =>
  exampleArguments(entry).flatMap((text, index) => {
    const parameter = entry.parameters[index];
    return parameter === undefined ? [] : [{ entry, parameter, index, text }];
  }),
);

describe('text that looks like a number', () => {
  test.each(typed.map((one) => [one.entry.name, one.parameter.name, one] as const))(
    '%s does not take "12" for %s',
    (name, parameter, { entry, index }) => {
      const answer = answered(exampleWith(entry, { [index]: '"12"' }));
      expect(answer).toContain(name === 'SHOW' && parameter === 'unit' ? 'is not a unit' : name);
      expect(answer).toMatch(new RegExp(`${parameter}|"12"`));
    },
  );
});

describe('a problem passed through', () => {
  const reason = answered('1in/0');
  const values = typed.filter(({ parameter: { type } }) => !['choice', 'unit'].includes(type.kind));

  test('a division by nothing has no answer', () => {
    expect(typeof reason).toBe('string');
  });

  test.each(values.map((one) => [one.entry.name, one.parameter.name, one] as const))(
    '%s says the problem of its %s as it is',
    (_, __, { entry, index, text }) => {
      expect(answered(exampleWith(entry, { [index]: `IF(1in/0 > 1, ${text}, ${text})` }))).toBe(
        reason,
      );
    },
  );
});
