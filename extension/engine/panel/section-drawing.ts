import type { Drawing, Mark } from '../drawing/drawing.ts';
import { boxAround, type Point } from '../geometry/outline.ts';
import { shapeLength } from '../geometry/shape.ts';
import { alongLean } from '../skin/ring-plan.ts';
import {
  angleText,
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
import { holeOutline, type PicturedPanel, type PicturedRing } from './pictured-panel.ts';

/** A stretch along a line. */
type Stretch = readonly [from: number, to: number];

/**
 * A point of the section through a ring along its lean: x towards the low side from the ring's centre,
 * y above the base plane. Given along the leaning seat and off it towards the front.
 */
function onSeat({ ring }: PicturedRing, along: number, off: number): Point {
  const [sin, cos] = [Math.sin(ring.tilt), Math.cos(ring.tilt)];
  return { x: along * cos + off * sin, y: ring.depth - along * sin + off * cos };
}

/** Where the line of the section crosses a loop, as stretches inside it. */
function stretches(pictured: PicturedRing, points: readonly Point[]): readonly Stretch[] {
  const places = points.map((point) => alongLean(pictured.ring, point));
  const crossings = places.flatMap((here, index) => {
    const next = places[(index + 1) % places.length];
    if (next === undefined || here.across > 0 === next.across > 0) return [];
    const share = here.across / (here.across - next.across);
    return [here.along + share * (next.along - here.along)];
  });
  const sorted = crossings.toSorted((a, b) => a - b);
  return sorted.flatMap((from, index): readonly Stretch[] => {
    const to = sorted[index + 1];
    return index % 2 === 0 && to !== undefined ? [[from, to]] : [];
  });
}

/** What is left of stretches outside a further one. */
function without(from: readonly Stretch[], [start, end]: Stretch): readonly Stretch[] {
  return from.flatMap(([left, right]): readonly Stretch[] => {
    const pieces: Stretch[] = [
      [left, Math.min(right, start)],
      [Math.max(left, end), right],
    ];
    return pieces.filter(([one, other]) => other > one);
  });
}

/** Half lengths of a ring's outside and inside along its leaning seat. */
function halves({ ring }: PicturedRing): { readonly outer: number; readonly inner: number } {
  const half = shapeLength(ring.shape) / 2;
  const stretched = ring.build === 'round_tube' ? 1 / Math.cos(ring.tilt) : 1;
  const wall = ring.build === 'square_wall' ? ring.wall : ring.wall / Math.cos(ring.tilt);
  return { outer: half * stretched, inner: Math.max(0, half * stretched - wall) };
}

/** The wall cut on one side: from the lip (or from under the baffle that lies on it) to the base. */
function wallMark(pictured: PicturedRing, side: 1 | -1, thickness: number): Mark {
  const { ring, onTop } = pictured;
  const { outer, inner } = halves(pictured);
  const square = ring.build === 'square_wall';
  const edge = (along: number): readonly [Point, Point] => {
    const seat = onSeat(pictured, side * along, 0);
    const top = square
      ? onSeat(pictured, side * along, -onTop)
      : { x: seat.x, y: seat.y - onTop / Math.cos(ring.tilt) };
    const shift = square ? (top.y - thickness) * Math.tan(ring.tilt) : 0;
    return [top, { x: top.x - shift, y: thickness }];
  };
  const [outerTop, outerFoot] = edge(outer);
  const [innerTop, innerFoot] = edge(inner);
  return loop('ring', [outerTop, outerFoot, innerFoot, innerTop], {
    filled: true,
    row: drawnRow(pictured.row),
  });
}

function baffleMarks(pictured: PicturedRing): readonly Mark[] {
  const { baffle, driver, onTop, ring } = pictured;
  if (baffle === undefined) return [];
  const { outer, inner } = halves(pictured);
  const edge = onTop > 0 ? outer : Math.min(inner, shapeLength(baffle.shape) / 2);
  const opening = Math.min(edge, (driver?.cutout ?? 0) / 2);
  // Within an upright wall its edge is fitted to the wall: upright too.
  const slant =
    onTop > 0 || ring.build === 'square_wall' ? 0 : baffle.thickness * Math.tan(ring.tilt);
  return ([1, -1] as const).map((side) =>
    loop(
      'baffle',
      [
        onSeat(pictured, side * opening, 0),
        onSeat(pictured, side * edge, 0),
        onSeat(pictured, side * edge + slant, -baffle.thickness),
        onSeat(pictured, side * opening, -baffle.thickness),
      ],
      { filled: true, row: drawnRow(baffle.row) },
    ),
  );
}

/** The driver by the sizes that are known: its frame on the seat, and a cone from cut-out to magnet. */
function driverMarks(pictured: PicturedRing): readonly Mark[] {
  const { driver } = pictured;
  if (driver === undefined) return [];
  const row = drawnRow(driver.row);
  const marks: Mark[] = [];
  if (driver.frame !== undefined) {
    const half = driver.frame / 2;
    const frame = [onSeat(pictured, -half, 0), onSeat(pictured, half, 0)];
    marks.push(line('driver', frame, { row }));
  }
  const { cutout, depth, magnet } = driver;
  if (cutout !== undefined && depth !== undefined) {
    const back = (magnet ?? cutout) / 2;
    const body = [
      onSeat(pictured, -cutout / 2, 0),
      onSeat(pictured, -back, -depth),
      onSeat(pictured, back, -depth),
      onSeat(pictured, cutout / 2, 0),
    ];
    marks.push(loop('driver', body, { row }));
  }
  return marks;
}

/** The base left and right of what is cut out of it, as far as it lies near the ring. */
function baseMarks(pictured: PicturedRing, panel: PicturedPanel, reach: number): readonly Mark[] {
  const cut = panel.holes.flatMap((hole) => stretches(pictured, holeOutline(hole, panel.rings)));
  const near = stretches(pictured, panel.outline.points).flatMap(
    ([from, to]): readonly Stretch[] => {
      const [left, right] = [Math.max(from, -reach), Math.min(to, reach)];
      return right > left ? [[left, right]] : [];
    },
  );
  return cut.reduce(without, near).map(([left, right]) =>
    loop(
      'outline',
      [
        { x: left, y: 0 },
        { x: right, y: 0 },
        { x: right, y: panel.thickness },
        { x: left, y: panel.thickness },
      ],
      { filled: true, row: drawnRow(panel.row) },
    ),
  );
}

/** Corner of the magnet that comes deepest; undefined where the driver's depth is not known. */
function deepest(pictured: PicturedRing): Point | undefined {
  const { depth, magnet } = pictured.driver ?? {};
  return depth === undefined ? undefined : onSeat(pictured, (magnet ?? 0) / 2, -depth);
}

function dimensions(
  pictured: PicturedRing,
  panel: PicturedPanel,
  lettering: Lettering,
): readonly Mark[] {
  const { ring } = pictured;
  const { thickness, settings } = panel;
  const { outer } = halves(pictured);
  const { step } = lettering;
  const [high, low] = [onSeat(pictured, -outer, 0), onSeat(pictured, outer, 0)];
  const upright = (from: Point, to: Point, at: number): readonly Mark[] => {
    const text = lengthText(to.y - from.y, settings);
    return dimension({ from, to, at, along: 'y', text }, lettering);
  };
  const centre = onSeat(pictured, 0, 0);
  const corner = deepest(pictured);
  const behind =
    corner !== undefined && corner.y < 0
      ? upright(corner, { x: corner.x, y: 0 }, low.x + step)
      : [];
  const lean =
    ring.tilt === 0
      ? []
      : [
          words(
            'aim',
            { x: centre.x + lettering.height, y: high.y + lettering.height },
            `leans ${angleText(ring.tilt, settings)}`,
            { height: lettering.height, anchor: 'start' },
          ),
        ];
  return [
    ...upright({ x: high.x, y: thickness }, high, high.x - step),
    ...upright({ x: centre.x, y: 0 }, centre, high.x - 2 * step),
    ...upright({ x: low.x, y: thickness }, low, low.x + step * (behind.length > 0 ? 2 : 1)),
    ...behind,
    ...lean,
  ];
}

function sectionWords(pictured: PicturedRing, panel: PicturedPanel): readonly string[] {
  const { ring, name, driver } = pictured;
  const { outer } = halves(pictured);
  const shown = (base: number): string => lengthText(base, panel.settings);
  const [high, low] = [-outer, outer].map((along) => onSeat(pictured, along, 0).y);
  const corner = deepest(pictured);
  const lean = ring.tilt === 0 ? 'lies flat' : `leans ${angleText(ring.tilt, panel.settings)}`;
  return [
    `Section through ${name} along its lean, the low side on the right. It ${lean}.`,
    `Seat at the centre ${shown(ring.depth)} above the base plane; lip ${shown((high ?? 0) - panel.thickness)} above the base on the high side, ${shown((low ?? 0) - panel.thickness)} on the low side.`,
    ...(corner === undefined || driver === undefined
      ? []
      : [
          corner.y < 0
            ? `The magnet’s lower corner comes ${shown(-corner.y)} behind the base plane.`
            : `The magnet’s lower corner stays ${shown(corner.y)} in front of the base plane.`,
        ]),
  ];
}

/** Heights of the skin along the section, from the ring outwards; x as in the section. */
export type SkinProfile = readonly (readonly Point[])[];

/** The runs of a line that lie within the section. */
function within(points: readonly Point[], reach: number): readonly (readonly Point[])[] {
  const runs: Point[][] = [[]];
  for (const point of points) {
    if (Math.abs(point.x) <= reach) runs.at(-1)?.push(point);
    else if ((runs.at(-1)?.length ?? 0) > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

/** A ring cut along its lean: wall, baffle, driver, base and the cloth that runs down to it. */
export function sectionDrawing(
  pictured: PicturedRing,
  panel: PicturedPanel,
  skin: SkinProfile = [],
): Drawing {
  const { outer } = halves(pictured);
  const reach = outer * 1.6 + 25;
  const lettering = letteringOf(2 * reach);
  const cloth = skin.flatMap((points) => within(points, reach)).map((run) => line('skin', run));
  const marks: readonly Mark[] = [
    line('axis', [
      { x: -reach, y: 0 },
      { x: reach, y: 0 },
    ]),
    line('axis', [onSeat(pictured, 0, -outer * 0.9), onSeat(pictured, 0, outer * 0.35)]),
    ...baseMarks(pictured, panel, reach),
    ...driverMarks(pictured),
    ...baffleMarks(pictured),
    wallMark(pictured, -1, panel.thickness),
    wallMark(pictured, 1, panel.thickness),
    ...cloth,
    ...dimensions(pictured, panel, lettering),
  ];
  return {
    id: `section_${pictured.row.id}`,
    title: `${pictured.name}: section`,
    words: sectionWords(pictured, panel),
    box: boxAround(reached(marks)),
    marks,
  };
}
