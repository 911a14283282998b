import { beforeAll, describe, expect, test, vi } from 'vitest';
import { openSession, type Session } from '../../../extension/engine/index.ts';
import {
  freezeEdits,
  priceDrift,
  pricesToFreeze,
  thawEdits,
} from '../../../extension/engine/shop/freeze-prices.ts';
import { demoBook, doorPair, replaced } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

// The demo shop's board goes from 18 to 27 USD; both figures are invented.
const dearer = replaced(
  demoBook,
  'holds = "1536 sqin"\nprice = "18 USD"',
  'holds = "1536 sqin"\nprice = "27 USD"',
);

let frozen: Session;
let later: Session;

beforeAll(() => {
  const session = openSession(doorPair, demoBook);
  const plan = session.plan(freezeEdits(session.snapshot(), '2026-11-25'));
  if (!plan.ok) throw new Error(plan.problem.message);
  frozen = openSession(plan.value.text, demoBook);
  later = openSession(plan.value.text, dearer);
});

describe('freezeEdits', () => {
  test('holds the lower price for several packs with it', () => {
    const lower = 'price = "18 USD"\nfrom = 5\nprice_from = "16 USD"';
    const book = replaced(demoBook, 'price = "18 USD"', lower);
    const snapshot = openSession(doorPair, book).snapshot();
    const edits = freezeEdits(snapshot, '2026-11-25');
    expect(edits).toContainEqual(
      expect.objectContaining({
        id: 'board_sheet',
        cells: {
          pack: 'board_sheet',
          price: '18 USD',
          from: '5',
          price_from: '16 USD',
          date: '2026-11-25',
        },
      }),
    );
  });

  test('holds the price of every pack of a material on the bill, with the day', () => {
    const rows = frozen.snapshot().shown.tables.get('price') ?? [];
    const board = rows.find(({ id }) => id === 'board_sheet');
    expect(board?.cells.get('price')?.text).toBe('18 USD');
    expect(board?.cells.get('date')?.text).toBe('2026-11-25');
    expect(rows.length).toBe(pricesToFreeze(frozen.snapshot()).length);
    expect(rows.some(({ cells }) => cells.has('rate'))).toBe(true);
  });

  test('changes no figure on its day, and brings no error', () => {
    const { bill, problems } = frozen.snapshot();
    expect(bill.totals).toEqual(openSession(doorPair, demoBook).snapshot().bill.totals);
    expect(problems.filter(({ problem }) => problem.code.startsWith('price-'))).toEqual([]);
  });

  test('a price that rises later does not move the job; the drift is told', () => {
    expect(later.snapshot().bill.totals).toEqual(frozen.snapshot().bill.totals);
    const drifted = later
      .snapshot()
      .problems.filter(({ problem }) => problem.code === 'price-drifted');
    expect(drifted).toHaveLength(1);
    expect(drifted[0]?.problem.message).toContain('+50 %');
  });

  test('frozen again, the job is at today’s prices', () => {
    const plan = later.plan(freezeEdits(later.snapshot(), '2026-12-01'));
    if (!plan.ok) throw new Error(plan.problem.message);
    const again = openSession(plan.value.text, dearer).snapshot();
    const board = again.shown.tables.get('price')?.find(({ id }) => id === 'board_sheet');
    expect(board?.cells.get('price')?.text).toBe('27 USD');
    expect(again.problems.some(({ problem }) => problem.code === 'price-drifted')).toBe(false);
  });
});

describe('priceDrift', () => {
  test('says what materials would come to at today’s prices', () => {
    const drift = priceDrift(later.snapshot(), later.whatIf);
    expect(drift?.since).toEqual(['2026-11-25']);
    const sheets = later
      .snapshot()
      .bill.lines.flatMap(({ packs }) => packs)
      .find(({ id }) => id === 'board_sheet')?.count;
    expect((drift?.today ?? 0) - (drift?.frozen ?? 0)).toBe(900 * (sheets ?? 0));
  });

  test('a job that holds no price has no drift', () => {
    const session = openSession(doorPair, demoBook);
    expect(priceDrift(session.snapshot(), session.whatIf)).toBeUndefined();
  });
});

describe('thawEdits', () => {
  test('lets the job follow the book again', () => {
    const plan = later.plan(thawEdits(later.snapshot().shown));
    if (!plan.ok) throw new Error(plan.problem.message);
    expect(plan.value.text).toBe(doorPair);
  });
});
