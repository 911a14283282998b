import { taperedPair, type TaperedPair } from '../cutting/strips/tapered-pair.ts';
import { leanOf, type PlacedRing } from '../skin/panel.ts';
import { ringOf } from '../skin/read-panel.ts';
import { stripEdge } from '../skin/ring-plan.ts';
import { angle, length } from '../units/dimension.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { loneView } from '../workbook/row-view.ts';
import { baseIn } from './cells.ts';

/** The edge is drawn through this many places: a straight piece strays some thousandths of a mm. */
const steps = 240;

/** A strip may be written this much narrower or shorter than its ring, mm: figures are rounded. */
const slack = 0.5;

function leaningRing(row: AnsweredRow): PlacedRing | undefined {
  const ring = ringOf(loneView(row));
  return ring !== undefined && ring.tilt > 0 && ring.tilt < Math.PI / 2 ? ring : undefined;
}

/** What a leaning ring is bent from, and the blank that its row asks for; sizes in mm. */
export interface LeaningStrip {
  readonly ring: PlacedRing;
  /** Where its row sets the seam, as a direction in the panel's plan; undefined: on the high side. */
  readonly seam?: number;
  readonly high: number;
  readonly blank: { readonly length: number; readonly width: number };
  readonly kerf: number;
}

/** What a ring that takes a blank is bent from; undefined for one that does not lean. */
export function leaningStrip(
  row: AnsweredRow,
  { blank, kerf }: Pick<LeaningStrip, 'blank' | 'kerf'>,
): LeaningStrip | undefined {
  const ring = leaningRing(row);
  const [depth, high] = [baseIn(row, 'strip', length), baseIn(row, 'high', length)];
  if (ring === undefined || depth === undefined || high === undefined) return undefined;
  const turn = baseIn(row, 'seam', angle);
  const seam = turn === undefined ? {} : { seam: leanOf(turn) };
  return { ring: { ...ring, depth }, ...seam, high, blank, kerf };
}

// A row that is not worked out again keeps its strip, hence its pair.
const pairs = new WeakMap<LeaningStrip, TaperedPair | false>();

/**
 * Two strips of a ring head to tail in one blank. A blank that is wider than the ring's high side
 * leaves the strip so much higher all along; one that is longer laps more.
 *
 * @returns undefined where the blank is not its ring's, or two strips are no narrower so
 * @source geometry: the middle of a wall of thickness t is π·t shorter round than its outside
 */
export function ringPair(strip: LeaningStrip): TaperedPair | undefined {
  const known = pairs.get(strip) ?? pairOf(strip) ?? false;
  pairs.set(strip, known);
  return known === false ? undefined : known;
}

function pairOf({ ring, seam, high, blank, kerf }: LeaningStrip): TaperedPair | undefined {
  const { round, heights } = stripEdge(ring, 0, steps, seam);
  const neutral = round - Math.PI * ring.wall;
  const [lap, spare] = [blank.length - neutral, blank.width - high];
  if (neutral <= 0 || lap < -slack || spare < -slack) return undefined;
  return taperedPair(
    {
      heights: heights.map((height) => height + Math.max(0, spare)),
      round: Math.min(neutral, blank.length),
      lap: Math.max(0, lap),
      fixed: seam !== undefined,
    },
    kerf,
  );
}
