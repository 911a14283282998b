import { describe, expect, test, vi } from 'vitest';
import type { Snapshot } from '../../../extension/engine/index.ts';
import { billView } from '../../../extension/host/views/bill-view.ts';
import { headlineView } from '../../../extension/host/views/headline-view.ts';
import { cardView } from '../../../extension/host/views/card-view.ts';
import { problemViews } from '../../../extension/host/views/problem-view.ts';
import { sheetContext } from '../../../extension/host/views/sheet-context.ts';
import { rowView } from '../../../extension/host/views/sheet-view.ts';
import { packWords, shapeInWords, sizeInWords } from '../../../extension/host/views/size-words.ts';
import type { BillLineView } from '../../../extension/protocol/views.ts';
import { doorPair, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const settings = { units: 'in', currency: 'USD' } as const;
const inch = 25.4;

function row(id: string, snapshot: Snapshot, table = 'part') {
  const found = snapshot.workbook.row(table, id);
  if (found === undefined) throw new Error(`There is no row ${id}`);
  return found;
}

/** The job with one line of the row `id` taken out or put another way. */
function withRow(id: string, before: RegExp, after: string): Snapshot {
  const at = doorPair.indexOf(`id = "${id}"`);
  const changed = doorPair.slice(at).replace(before, after);
  if (changed === doorPair.slice(at)) throw new Error(`${id} has no ${before.source}`);
  return doorSnapshot(doorPair.slice(0, at) + changed);
}

function lines(snapshot: Snapshot): readonly BillLineView[] {
  return billView(snapshot, snapshot, undefined).groups.flatMap((group) => group.lines);
}

describe('shapeInWords', () => {
  test.each([
    [{ kind: 'circle', diameter: 8 * inch }, '8 in across'],
    [{ kind: 'oval', length: 9 * inch, width: 6 * inch }, '9 in × 6 in oval'],
    [{ kind: 'rect', length: 6.25 * inch, width: 2.125 * inch }, '6 1/4 in × 2 1/8 in'],
    [
      { kind: 'roundrect', length: 26 * inch, width: 15 * inch, radius: 2 * inch },
      '26 in × 15 in, corners 2 in',
    ],
    [{ kind: 'roundrect', length: 10 * inch, width: 5 * inch, radius: 0 }, '10 in × 5 in'],
    // A third of an inch is not on the tape: 16/48 lies between 5/16 and 3/8.
    [
      { kind: 'oval', length: (10 / 3) * inch, width: (7 / 3) * inch },
      '≈ 3 5/16 in × 2 5/16 in oval',
    ],
  ] as const)('%o is %s', (shape, words) => {
    expect(shapeInWords(shape, settings)).toBe(words);
  });
});

describe('the head of a row in the grid', () => {
  const headOf = (id: string, snapshot: Snapshot): string =>
    rowView(row(id, snapshot), sheetContext(snapshot)).message;

  test('tells what is wrong in one of its cells, which may be out of sight', () => {
    const broken = withRow('mid_ring', /depth = .*/, 'depth = "=1 qt"');
    expect(headOf('mid_ring', broken)).toBe(
      'Depth: This formula gives a volume, but a length is wanted here.',
    );
    // These only wait for it.
    for (const id of ['mid_sticks', 'door_base', 'door_soak']) expect(headOf(id, broken)).toBe('');
    expect(headOf('mid_ring', doorSnapshot())).toBe('');
  });
});

describe('sizeInWords', () => {
  test('outlines, sticks and thin coats are told as at the bench, with ≈ once', () => {
    const snapshot = doorSnapshot();
    const words = (id: string): string => sizeInWords(row(id, snapshot), snapshot);
    expect(words('door_base')).toBe('26 in × 15 in, corners 2 in, 1/4 in');
    expect(words('mid_hole')).toBe('5 1/8 in across');
    expect(words('door_clips')).toBe('9 × Door clips, new');
    expect(words('door_fill')).toBe('2 passes of 1/64 in');
    expect(words('mid_sticks')).toMatch(/^4 sticks, ≈ \S+ in to [^≈]+ in$/);
  });

  test('a size below nothing is left out', () => {
    const broken = withRow('mid_ring', /depth = ".*"/, 'depth = "1/2 in"');
    expect(sizeInWords(row('mid_sticks', broken), broken)).toBe('4 sticks');
  });
});

describe('packWords', () => {
  test('a sheet is named by its size, everything else by what it holds', () => {
    const all = new Map(lines(doorSnapshot()).map((line) => [line.id, line.buy]));
    expect(all.get('panelboard_3')).toBe('1 sheet, 48\u00A0in\u00A0×\u00A032\u00A0in');
    expect(all.get('clip')).toBe('1 × 25 each');
  });

  test('sheets of several packs are counted together', () => {
    const holds = { base: 1, dimension: { length: 2, mass: 0, time: 0, temperature: 0, money: 0 } };
    const pack = {
      id: 'four',
      count: 2,
      holds: { ...holds, unit: 'sqft', count: false },
      price: 1,
    };
    const sheet = { length: 24 * inch, width: 12 * inch, number: 4 };
    expect(packWords({ ...pack, sheet }, settings)).toBe(
      '8 sheets, 24\u00A0in\u00A0×\u00A012\u00A0in',
    );
    expect(packWords({ ...pack, sheet }, { ...settings, units: 'mm' })).toBe(
      '8 sheets, 609.6\u00A0×\u00A0304.8\u00A0mm',
    );
  });
});

describe('problemViews', () => {
  const broken = withRow('mid_ring', /depth = ".*"/, 'depth = "1/2 in"');

  test('a ring that cannot be built is told once, with one depth', () => {
    const views = problemViews(broken);
    const ring = views.filter((one) => one.row === 'mid_ring');
    expect(ring.map(({ message }) => message)).toEqual([
      'Midbass ring cannot be built: at 15 deg its low side lies under the base. Make it at least ≈ 1 15/16 in deep, or lean it less.',
    ]);
    const parts = views.filter(({ table }) => table === 'part');
    expect(parts.map(({ message }) => message).join('\n')).not.toMatch(/RING\.|≈ ≈|-\d/);
    const card = cardView(row('mid_ring', broken), sheetContext(broken), new Set());
    expect(card.problems).toHaveLength(1);
  });

  test('what waits for it says so, follows it, and is not counted beside it', () => {
    const soak = problemViews(broken).filter((one) => one.row === 'door_soak');
    expect(soak.every(({ follows }) => follows)).toBe(true);
    expect(soak[0]?.message).toMatch(
      /^No amount of Polyester laminating resin for First coat, into the cloth yet\. The low side of mid_ring lies ≈ 13\/16 in under the base/,
    );
    const looked = headlineView(broken, broken).figures.find(({ key }) => key === 'problems');
    const causes = problemViews(broken).filter((one) => one.severity === 'error' && !one.follows);
    expect(looked).toMatchObject({ label: 'Needs a look', tone: 'error' });
    expect(looked?.value.split(', ')[0]).toBe(`${String(causes.length)} to mend`);
  });

  test('a blank cell is asked for once, by its label, where it is filled in', () => {
    const blank = withRow('mid', /frame = ".*"\n/, '');
    const asked = problemViews(blank).filter((one) => one.code === 'cell-blank');
    const same = asked.filter(({ row, column }) => row === 'mid' && column === 'frame');
    expect(same).toEqual([
      expect.objectContaining({ message: expect.stringMatching(/^Fill in the frame/) as string }),
    ]);
  });

  test('cells that are worked out from each other are asked for once, by their labels', () => {
    const blank = withRow('door_base', /shape = ".*"\n/, '');
    const asked = problemViews(blank).filter((one) => one.code === 'cell-loop-of-defaults');
    expect(asked).toEqual([
      expect.objectContaining({
        message: 'Fill in the outline, blank length or blank width of Front door base.',
        table: 'part',
        row: 'door_base',
        column: 'shape',
      }),
    ]);
  });
});

describe('cells and lines without an answer', () => {
  test('a cell that waits names the cell to fill in', () => {
    const blank = withRow('door_base', /shape = ".*"\n/, '');
    const context = sheetContext(blank);
    const at = (context.columns.get('part') ?? []).findIndex(({ key }) => key === 'use');
    expect(rowView(row('door_back', blank), context).cells[at]?.message).toBe(
      'Fill in the outline, blank length or blank width of Front door base.',
    );
  });

  test('a line of the bill says what to fill in, and of which row', () => {
    const without = withRow('mid_ring', /driver = "mid"\n/, '');
    const board = lines(without).find(({ id }) => id === 'panelboard_3');
    expect(board?.problem).toBe(
      'No amount of Waterproof panel board, 1/8 in for Midbass ring yet. Midbass ring has no driver: fill in its driver.',
    );
  });

  test('the bill does not say again what the headline says', () => {
    const whole = doorSnapshot();
    expect(billView(whole, whole, undefined).note).toBe('');
    const priceless = doorSnapshot(replaced(doorPair, '"18.50 USD"', '"=1in + 2qt"'));
    expect(billView(priceless, priceless, undefined).note).toMatch(/^Incomplete: 1 line has/);
  });
});
