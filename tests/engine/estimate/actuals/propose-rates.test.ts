import { describe, expect, test } from 'vitest';
import {
  evidenceWords,
  proposeRates,
  rateEdits,
} from '../../../../extension/engine/estimate/actuals/propose-rates.ts';
import { applyEdits } from '../../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../../extension/engine/job/read-file.ts';
import { openSession } from '../../../../extension/engine/session/session.ts';
import type { Snapshot } from '../../../../extension/engine/session/snapshot.ts';
import { row } from '../../../helpers/priced-job.ts';

const book = [
  'format = 1\n\n[book]\ncurrency = "USD"\n\n',
  row('material', 'resin', { name: 'Resin', form: 'liquid', density: '1 g/cm3', waste: '10 %' }),
  row('pack', 'resin_l', { material: 'resin', holds: '1 l', price: '10 USD' }),
  row('kind', 'polish', {
    name: 'Polish',
    table: 'task',
    group: 'finish',
    'default.rate': '10 min/sqft',
    source: 'shop must calibrate: invented',
  }),
].join('');

/** A job that polished 10 sqft and took so long, and used so much of the litre of resin it needs. */
function done(actual: string, used = ''): Snapshot {
  const rows = [
    'format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\n\n',
    row('kind', 'goop', { name: 'Goop', table: 'part', group: 'skin', takes: 'amount' }),
    row('part', 'coat', {
      kind: 'goop',
      material: 'resin',
      use: '1 l',
      ...(used === '' ? {} : { used }),
    }),
    row('task', 'shine', { kind: 'polish', basis: '10 sqft', setup: '10 min', actual }),
  ];
  return openSession(rows.join(''), book).snapshot();
}

const reading = readFile(book);

describe('proposeRates', () => {
  // (actual − 10 min of set-up) / 10 sqft: 12, 14 and 20 min/sqft; the median is 14.
  test('the median of three jobs is proposed, set-up apart, with the lowest and the highest', () => {
    const jobs = [done('130 min', '1.2 l'), done('150 min', '1.25 l'), done('210 min', '1.4 l')];
    const { proposals, left } = proposeRates(jobs, reading);
    expect(left).toEqual([]);
    expect(proposals).toEqual([
      {
        ...{ table: 'kind', id: 'polish', name: 'Polish', column: 'default.rate' },
        ...{ now: '10 min/sqft', then: '14 min/sqft', jobs: 3 },
        ...{ low: '12 min/sqft', high: '20 min/sqft' },
      },
      {
        ...{ table: 'material', id: 'resin', name: 'Resin', column: 'waste' },
        ...{ now: '10 %', then: '25 %', jobs: 3, low: '20 %', high: '40 %' },
      },
    ]);
  });

  test('two jobs are too few, and none at all is told too', () => {
    const two = proposeRates([done('130 min'), done('150 min')], reading);
    expect(two.proposals).toEqual([]);
    expect(two.left).toEqual(['Only 2 jobs say how much “Polish” took; 3 are needed.']);
    expect(proposeRates([], reading).left[0]).toContain('No job says what it took');
  });
});

describe('rateEdits', () => {
  test('the book says the new rate and where it is from', () => {
    const jobs = [done('130 min'), done('150 min'), done('210 min')];
    const { proposals } = proposeRates(jobs, reading);
    const applied = applyEdits(reading, rateEdits(proposals, reading));
    const text = applied.ok ? applied.value.reading.text : '';
    expect(text).toContain('default.rate = "14 min/sqft"');
    expect(text).toContain(
      'source = "timed by this shop: median of 3 jobs, 12 min/sqft to 20 min/sqft"',
    );
  });
});

describe('evidenceWords', () => {
  test('jobs and spread are named', () => {
    const [one] = proposeRates(
      [done('130 min'), done('130 min'), done('130 min')],
      reading,
    ).proposals;
    expect(one && evidenceWords(one)).toBe('median of 3 jobs, all 12 min/sqft');
  });
});
