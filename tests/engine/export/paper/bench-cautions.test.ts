import { describe, expect, test } from 'vitest';
import {
  benchCautions,
  dangersNamed,
} from '../../../../extension/engine/export/paper/bench-cautions.ts';
import { jobWith, row } from '../../../helpers/priced-job.ts';

const base = row('part', 'base', { kind: 'base', shape: 'rect(24 in, 12 in)' });
const coat = row('part', 'coat', { kind: 'resin', use: '1 pt' });

describe('benchCautions', () => {
  test('two boards say their cautions once', () => {
    const one = benchCautions(jobWith({}, base));
    const two = benchCautions(jobWith({}, base, base.replace('"base"', '"other"')));
    expect(one.join(' ')).toMatch(/Board dust.*airbag/);
    expect(two).toEqual(one);
  });

  test('a job without parts has none', () => {
    expect(benchCautions(jobWith({}))).toEqual([]);
  });
});

describe('dangersNamed', () => {
  test('the gravest stands first', () => {
    const named = dangersNamed(jobWith({}, base, coat));
    expect(named[0]).toBe('Peroxide catalyst');
    expect(named).toContain('Airbags and their sensors in doors');
    expect(named).toContain('Noise');
  });
});
