import type { Block } from '../locked/rooms.ts';

/** A rectangle of cloth in whole thousandths of a millimetre; `along` lies along the roll. */
export interface Panel {
  readonly index: number;
  readonly along: number;
  readonly across: number;
  readonly turns: boolean;
}

export interface LaidPanel {
  readonly panel: Panel;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface Roll {
  readonly width: number;
  /** Panels begin at whole multiples of these; 1 for anywhere. */
  readonly stepAlong: number;
  readonly stepAcross: number;
  readonly held?: HeldOnRoll;
}

/** What is left of the start of a roll on which panels are held in place. */
export interface HeldOnRoll {
  /** Rooms before and between them. */
  readonly rooms: readonly Block[];
  /** The edge behind them, over the whole width. */
  readonly edge: readonly Readonly<Ledge>[];
}

/** A stretch of the edge of what is laid so far: at `y` on for `width`, panels reach to `x`. */
export interface Ledge {
  x: number;
  y: number;
  width: number;
}

export interface Laid {
  readonly panels: readonly LaidPanel[];
  readonly length: number;
  /** Ledges and panels looked at. */
  readonly work: number;
}

/** A layout in the making. */
interface Laying {
  readonly roll: Roll;
  readonly waiting: Panel[];
  readonly turnsFirst: readonly boolean[];
  readonly panels: LaidPanel[];
  length: number;
  work: number;
}

/**
 * Lays panels from a list: always at the ledge nearest the start of the roll, a panel that fills it
 * exactly if there is one, else the first of the list that fits; a ledge that takes none is closed. Where
 * panels are held, the rooms before them are filled first in the same way.
 */
export function laidAlong(
  roll: Roll,
  list: readonly Panel[],
  turnsFirst: readonly boolean[],
): Laid {
  const { rooms = [], edge = [{ x: 0, y: 0, width: roll.width }] } = roll.held ?? {};
  const length = edge.reduce((most, { x }) => Math.max(most, x), 0);
  const laying: Laying = { roll, waiting: [...list], turnsFirst, panels: [], length, work: 0 };
  for (const { x, y, length: long, width } of rooms) fill(laying, [{ x, y, width }], x + long);
  fill(
    laying,
    edge.map((ledge) => ({ ...ledge })),
    Infinity,
  );
  const { waiting, panels, work } = laying;
  return { panels, length: waiting.length > 0 ? Infinity : laying.length, work };
}

/** Lays panels behind ledges, none of them beyond an end. */
function fill(laying: Laying, ledges: Ledge[], end: number): void {
  const { roll, waiting, turnsFirst, panels } = laying;
  while (waiting.length > 0) {
    const at = nearest(ledges);
    const ledge = ledges[at];
    if (ledge === undefined) break;
    laying.work += ledges.length + waiting.length / 4;
    const x = Math.ceil(ledge.x / roll.stepAlong) * roll.stepAlong;
    const y = Math.ceil(ledge.y / roll.stepAcross) * roll.stepAcross;
    const room = ledge.y + ledge.width - y;
    const found = fitting(waiting, turnsFirst, { room, most: end - x, ...walls(ledges, at) });
    if (found === undefined) {
      if (!closed(ledges, at)) break;
      continue;
    }
    const { index, turned } = found;
    const [panel] = waiting.splice(index, 1);
    if (panel === undefined) break;
    const along = turned ? panel.across : panel.along;
    const across = turned ? panel.along : panel.across;
    panels.push({ panel, x, y, turned });
    laying.length = Math.max(laying.length, x + along);
    raised(ledges, at, { reach: x + along, width: y - ledge.y + across });
  }
}

function nearest(ledges: readonly Ledge[]): number {
  let best = 0;
  for (let at = 1; at < ledges.length; at++) {
    if ((ledges[at]?.x ?? Infinity) < (ledges[best]?.x ?? Infinity)) best = at;
  }
  return best;
}

function walls(
  ledges: readonly Ledge[],
  at: number,
): { readonly below: number; readonly above: number } {
  const x = ledges[at]?.x ?? 0;
  return { below: (ledges[at - 1]?.x ?? -1) - x, above: (ledges[at + 1]?.x ?? -1) - x };
}

interface Gap {
  readonly room: number;
  /** As far as it goes along the roll. */
  readonly most: number;
  readonly below: number;
  readonly above: number;
}

function fitting(
  waiting: readonly Panel[],
  turnsFirst: readonly boolean[],
  gap: Gap,
): { readonly index: number; readonly turned: boolean } | undefined {
  let best: { index: number; turned: boolean } | undefined;
  let fitness = 0;
  for (let index = 0; index < waiting.length; index++) {
    const panel = waiting[index];
    if (panel === undefined) continue;
    for (const turned of waysOf(panel, turnsFirst)) {
      const along = turned ? panel.across : panel.along;
      const across = turned ? panel.along : panel.across;
      if (across > gap.room || along > gap.most) continue;
      // Nothing but a snug one betters one that fits.
      if (fitness > 0 && across !== gap.room) continue;
      const own = snugness(along, across, gap);
      if (own > fitness) [best, fitness] = [{ index, turned }, own];
    }
    if (fitness === 3) break;
  }
  return best;
}

function snugness(along: number, across: number, gap: Gap): number {
  if (across !== gap.room) return 1;
  return along === gap.below || along === gap.above ? 3 : 2;
}

const straight: readonly boolean[] = [false];
const straightFirst: readonly boolean[] = [false, true];
const turnedFirst: readonly boolean[] = [true, false];

function waysOf(panel: Panel, turnsFirst: readonly boolean[]): readonly boolean[] {
  if (!panel.turns) return straight;
  return turnsFirst[panel.index] === true ? turnedFirst : straightFirst;
}

/** Brings a ledge that takes nothing up to its lower neighbour; false where it has none. */
function closed(ledges: Ledge[], at: number): boolean {
  const own = ledges[at];
  const [before, after] = [ledges[at - 1], ledges[at + 1]];
  const neighbour =
    before !== undefined && (after === undefined || before.x <= after.x) ? before : after;
  if (own === undefined || neighbour === undefined) return false;
  own.x = neighbour.x;
  merged(ledges);
  return true;
}

function raised(
  ledges: Ledge[],
  at: number,
  { reach, width }: { readonly reach: number; readonly width: number },
): void {
  const own = ledges[at];
  if (own === undefined) return;
  const fresh: Ledge[] = [{ x: reach, y: own.y, width }];
  if (own.width > width) fresh.push({ x: own.x, y: own.y + width, width: own.width - width });
  ledges.splice(at, 1, ...fresh);
  merged(ledges);
}

function merged(ledges: Ledge[]): void {
  for (let at = ledges.length - 1; at > 0; at--) {
    const [before, own] = [ledges[at - 1], ledges[at]];
    if (before === undefined || own === undefined || before.x !== own.x) continue;
    before.width += own.width;
    ledges.splice(at, 1);
  }
}
