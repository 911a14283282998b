import type { Drawing, LineMark, Mark } from '../drawing/drawing.ts';
import { boxAround, type Box, type Point } from '../geometry/outline.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import { shapeLength, type Shape } from '../geometry/shape.ts';
import { showShape } from '../geometry/shape-text.ts';
import { fromLean, footLoop, lipLoop, mouthLoop, seamOnLip } from '../skin/ring-plan.ts';
import { baseIn } from '../workbook/row-cells.ts';
import { isMirrored, seenOn } from './hands.ts';
import {
  angleText,
  cross,
  dimension,
  drawnRow,
  lengthText,
  letteringOf,
  line,
  loop,
  reached,
  words,
  type Lettering,
} from './marks.ts';
import { parkedPanel } from './parked-rings.ts';
import {
  holeOutline,
  pictureTolerance,
  seamDirection,
  type PicturedLevel,
  type PicturedPanel,
  type PicturedRing,
} from './pictured-panel.ts';
import { angle } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { wordsApart } from './words-apart.ts';

/** Outline in plan of a shape that lies in the leaning plane of a ring's seat. */
function onLean({ ring }: PicturedRing, shape: Shape): readonly Point[] {
  const along = Math.cos(ring.tilt);
  return shapeOutline(shape, pictureTolerance).points.map(({ x, y }) =>
    fromLean(ring, x * along, y),
  );
}

function baffleMarks(pictured: PicturedRing): readonly Mark[] {
  const { row, baffle, driver } = pictured;
  const owner = drawnRow(row);
  const cutout =
    driver?.cutout === undefined
      ? undefined
      : onLean(pictured, { kind: 'circle', diameter: driver.cutout });
  const holes = cutout === undefined ? {} : { holes: [cutout] };
  const marks: Mark[] = [];
  if (baffle !== undefined) {
    const more = { row: drawnRow(baffle.row), owner, filled: true, ...holes };
    marks.push(loop('baffle', onLean(pictured, baffle.shape), more));
  }
  if (cutout !== undefined && driver !== undefined)
    marks.push(loop('driver', cutout, { row: drawnRow(driver.row), owner }));
  return marks;
}

/** The seam of the strip, across the wall where it stands, and the arrow towards the low side. */
function seamAndAim(pictured: PicturedRing, lettering: Lettering): readonly Mark[] {
  const { ring } = pictured;
  const row = drawnRow(pictured.row);
  const half = shapeLength(ring.shape) / 2;
  const past = Math.max(2 * ring.wall, half * 0.14);
  const { along, across } = seamOnLip(ring, seamDirection(pictured));
  const out = Math.hypot(along, across);
  const seam = [out + past, out - ring.wall].map((far) =>
    fromLean(ring, (along * far) / out, (across * far) / out),
  );
  const marks: Mark[] = pictured.seam ? [line('seam', seam, { row })] : [];
  if (ring.tilt !== 0) {
    const reach = half * (0.4 + 1.5 * Math.sin(ring.tilt));
    marks.push(line('aim', [ring.centre, fromLean(ring, reach, 0)], { row, arrow: true }));
  }
  return [...marks, ...cross(ring.centre, lettering.height * 0.8, { row })];
}

function ringMarks(
  pictured: PicturedRing,
  { thickness }: PicturedPanel,
  lettering: Lettering,
): readonly Mark[] {
  const { ring, name } = pictured;
  const row = drawnRow(pictured.row);
  const lip = lipLoop(ring, pictureTolerance).points;
  const mouth = mouthLoop(ring, pictureTolerance)?.points;
  const foot: readonly LineMark[] =
    ring.build === 'square_wall' && ring.tilt !== 0
      ? [loop('part', footLoop(ring, thickness, pictureTolerance).points, { row })]
      : [];
  const holes = mouth === undefined ? {} : { holes: [mouth] };
  const below = { x: ring.centre.x, y: boxAround(lip).bottom - lettering.height * 1.6 };
  return [
    ...foot,
    loop('ring', lip, { row, filled: true, ...holes }),
    ...baffleMarks(pictured),
    ...seamAndAim(pictured, lettering),
    words('note', below, pictured.placed ? name : `${name}, not placed`, {
      row,
      height: lettering.height,
    }),
  ];
}

/** A block under the skin, or what the skin must stay below, with its name in the middle. */
function levelMarks(level: PicturedLevel, { height }: Lettering): readonly Mark[] {
  const row = drawnRow(level.row);
  const { left, right, bottom, top } = boxAround(level.outline);
  const middle = { x: (left + right) / 2, y: (bottom + top) / 2 };
  return [
    loop(level.limit ? 'limit' : 'part', level.outline, { row }),
    words('note', middle, level.name, { row, height }),
  ];
}

/** Places along an axis without those that lie on one another. */
function apart(places: readonly number[], span: number): readonly number[] {
  const sorted = places.toSorted((a, b) => a - b);
  return sorted.filter((place, index) => {
    const before = sorted[index - 1];
    return before === undefined || place - before > span * 1e-3;
  });
}

/** Chains of dimensions from edge to edge over the centres of the rings, and the whole size beside them. */
function dimensions(
  panel: PicturedPanel,
  box: Box,
  centres: readonly Point[],
  lettering: Lettering,
): readonly Mark[] {
  const { step } = lettering;
  const text = (from: number, to: number): string => lengthText(to - from, panel.settings);
  const chain = (places: readonly number[], along: 'x' | 'y', at: number): readonly Mark[] =>
    places.slice(1).flatMap((to, index) => {
      const from = places[index] ?? to;
      const ends =
        along === 'x'
          ? { from: { x: from, y: box.bottom }, to: { x: to, y: box.bottom } }
          : { from: { x: box.left, y: from }, to: { x: box.left, y: to } };
      return dimension({ ...ends, at, along, text: text(from, to), tight: 'before' }, lettering);
    });
  const span = Math.max(box.right - box.left, box.top - box.bottom);
  const [acrossX, acrossY] = [
    apart([box.left, ...centres.map(({ x }) => x), box.right], span),
    apart([box.bottom, ...centres.map(({ y }) => y), box.top], span),
  ];
  const whole = (places: readonly number[]): number => (places.length > 2 ? 2 : 1);
  // Whole sizes come first: where there is no room for all figures, theirs stand.
  return [
    ...chain([box.left, box.right], 'x', box.bottom - whole(acrossX) * step),
    ...chain([box.bottom, box.top], 'y', box.left - whole(acrossY) * step),
    ...(acrossX.length > 2 ? chain(acrossX, 'x', box.bottom - step) : []),
    ...(acrossY.length > 2 ? chain(acrossY, 'y', box.left - step) : []),
  ];
}

function ringWords(pictured: PicturedRing, { settings }: PicturedPanel): string {
  const { ring, name, row } = pictured;
  const shown = (base: number): string => lengthText(base, settings);
  const { x, y } = ring.centre;
  if (!pictured.placed)
    return `${name}: ${showShape(ring.shape, settings)}, does not say where it stands: drag it there, or fill in “Across” and “Up”.`;
  const place = `centre ${shown(Math.abs(x))} ${x < 0 ? 'to the front' : 'to the rear'} and ${shown(Math.abs(y))} ${y < 0 ? 'down' : 'up'} from the base’s zero`;
  const turn = angleText(baseIn(row, 'turn', angle) ?? 0, settings);
  const lean =
    ring.tilt === 0
      ? 'it lies flat'
      : `it leans ${angleText(ring.tilt, settings)} towards ${turn} from straight up`;
  return `${name}: ${showShape(ring.shape, settings)}, ${place}, ${shown(ring.depth)} deep; ${lean}${seamWords(pictured, settings)}.`;
}

function seamWords({ ring, seam, seamTurn }: PicturedRing, settings: UnitSettings): string {
  if (seamTurn !== undefined)
    return `, and its seam is at ${angleText(seamTurn, settings)} from straight up`;
  return seam && ring.tilt !== 0 ? ', and its seam is on the high side' : '';
}

function planWords(panel: PicturedPanel, box: Box): readonly string[] {
  const { name, settings, hand, rings, holes, levels, missing } = panel;
  const size = [box.right - box.left, box.top - box.bottom].map((one) => lengthText(one, settings));
  const rear = isMirrored(hand) ? 'the rear is on the left' : 'the rear is on the right';
  return [
    `${name}, seen from the seats: ${size.join(' long and ')} high; ${rear}.`,
    ...rings.map((one) => ringWords(one, panel)),
    ...holes.map((hole) => {
      const under = hole.under === undefined ? '' : ', shifted to where the magnet comes through';
      return `${hole.name}: ${showShape(hole.shape, settings)}${under}.`;
    }),
    ...levels.map((level) => {
      const is = level.limit ? 'to stay below' : 'under the skin, its top';
      return `${level.name}: ${is} ${lengthText(level.height, settings)} above the base plane.`;
    }),
    ...missing.map((one) => `${one} cannot be drawn: its outline, depth or tilt has no answer.`),
  ];
}

/** Marks as they are seen on a hand. Words stay readable: only their places are mirrored. */
function seen(marks: readonly Mark[], { hand }: PicturedPanel): readonly Mark[] {
  if (!isMirrored(hand)) return marks;
  return marks.map((mark) => {
    if (mark.kind === 'text') return { ...mark, at: seenOn(hand, [mark.at])[0] ?? mark.at };
    const { holes } = mark;
    return {
      ...mark,
      points: seenOn(hand, mark.points),
      ...(holes === undefined ? {} : { holes: holes.map((one) => seenOn(hand, one)) }),
    };
  });
}

/**
 * A base from the front: its outline, the rings with seam and lean, what is cut out of it, and the
 * distances that are marked out on the bench.
 */
export function planDrawing(known: PicturedPanel): Drawing {
  const panel = parkedPanel(known);
  const edge = seenOn(panel.hand, panel.outline.points);
  const box = boxAround(edge);
  const lettering = letteringOf(Math.max(box.right - box.left, box.top - box.bottom));
  const row = drawnRow(panel.row);
  const holes = panel.holes.map((hole): LineMark => {
    const owner = hole.under === undefined ? {} : { owner: drawnRow(hole.under) };
    return loop('hole', holeOutline(hole, panel.rings), { row: drawnRow(hole.row), ...owner });
  });
  const cut = holes.map(({ points }) => points);
  const parts: readonly Mark[] = [
    loop('outline', panel.outline.points, { row, filled: true, holes: cut }),
    ...cross({ x: 0, y: 0 }, lettering.height * 1.2),
    ...panel.levels.flatMap((one) => levelMarks(one, lettering)),
    ...panel.rings.flatMap((one) => ringMarks(one, panel, lettering)),
    ...holes,
  ];
  const placed = panel.rings.filter((one) => one.placed);
  const centres = placed.flatMap(({ ring }) => seenOn(panel.hand, [ring.centre]));
  const marks = [...seen(wordsApart(parts), panel), ...dimensions(panel, box, centres, lettering)];
  return {
    id: panel.hand === 'drawn' ? 'plan' : `plan_${panel.hand}`,
    title: `${panel.name}: plan`,
    words: planWords(panel, box),
    box: boxAround(reached(marks)),
    marks,
  };
}
