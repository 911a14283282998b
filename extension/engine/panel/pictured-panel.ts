import type { Book, Kind } from '../book/book.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import type { Shape } from '../geometry/shape.ts';
import { leanOf, type PlacedRing } from '../skin/panel.ts';
import { isPlaced, ringOf } from '../skin/read-panel.ts';
import { cutoutCentre, fromLean } from '../skin/ring-plan.ts';
import type { Outline, Point } from '../geometry/outline.ts';
import { angle, length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';
import { isSameRow, loneView } from '../workbook/row-view.ts';
import { baseIn, nameOf, shapeIn, wordIn } from '../workbook/row-cells.ts';
import { isOnHand, type Hand } from './hands.ts';

/** Straight pieces of a picture stray at most this far from the true curve, in mm. */
export const pictureTolerance = 0.05;

/** The board that closes a ring. */
export interface PicturedBaffle {
  readonly row: AnsweredRow;
  readonly shape: Shape;
  readonly thickness: number;
}

/** A driver as far as its sizes are known, in mm. */
export interface PicturedDriver {
  readonly row: AnsweredRow;
  readonly cutout: number | undefined;
  readonly frame: number | undefined;
  readonly depth: number | undefined;
  readonly magnet: number | undefined;
}

export interface PicturedRing {
  readonly row: AnsweredRow;
  readonly name: string;
  readonly ring: PlacedRing;
  /** Its row says where it stands; else its centre is the base's zero. */
  readonly placed: boolean;
  /** The baffle lies on the strip, which is so much lower; 0 where the strip wraps it. */
  readonly onTop: number;
  /** Its wall is a strip that is bent round and meets itself. */
  readonly seam: boolean;
  /** Where its row sets the seam, turned from straight up; undefined: on the high side. */
  readonly seamTurn: number | undefined;
  /** Length of strip or tube to cut, with its lap; undefined where the row does not say. */
  readonly cutLength: number | undefined;
  readonly baffle: PicturedBaffle | undefined;
  readonly driver: PicturedDriver | undefined;
}

export interface PicturedHole {
  readonly row: AnsweredRow;
  readonly name: string;
  readonly shape: Shape;
  readonly centre: Point;
  /** Ring whose driver comes through it and with which it moves; undefined for one placed by itself. */
  readonly under: AnsweredRow | undefined;
}

/** Something level under the skin or before it, with its outline. */
export interface PicturedLevel {
  readonly row: AnsweredRow;
  readonly name: string;
  readonly outline: readonly Point[];
  /** What the cloth must stay below, in place of what holds it up. */
  readonly limit: boolean;
  /** Above the base plane, in mm. */
  readonly height: number;
}

/** A base with what stands on it, as pictures show it: geometry beside the rows it came from. */
export interface PicturedPanel {
  readonly row: AnsweredRow;
  readonly name: string;
  readonly outline: Outline;
  readonly thickness: number;
  readonly rings: readonly PicturedRing[];
  readonly holes: readonly PicturedHole[];
  readonly levels: readonly PicturedLevel[];
  /** Names of rows that cannot be drawn because a figure is missing. */
  readonly missing: readonly string[];
  readonly hand: Hand;
  readonly settings: UnitSettings;
}

export interface PanelSource {
  readonly answers: Answers;
  readonly book: Book;
  readonly settings: UnitSettings;
}

function hasColumns(kind: Kind | undefined, columns: readonly string[]): boolean {
  return kind !== undefined && columns.every((column) => kind.columns.includes(column));
}

function isRing(row: AnsweredRow, book: Book): boolean {
  return hasColumns(book.kinds.get(row.kind), ['depth', 'tilt', 'turn', 'at_x']);
}

function isHole(row: AnsweredRow, book: Book): boolean {
  const kind = book.kinds.get(row.kind);
  return (
    hasColumns(kind, ['shape', 'at_x']) && kind?.takes === 'none' && !kind.columns.includes('depth')
  );
}

/** Rows that others are placed on, in the order of the sheet: each has a picture of its own. */
export function picturedBases({ answers, book }: PanelSource): readonly AnsweredRow[] {
  const carriers = new Set(
    [...book.kinds.values()]
      .filter((kind) => hasColumns(kind, ['at_x']))
      .flatMap((kind) => [...kind.on]),
  );
  return answers.rows('part').filter((row) => carriers.has(row.kind));
}

/** Hands that a base is made for: of a pair both, of panels that are alike none in particular. */
export function handsOf(base: AnsweredRow, answers: Answers): readonly Hand[] {
  const panel = answers.row('panel', wordIn(base, 'panel'));
  const hands = panel === undefined ? '' : wordIn(panel, 'hands');
  if (hands === 'pair') return ['drawn', 'left', 'right'];
  return hands === 'left' || hands === 'right' ? ['drawn', hands] : ['drawn'];
}

function standingOn(ground: AnsweredRow, answers: Answers): readonly AnsweredRow[] {
  return answers.rows('part').filter((row) => isSameRow(ground, answers.under(row)[0]));
}

function pointOf(row: AnsweredRow): Point {
  return { x: baseIn(row, 'at_x', length) ?? 0, y: baseIn(row, 'at_y', length) ?? 0 };
}

function driverOf(row: AnsweredRow, answers: Answers): PicturedDriver | undefined {
  const driver = answers.row('driver', wordIn(row, 'driver'));
  if (driver === undefined) return undefined;
  return {
    row: driver,
    cutout: baseIn(driver, 'cutout', length),
    frame: baseIn(driver, 'frame', length),
    depth: baseIn(driver, 'depth', length),
    magnet: baseIn(driver, 'magnet', length),
  };
}

function baffleOn(ring: AnsweredRow, answers: Answers): PicturedBaffle | undefined {
  for (const row of standingOn(ring, answers)) {
    const [shape, thickness] = [shapeIn(row, 'shape'), baseIn(row, 'thickness', length)];
    if (row.kind === 'baffle' && shape !== undefined && thickness !== undefined)
      return { row, shape, thickness };
  }
  return undefined;
}

function seamOf(row: AnsweredRow, book: Book): Pick<PicturedRing, 'seam' | 'seamTurn'> {
  const seam = book.kinds.get(row.kind)?.takes === 'blank';
  return { seam, seamTurn: seam ? baseIn(row, 'seam', angle) : undefined };
}

/** The same as a direction in the panel's plan. */
export function seamDirection({ seamTurn }: PicturedRing): number | undefined {
  return seamTurn === undefined ? undefined : leanOf(seamTurn);
}

function ringFrom(row: AnsweredRow, { answers, book }: PanelSource): PicturedRing | undefined {
  const view = loneView(row);
  const ring = ringOf(view);
  // A ring whose lean has no answer, or lies over, is told as missing rather than drawn upright.
  const tilt = baseIn(row, 'tilt', angle);
  if (ring === undefined || tilt === undefined || !(Math.abs(tilt) < Math.PI / 2)) return undefined;
  const baffle = baffleOn(row, answers);
  return {
    row,
    name: nameOf(row),
    ring,
    placed: isPlaced(view),
    onTop: wordIn(row, 'seat') === 'top' ? (baseIn(row, 'thickness', length) ?? 0) : 0,
    ...seamOf(row, book),
    cutLength: baseIn(row, 'length', length),
    baffle,
    driver: driverOf(row, answers) ?? (baffle && driverOf(baffle.row, answers)),
  };
}

/** A hole without a place of its own lies where the driver of the same name leans through the base. */
function holeFrom(
  row: AnsweredRow,
  rings: readonly PicturedRing[],
  thickness: number,
): PicturedHole | undefined {
  const shape = shapeIn(row, 'shape');
  if (shape === undefined) return undefined;
  const named = { row, name: nameOf(row), shape };
  const driver = wordIn(row, 'driver');
  const over = rings.find((one) => driver !== '' && one.driver?.row.id === driver);
  if (isPlaced(loneView(row)) || over === undefined)
    return { ...named, centre: pointOf(row), under: undefined };
  const centre = cutoutCentre(over.ring, thickness, over.driver?.depth ?? 0);
  return { ...named, centre, under: over.row };
}

function isLevel(row: AnsweredRow, book: Book): boolean {
  return hasColumns(book.kinds.get(row.kind), ['shape', 'depth', 'at_x']) && !isRing(row, book);
}

function levelFrom(row: AnsweredRow, book: Book): PicturedLevel | undefined {
  const [shape, height] = [shapeIn(row, 'shape'), baseIn(row, 'depth', length)];
  if (shape === undefined || height === undefined) return undefined;
  const { x, y } = pointOf(row);
  const { points } = shapeOutline(shape, pictureTolerance);
  return {
    row,
    name: nameOf(row),
    outline: points.map((point) => ({ x: point.x + x, y: point.y + y })),
    // What is in the way takes no material.
    limit: book.kinds.get(row.kind)?.takes === 'none',
    height,
  };
}

/** Outline of a hole in the panel's plan; one that lies under a ring is turned with its lean. */
export function holeOutline(hole: PicturedHole, rings: readonly PicturedRing[]): readonly Point[] {
  const { points } = shapeOutline(hole.shape, pictureTolerance);
  const over = rings.find(({ row }) => row === hole.under);
  if (over === undefined)
    return points.map(({ x, y }) => ({ x: x + hole.centre.x, y: y + hole.centre.y }));
  const turned = { ...over.ring, centre: hole.centre };
  return points.map(({ x, y }) => fromLean(turned, x, y));
}

/** Everything that a picture of a base shows; undefined where the base has no outline. */
export function picturedPanel(
  base: AnsweredRow,
  hand: Hand,
  source: PanelSource,
): PicturedPanel | undefined {
  const { answers, book, settings } = source;
  const shape = shapeIn(base, 'shape');
  if (shape === undefined) return undefined;
  const thickness = baseIn(base, 'thickness', length) ?? 0;
  const shown = standingOn(base, answers).filter((row) => isOnHand(wordIn(row, 'hand'), hand));
  const ringRows = shown.filter((row) => isRing(row, book));
  const rings = ringRows.flatMap((row) => ringFrom(row, source) ?? []);
  const holeRows = shown.filter((row) => isHole(row, book));
  const holes = holeRows.flatMap((row) => holeFrom(row, rings, thickness) ?? []);
  const levelRows = shown.filter((row) => isLevel(row, book));
  const levels = levelRows.flatMap((row) => levelFrom(row, book) ?? []);
  const drawn = new Set([...rings, ...holes, ...levels].map(({ row }) => row));
  const all = [...ringRows, ...holeRows, ...levelRows];
  return {
    row: base,
    name: nameOf(base),
    outline: shapeOutline(shape, pictureTolerance),
    thickness,
    rings,
    holes,
    levels,
    missing: all.filter((row) => !drawn.has(row)).map(nameOf),
    hand,
    settings,
  };
}
