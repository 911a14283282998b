import type { Mark } from '../drawing/drawing.ts';
import { boxAround, type Point } from '../geometry/outline.ts';
import { shapeLength, shapeWidth } from '../geometry/shape.ts';
import { footLoop, fromLean } from '../skin/ring-plan.ts';
import { length } from '../units/dimension.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { baseIn, shapeIn } from '../workbook/row-cells.ts';
import type { Hand } from './hands.ts';
import { angleText, cross, drawnRow, lengthText, line, words } from './marks.ts';
import { handWords, madeOf, reachWords } from './part-patterns.ts';
import { cutLoop, cutOutline, onHand, patternOf, type Pattern } from './pattern-marks.ts';
import type { PanelSource, PicturedHole, PicturedPanel, PicturedRing } from './pictured-panel.ts';

/** A hole as it lies in the plan; one under a ring is turned with its lean. */
function holePoints(hole: PicturedHole, rings: readonly PicturedRing[]): readonly Point[] {
  const { points } = cutOutline(hole.shape);
  const over = rings.find(({ row }) => row === hole.under);
  if (over === undefined) {
    return points.map(({ x, y }) => ({ x: x + hole.centre.x, y: y + hole.centre.y }));
  }
  const turned = { ...over.ring, centre: hole.centre };
  return points.map(({ x, y }) => fromLean(turned, x, y));
}

/** Where a ring stands, its centre, and which way it leans. */
function ringMarks({ ring, row }: PicturedRing, panel: PicturedPanel): readonly Mark[] {
  const { hand, thickness } = panel;
  const seen = (points: readonly Point[]): readonly Point[] => onHand(points, hand);
  const [centre = ring.centre] = seen([ring.centre]);
  const reach = shapeLength(ring.shape) / 2;
  const aim = [fromLean(ring, reach * 0.5, 0), fromLean(ring, reach * 0.95, 0)];
  const arrow = aim.flatMap((point) => seen([point]));
  return [
    {
      ...line('ring', seen(footLoop(ring, thickness).points), { row: drawnRow(row) }),
      closed: true,
    },
    ...cross(centre, Math.min(12, reach / 2)),
    ...(ring.tilt === 0 ? [] : [line('aim', arrow, { arrow: true })]),
  ];
}

/** How much cloth and covering must reach over the outline, for whoever cuts them beside it. */
function allowances(base: AnsweredRow, { answers, settings }: PanelSource): readonly string[] {
  const shape = shapeIn(base, 'shape');
  if (shape === undefined) return [];
  return answers.rows('part').flatMap((row) => {
    const [long, wide] = [baseIn(row, 'length', length), baseIn(row, 'width', length)];
    const isOver = answers.under(row).some((one) => one.id === base.id && one.table === base.table);
    if (!isOver || long === undefined || wide === undefined) return [];
    const [ends, sides] = [(long - shapeLength(shape)) / 2, (wide - shapeWidth(shape)) / 2];
    if (ends <= 0 || sides <= 0) return [];
    const name = row.cell('name').text ?? row.id;
    return [
      `${name}: allow ${lengthText(ends, settings)} at the ends and ${lengthText(sides, settings)} at the sides beyond this outline.`,
    ];
  });
}

function ringWords({ ring, name }: PicturedRing, { settings }: PanelSource): string {
  const place = `(${lengthText(ring.centre.x, settings)}, ${lengthText(ring.centre.y, settings)})`;
  const lean =
    ring.tilt === 0 ? 'flat' : `leaning ${angleText(ring.tilt, settings)} along its arrow`;
  return `${name}: centre at ${place}, ${lean}.`;
}

/** Arrow that tells which way is up in the car. */
function upright(points: readonly Point[]): readonly Mark[] {
  const { left, right, bottom, top } = boxAround(points);
  const x = left + (right - left) * 0.06;
  const y = (bottom + top) / 2;
  return [
    line(
      'aim',
      [
        { x, y: y - 15 },
        { x, y: y + 15 },
      ],
      { arrow: true },
    ),
    words('aim', { x: x + 3, y }, 'up', { height: 4, anchor: 'start' }),
  ];
}

function isPlaced(row: AnsweredRow): boolean {
  return ['at_x', 'at_y'].some((column) => row.cell(column).result.state === 'value');
}

/** What has its place on the base: a pattern shows no cut where nobody has said that it is. */
function placedOn({ rings, holes }: PicturedPanel): Pick<PicturedPanel, 'rings' | 'holes'> {
  const placed = rings.filter(({ row }) => isPlaced(row));
  const isUnder = (hole: PicturedHole): boolean => placed.some(({ row }) => row === hole.under);
  return { rings: placed, holes: holes.filter((hole) => isPlaced(hole.row) || isUnder(hole)) };
}

function unplacedWords(panel: PicturedPanel): readonly string[] {
  const { rings, holes } = placedOn(panel);
  const shown = new Set([...rings, ...holes].map(({ row }) => row));
  return [...panel.rings, ...panel.holes]
    .filter(({ row }) => !shown.has(row))
    .map(({ name }) => `${name} is not drawn: it has no place on the base yet (to the rear, up).`);
}

/** Pattern of a base as a hand of the car has it, seen from inside the car; undefined without an outline. */
export function basePattern(
  base: AnsweredRow,
  hand: Hand,
  source: PanelSource,
  panel: PicturedPanel,
): Pattern | undefined {
  const shape = shapeIn(base, 'shape');
  if (shape === undefined) return undefined;
  const outline = onHand(cutOutline(shape).points, hand);
  const { id, title } = handWords(hand);
  const size = `${lengthText(shapeLength(shape), source.settings)} × ${lengthText(shapeWidth(shape), source.settings)}`;
  const made = madeOf(base, source);
  const { rings, holes } = placedOn(panel);
  return patternOf({
    row: base,
    id: `${base.id}${id}`,
    title: `${panel.name}${title}, seen from inside the car`,
    sentences: [
      made === '' ? size : `${made}: ${size}`,
      ...rings.map((ring) => ringWords(ring, source)),
      ...allowances(base, source),
      ...reachWords(shape, source.settings),
      ...unplacedWords(panel),
      ...panel.missing.map((name) => `${name} is not drawn: a figure of it is missing.`),
    ],
    marks: [
      cutLoop('outline', outline, base),
      ...holes.map((hole) =>
        cutLoop('hole', onHand(holePoints(hole, panel.rings), hand), hole.row),
      ),
      ...rings.flatMap((ring) => ringMarks(ring, panel)),
      ...upright(outline),
    ],
  });
}
