import { describe, expect, test } from 'vitest';
import { cutDrawings, rowName } from '../../../extension/engine/export/cut-drawings.ts';
import { htmlPage } from '../../../extension/engine/export/paper/paper.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import type { Snapshot } from '../../../extension/engine/session/snapshot.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { paperOf, wordsOf } from '../../helpers/paper-of.ts';

const inch = 25.4;

interface Wanted {
  readonly hands?: string;
  readonly qty?: number;
  readonly ring?: string;
  readonly board?: string;
  /** Width of a board, in. */
  readonly width?: number;
}

/** A ring on a base, bent from strips of boards 30 in long; no pack is bought in part. */
function job({ hands = 'pair', qty = 1, ring = '', board = '', width = 7 }: Wanted): Snapshot {
  const session = openSession(`format = 1

[job]
title = "Strips"
units = "in"
currency = "USD"

[[panel]]
id = "door"

hands = "${hands}"

[[part]]
id = "base"

kind = "base"
panel = "door"

material = "none"

shape = "rect(20 in, 14 in)"
thickness = "1/4 in"

[[part]]
id = "ring"

name = "Midbass ring"
kind = "ring"
on = "base"

material = "board"

size = "8 in"
depth = "3.3218 in"
build = "round_tube"

qty = ${String(qty)}
${ring.includes('tilt') ? '' : 'tilt = "15 deg"'}
${ring}

[[material]]
id = "board"

name = "Board"
form = "sheet"

thickness = "1/8 in"
length = "30 in"
width = "${String(width)} in"

kerf = "1/8 in"
${board}

[[pack]]
id = "whole"

material = "board"
holds = "${String(30 * width)} sqin"
price = "10 USD"
`);
  settleNow(session);
  return session.snapshot();
}

function boardOf({ bill }: Snapshot) {
  const line = bill.lines.find(({ id }) => id === 'board');
  const laid = line?.laid;
  if (line === undefined || laid === undefined || laid.order.instance.kind === 'packs') {
    throw new Error('nothing is laid out');
  }
  return { line, laid, parts: laid.order.instance.parts };
}

function bought(wanted: Wanted): number | undefined {
  const { line, laid } = boardOf(job(wanted));
  expect(laid.answer.unplaced).toEqual([]);
  return line.packs[0]?.count;
}

function drawnWords(snapshot: Snapshot): readonly string[] {
  const { settings, workbook } = snapshot;
  const { line } = boardOf(snapshot);
  return cutDrawings({ line, settings, name: rowName(workbook) }).flatMap(({ words, marks }) => [
    ...words,
    ...marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  ]);
}

describe('ringPair', () => {
  test('8 in across, 15°, 2 in at the low side: both hands come out of a board 7 in wide', () => {
    // By hand: low 2 in, high 2 + 8 × tan 15° = 4.1436 in, cut 1/8 in ÷ cos 15° = 0.1294 in: 6.2730 in.
    // Two rectangles would be 8.4122 in wide with their cut.
    const { parts, line } = boardOf(job({}));
    expect(parts.map(({ count }) => count)).toEqual([1]);
    expect((parts[0]?.width ?? 0) / inch).toBeCloseTo(6.273, 3);
    expect(line.packs.map(({ count }) => count)).toEqual([1]);
    expect(line.buy).toBe(1000);
  });

  test('a board that says no keeps them apart, and two boards are bought', () => {
    expect(bought({ board: 'pairing = "no"' })).toBe(2);
  });

  test('of three strips two are paired and one is cut alone', () => {
    const { parts } = boardOf(job({ hands: 'left', qty: 3 }));
    expect(parts.map(({ count, width }) => [count, Math.round(width / inch)])).toEqual([
      [1, 6],
      [1, 4],
    ]);
  });

  test('where it saves no board, strips stay rectangles unless the board asks for pairs', () => {
    const { laid } = boardOf(job({ width: 12 }));
    expect(laid.order.pairs.size).toBe(0);
    const asked = boardOf(job({ width: 12, board: 'pairing = "yes"' }));
    expect(asked.laid.order.pairs.size).toBe(1);
  });

  test('a board too narrow for a pair is cut into single strips, asked for or not', () => {
    const { laid } = boardOf(job({ width: 5, board: 'pairing = "yes"' }));
    expect(laid.order.pairs.size).toBe(0);
    expect(bought({ width: 5, board: 'pairing = "yes"' })).toBe(2);
  });

  test('where the seam is set beside the lean, both strips are alike and nearly as narrow together', () => {
    // The ring leans straight up: a quarter round from there the wall is as high as in its middle. Turned
    // end for end, the lap of about 1 in shifts hump from hollow: 4 in × tan 15° × 1 in ÷ 4 in = 0.27 in.
    const beside = job({ ring: 'seam = "90 deg"' });
    const { parts } = boardOf(beside);
    expect((parts[0]?.width ?? 0) / inch).toBeCloseTo(6.273 + 0.27, 1);
    expect(drawnWords(beside).join(' ')).toContain('one is the other turned end for end');
    expect(wordsOf(htmlPage(paperOf('shopsheet', beside)))).toContain(
      'alike, one turned end for end',
    );
  });

  test('where the seam is set on the high side, strips are not paired', () => {
    expect(boardOf(job({ ring: 'seam = "180 deg"' })).laid.order.pairs.size).toBe(0);
  });

  test('upright rings and strips written narrower than their ring are not paired', () => {
    expect(boardOf(job({ ring: 'tilt = "0 deg"' })).laid.order.pairs.size).toBe(0);
    expect(boardOf(job({ ring: 'width = "4 in"' })).laid.order.pairs.size).toBe(0);
  });

  test('a strip written 1/4 in wider stays so all along: the pair is 1/2 in wider', () => {
    const { parts } = boardOf(job({ ring: 'width = "=high + 1/4 in"' }));
    expect((parts[0]?.width ?? 0) / inch).toBeCloseTo(6.773, 3);
  });

  test('boards nested by outlines cut a ring’s strip as a strip, not as the bent ring', () => {
    const { parts, laid } = boardOf(job({ board: 'method = "outline"' }));
    expect(laid.answer.unplaced).toEqual([]);
    expect(parts.map(({ length }) => Math.round(length / inch))).toEqual([26]);
  });

  test('layout, its working and the shop sheet say how the pair lies and which seam is where', () => {
    const snapshot = job({});
    const words = drawnWords(snapshot);
    expect(words).toContain('Midbass ring, seam at the high side');
    expect(words).toContain('Midbass ring, seam at the low side');
    expect(words.join(' ')).toContain('two strips head to tail');
    const { line } = boardOf(snapshot);
    expect(line.steps.map(({ text }) => text).join('\n')).toContain('each two strips head to tail');
    const page = wordsOf(htmlPage(paperOf('shopsheet', snapshot)));
    expect(page).toContain('two head to tail out of');
    expect(page).toContain('seam: left high side, right low side');
    expect(wordsOf(htmlPage(paperOf('shopsheet', job({ width: 12 }))))).not.toContain(
      'head to tail',
    );
  });
});
