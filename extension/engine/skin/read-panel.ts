import type { RowView } from '../formula/catalogue.ts';
import type { Outline, Point } from '../geometry/outline.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import { isPlain, shapeWidth, type Shape } from '../geometry/shape.ts';
import { numberIn, wordIn } from '../trade/arguments.ts';
import { shapeIn } from '../trade/ring-arguments.ts';
import { builtUp, builtUpColumns } from '../trade/functions/build-up.ts';
import { ringBuilds } from '../trade/rings.ts';
import { leanOf, type Panel, type PlacedLevel, type PlacedRing } from './panel.ts';

/** Columns of a base, and of what stands on it, that its skin follows from. */
export const panelColumns: readonly string[] = [
  ...['shape', 'thickness', 'size', 'depth', 'tilt', 'turn'],
  ...['at_x', 'at_y', 'build', 'mouth', 'hand', 'layers'],
];

const levelKinds: ReadonlySet<string> = new Set(['block', 'limit']);

/** Columns of a row that stands on a base, by its kind, that the skin follows from. */
export function columnsStanding(kind: string): readonly string[] {
  return isRing({ kind }) || levelKinds.has(kind) ? panelColumns : [];
}

/** The same where the thickness of what lies on the base counts too. */
export function columnsBuiltUp(kind: string): readonly string[] {
  const columns = columnsStanding(kind);
  return columns.length > 0 ? columns : builtUpColumns;
}

/** A panel read from rows, with how much of it stands in its place. */
export interface ReadPanel {
  readonly panel: Panel;
  /** Share of the job's panels that look like this one: a ring may stand on one hand only. */
  readonly share: number;
  /** Whether every ring says where it stands; else only a closed form can tell of the skin. */
  readonly placed: boolean;
}

/** How finely outlines are drawn before they are divided, in mm. */
const tolerance = 0.01;

function at(row: RowView, column: string): number | undefined {
  return numberIn(row.value(column));
}

function placeOf(row: RowView): { readonly x: number; readonly y: number } {
  return { x: at(row, 'at_x') ?? 0, y: at(row, 'at_y') ?? 0 };
}

const ringKinds: ReadonlySet<string> = new Set(['ring', 'tube_ring', 'stacked_ring']);

/** Whether a row is a ring that cloth is stretched over. */
export function isRing({ kind }: Pick<RowView, 'kind'>): boolean {
  return ringKinds.has(kind);
}

/**
 * The ring that a row describes, where it stands on its base; a blank place is the base's zero.
 * Undefined where the row says no size or depth, or no shape that can lean.
 */
export function ringOf(row: RowView): PlacedRing | undefined {
  const [diameter, depth] = [at(row, 'size'), at(row, 'depth')];
  const shape: Shape | undefined =
    shapeIn(row.value('shape')) ??
    (diameter === undefined ? undefined : { kind: 'circle', diameter });
  if (shape === undefined || depth === undefined) return undefined;
  // A ring is bent round a plain shape; a free outline has no way to lean.
  if (!isPlain(shape) || !(shapeWidth(shape) > 0)) return undefined;
  const mouth = shapeIn(row.value('mouth'));
  const word = wordIn(row.value('build'));
  return {
    id: row.id,
    build: ringBuilds.find((build) => build === word) ?? 'round_baffle',
    shape,
    centre: placeOf(row),
    depth,
    tilt: at(row, 'tilt') ?? 0,
    lean: leanOf(at(row, 'turn') ?? 0),
    wall: mouth === undefined ? 0 : Math.max(0, (shapeWidth(shape) - shapeWidth(mouth)) / 2),
  };
}

/** The outline of a shape whose zero stands at a point. */
export function outlineAt(shape: Shape, { x, y }: Point): Outline {
  const { points, corners } = shapeOutline(shape, tolerance);
  if (x === 0 && y === 0) return { points, corners };
  return { points: points.map((point) => ({ x: point.x + x, y: point.y + y })), corners };
}

function levelsOf(row: RowView, kind: string): readonly PlacedLevel[] {
  return row.standing.flatMap((one) => {
    const [shape, height] = [shapeIn(one.value('shape')), at(one, 'depth')];
    if (one.kind !== kind || shape === undefined || height === undefined) return [];
    return [{ id: one.id, outline: outlineAt(shape, placeOf(one)), height }];
  });
}

/** The limits that stand on a base. */
export function limitsOn(row: RowView): readonly PlacedLevel[] {
  return levelsOf(row, 'limit');
}

/** Whether a row says where it stands. */
export function isPlaced(row: RowView): boolean {
  return at(row, 'at_x') !== undefined || at(row, 'at_y') !== undefined;
}

/**
 * The panels that a base and what stands on it make: one, or one a hand where a ring stands on one hand
 * only. Empty where the base has no outline yet.
 *
 * @param limits what it must stay clear of, where that is asked; then the layers' thickness counts too
 */
export function readPanels(row: RowView, limits?: readonly PlacedLevel[]): readonly ReadPanel[] {
  if (limits !== undefined) return panelsOf(row, limits);
  const known = withoutLimits.get(row) ?? panelsOf(row, limits);
  withoutLimits.set(row, known);
  return known;
}

// Every measure of a skin reads the same panel.
const withoutLimits = new WeakMap<RowView, readonly ReadPanel[]>();

function panelsOf(row: RowView, limits: readonly PlacedLevel[] | undefined): readonly ReadPanel[] {
  const shape = shapeIn(row.value('shape'));
  if (shape === undefined) return [];
  const rows = row.standing.filter(isRing);
  const panelWith = (hand: string): Panel => ({
    id: row.id,
    outline: shapeOutline(shape, tolerance),
    thickness: at(row, 'thickness') ?? 0,
    rings: rows
      .filter((one) => ['', 'both', hand].includes(wordIn(one.value('hand')) ?? ''))
      .flatMap((one) => ringOf(one) ?? []),
    blocks: levelsOf(row, 'block'),
    limits: limits ?? [],
    build: limits === undefined ? 0 : builtUp(row),
  });
  const loneOnPlain = rows.length === 1 && isPlain(shape);
  const placed = loneOnPlain || rows.every(isPlaced);
  const handed = rows.some((one) => ['left', 'right'].includes(wordIn(one.value('hand')) ?? ''));
  const hands = handed ? ['left', 'right'] : ['both'];
  return hands.map((hand) => ({ panel: panelWith(hand), share: 1 / hands.length, placed }));
}
