import { describe, expect, test } from 'vitest';
import type { RowView } from '../../../extension/engine/formula/catalogue.ts';
import { tradeFunctions } from '../../../extension/engine/trade/trade-functions.ts';
import { showQuantity } from '../../../extension/engine/units/show.ts';
import { contextOf, entryOf, inches, shown } from '../../helpers/trade-call.ts';

describe('tradeFunctions', () => {
  const called = tradeFunctions.filter(({ rows }) => rows === undefined);

  // A path is in a job; its example needs a standard function.
  const bare = called.filter(({ name }) => name !== 'path');

  test.each(bare.map(({ example, name }) => [name, example.formula, example.shows]))(
    '%s: its example %s shows %s',
    (_, formula, shows) => {
      expect(shown(formula)).toBe(shows);
    },
  );

  test('no two functions share a name', () => {
    const names = tradeFunctions.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(called.map((entry) => [entry.name, entry] as const))(
    '%s without arguments names the first one it needs',
    (_, entry) => {
      const answer = entry.run?.([], contextOf(inches));
      expect(answer?.ok).toBe(false);
      if (answer?.ok === false) {
        expect(answer.problem.code).toBe('argument-missing');
        expect(answer.problem.message).toContain(entry.parameters[0]?.name);
      }
    },
  );

  test.each(called.map((entry) => [entry.name, entry] as const))(
    '%s does not take text that looks like a number for a number',
    (_, entry) => {
      const text = { kind: 'text', text: '12' } as const;
      const answer = entry.run?.(
        entry.parameters.map(() => text),
        contextOf(inches),
      );
      expect(answer?.ok).toBe(false);
    },
  );

  test.each(tradeFunctions.map((entry) => [entry.name, entry] as const))(
    '%s says what it does, what it takes and where the rule is from',
    (_, entry) => {
      expect(entry.help).toMatch(/\.$/);
      expect(entry.source).not.toBe('');
      expect(entry.example.formula).toMatch(new RegExp(`^=.*${entry.name.replace('.', '\\.')}\\(`));
      for (const parameter of entry.parameters) expect(parameter.help).toMatch(/\S/);
    },
  );

  test('optional arguments come after those that are needed, but for the build of RING.LEAST', () => {
    const late = tradeFunctions.filter(({ parameters }) => {
      const first = parameters.findIndex(({ optional }) => optional === true);
      return first >= 0 && parameters.slice(first).some(({ optional }) => optional !== true);
    });
    expect(late.map(({ name }) => name)).toEqual([]);
  });
});

describe('BUILD.UP', () => {
  function row(id: string, kind: string, cells: Record<string, number>, standing: RowView[] = []) {
    const view: RowView = {
      id,
      kind,
      standing,
      value: (column) => {
        const base = cells[column];
        const length = column === 'thickness' ? 1 : 0;
        const dimension = { length, mass: 0, time: 0, temperature: 0, money: 0 };
        return base === undefined ? undefined : { kind: 'quantity', base, dimension };
      },
    };
    return view;
  }

  function built(base: RowView): string {
    const answer = entryOf('BUILD.UP').rows?.run(base, [], contextOf(inches));
    if (answer?.ok !== true || answer.value.kind !== 'quantity') throw new Error('no answer');
    return showQuantity(answer.value, inches).text;
  }

  test('layers on a base add up, each with its count of layers', () => {
    const mat = row('mat', 'mat', { thickness: 25.4 / 16, layers: 2 });
    const vinyl = row('vinyl', 'vinyl', { thickness: 25.4 / 16 });
    const resin = row('soak', 'resin', {});
    expect(built(row('base', 'base', { thickness: 6 }, [mat, vinyl, resin]))).toBe('3/16 in');
  });

  test('a ring and what it carries add nothing: they rise at one place', () => {
    const baffle = row('baffle', 'baffle', { thickness: 12 });
    const trim = row('trim', 'vinyl', { thickness: 25.4 });
    const ring = row('ring', 'ring', { thickness: 3 }, [baffle, trim]);
    const filler = row('fill', 'filler', { thickness: 25.4 / 8 });
    expect(built(row('base', 'base', {}, [ring, baffle, trim, filler]))).toBe('1/8 in');
  });

  test('pieces lie side by side', () => {
    const strips = row('strips', 'mat', { thickness: 25.4 / 8, qty: 4 });
    expect(built(row('base', 'base', {}, [strips]))).toBe('1/8 in');
  });
});
