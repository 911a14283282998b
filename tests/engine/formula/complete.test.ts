import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../../extension/engine/formula/complete.ts';
import { signatureAt } from '../../../extension/engine/formula/signature.ts';
import { smallScope } from '../../helpers/formula-scope.ts';

const scope = smallScope();

/** Completions where the bar stands in the text. */
function at(marked: string): { labels: readonly string[]; start: number; end: number } {
  const caret = marked.indexOf('|');
  const { items, start, end } = completionsAt(marked.replace('|', ''), caret, scope);
  return { labels: items.map(({ label }) => label), start, end };
}

function applied(marked: string, label: string): string {
  const caret = marked.indexOf('|');
  const text = marked.replace('|', '');
  const { items, start, end } = completionsAt(text, caret, scope);
  const item = items.find((one) => one.label === label);
  return text.slice(0, start) + (item?.insert ?? '?') + text.slice(end);
}

describe('completionsAt', () => {
  test('names of this row come first, then rows and functions', () => {
    const { labels } = at('=l|');
    expect(labels[0]).toBe('length');
    expect(labels).toContain('layers');
    expect(labels).toContain('LEN');
    expect(labels).not.toContain('width');
  });

  test('the whole word under the caret is replaced', () => {
    expect(applied('=len|gth + 2in', 'length')).toBe('=length + 2in');
    expect(applied('=2in + ba|', 'base')).toBe('=2in + base.');
    expect(applied('=sq|', 'SQRT')).toBe('=SQRT(');
    expect(applied('=p|', 'PI')).toBe('=PI()');
  });

  test('behind a dot stand the columns of that row, or the rest of a function', () => {
    expect(at('=base.|').labels).toEqual(['length', 'area', 'wall']);
    expect(at('=job.cav|').labels).toEqual(['cavity']);
    expect(applied('=ring.de|', 'RING.DEPTH')).toBe('=ring.DEPTH(');
  });

  test('a list is offered its kinds, its row and the columns of its kind', () => {
    expect(at('=SUM(all(|').labels).toEqual(['ring', 'part']);
    expect(at('=SUM(on(|').labels).toEqual(['on', 'base', 'mid_ring', 'tweeter_ring']);
    expect(at('=SUM(on(base, r|').labels).toEqual(['ring', 'part']);
    expect(at('=SUM(on(base, ring).w|').labels).toEqual(['wall']);
  });

  test('an argument is offered its choices, units or rows', () => {
    expect(at('=RING.LOW(3in, 8in, tilt, |').labels.slice(0, 2)).toEqual([
      'round_baffle',
      'round_tube',
    ]);
    expect(at('=SHOW(length, m|').labels).toContain('mm');
    expect(at('=SHOW(length, |').labels).not.toContain('length');
    expect(applied('=BUILD.UP(ba|', 'base')).toBe('=BUILD.UP(base');
  });

  test('right behind a number only units make sense', () => {
    const { labels } = at('=length + 12f|');
    expect(labels).toContain('floz');
    expect(labels).not.toContain('FLOOR');
    expect(at('=2US|').labels).toEqual(['USD']);
  });

  test('nothing is offered inside quotes or outside of a formula', () => {
    expect(at('="le|').labels).toEqual([]);
    expect(at('le|').labels).toEqual([]);
    expect(at('|=le').labels).toEqual([]);
  });
});

describe('signatureAt', () => {
  function signature(marked: string): ReturnType<typeof signatureAt> {
    return signatureAt(marked.replace('|', ''), marked.indexOf('|'), scope.catalogue);
  }

  test('tells the innermost function and the argument under the caret', () => {
    expect(signature('=RING.LOW(3in, |')).toMatchObject({ name: 'RING.LOW', active: 1 });
    expect(signature('=MAX(1, ring.low(3in, 8in, |')).toMatchObject({
      name: 'RING.LOW',
      active: 2,
    });
    expect(signature('=MAX(SQRT(4), |2)')).toMatchObject({ name: 'MAX', active: 0 });
    expect(signature('=MAX((1 + |2))')).toMatchObject({ name: 'MAX', active: 0 });
  });

  test('shows what may be left out, what repeats and which choices there are', () => {
    const low = signature('=RING.LOW(|');
    expect(low?.parameters.map(({ label }) => label)).toEqual([
      'depth',
      'size',
      '[tilt]',
      '[build]',
    ]);
    expect(low?.parameters[3]?.help).toContain('round_tube');
    expect(signature('=SUM(|')?.parameters[0]?.label).toBe('values, …');
    expect(signature('=SQRT(|')?.example).toBe('=SQRT(144sqin) → 12 in');
  });

  test('is silent outside of brackets and past the last argument', () => {
    expect(signature('=RING.LOW(3in, 8in)|')).toBeUndefined();
    expect(signature('=nothing(|')).toBeUndefined();
    expect(signature('=SQRT(4, |')?.active).toBe(-1);
  });
});
