import { baseIn, nameOf, shapeIn, wordIn } from '../../estimate/cells.ts';
import { angle, length, plain, type Dimension } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { outlineWords } from './cut-list.ts';
import { list, nothing, section, table, tag, type Content, type Html } from './html.ts';
import type { PaperGround } from './paper.ts';
import { sideColumns, sidesOf, type Sides } from './sides.ts';

interface At {
  readonly ground: PaperGround;
  readonly dimension: Dimension;
}

function shownIn(row: AnsweredRow, column: string, { ground, dimension }: At): string {
  const base = baseIn(row, column, dimension);
  return base === undefined ? '' : showQuantity({ base, dimension }, ground.settings).text;
}

function partsOf({ workbook }: PaperGround, kinds: readonly string[]): readonly AnsweredRow[] {
  return workbook.rows('part').filter(({ kind, broken }) => !broken && kinds.includes(kind));
}

function outlineText(row: AnsweredRow, { settings }: PaperGround): string {
  const shape = shapeIn(row, 'shape');
  return shape === undefined ? '' : outlineWords(shape, settings);
}

interface Opening {
  readonly name: string;
  readonly inWhat: string;
  readonly sides: Sides;
  readonly size: string;
  readonly place: string;
}

function openingsOf(ground: PaperGround): readonly Opening[] {
  const { workbook } = ground;
  const at = { ground, dimension: length };
  const holes = partsOf(ground, ['hole', 'wiring_hole']).map((row): Opening => {
    const below = workbook.row('part', wordIn(row, 'on'));
    const place = ['at_x', 'at_y'].map((key) => shownIn(row, key, at));
    return {
      name: nameOf(row),
      inWhat: below === undefined ? '' : nameOf(below),
      sides: sidesOf(row, 1, ground),
      size: outlineText(row, ground) || shownIn(row, 'size', at),
      place: place.filter((text) => text !== '').join(', ') || 'as marked',
    };
  });
  const cuts = partsOf(ground, ['baffle']).flatMap((row): readonly Opening[] => {
    const driver = workbook.row('driver', wordIn(row, 'driver'));
    if (driver === undefined) return [];
    return [
      {
        name: `Cut-out for ${nameOf(driver)}`,
        inWhat: nameOf(row),
        sides: sidesOf(row, 1, ground),
        size: shownIn(driver, 'cutout', at),
        place: 'centre of the baffle',
      },
    ];
  });
  return [...holes, ...cuts];
}

/** Openings with their size and place; x runs to the rear on both sides. */
export function openingTable(ground: PaperGround): Html {
  const openings = openingsOf(ground);
  const columns = sideColumns(openings.map(({ sides }) => sides));
  return section(
    'Holes and cut-outs',
    table(
      ['Hole', 'In', ...columns.head, 'Size', 'Centre (to the rear, up)'],
      ['', '', ...columns.looks, 'w', 's'],
      openings.map(({ name, inWhat, sides, size, place }) => [
        name,
        inWhat,
        ...columns.cells(sides),
        size,
        place,
      ]),
    ),
  );
}

/** A direction in its plane as the hour of a clock, 12 up: `10:30`. The rear is at 3 on the right side. */
function clockHour(turn: number, side: 'left' | 'right'): string {
  const turned = side === 'right' ? turn : -turn;
  const quarters = Math.round((turned / (2 * Math.PI)) * 48);
  const day = ((quarters % 48) + 48) % 48;
  const hour = Math.floor(day / 4);
  return `${String(hour === 0 ? 12 : hour)}:${String((day % 4) * 15).padStart(2, '0')}`;
}

/** How far a ring leans and where to, told apart for each side. */
function leanCell(
  row: AnsweredRow,
  { sides, ground }: { sides: Sides; ground: PaperGround },
): Content {
  const tilt = baseIn(row, 'tilt', angle) ?? 0;
  if (tilt === 0) return 'none';
  const turn = baseIn(row, 'turn', angle) ?? 0;
  const words = ['tilt', 'turn'].map((column) =>
    shownIn(row, column, { ground, dimension: angle }),
  );
  const clocks = (['left', 'right'] as const)
    .filter((side) => sides[side] > 0)
    .map((side) => `${side} ${clockHour(turn, side)}`);
  const hours = clocks.length === 0 ? '' : `clock: ${clocks.join(', ')}`;
  const told = words.filter((text) => text !== '').join(', to ');
  return hours === '' ? told : [told, tag('div', { class: 'small' }, hours)];
}

const ringNote =
  'Depth is from the back of the base to the driver’s seat at the centre; low and high are the sides of the wall over the base. The lean is turned from straight up towards the rear; on the clock it is seen from the seats, 12 up. Right-hand rings are mirror images of left-hand ones.';

/** Rings with their depths and lean. */
export function ringTable(ground: PaperGround): Html {
  const rings = partsOf(ground, ['ring', 'tube_ring', 'stacked_ring']).map((row) => ({
    row,
    sides: sidesOf(row, baseIn(row, 'qty', plain) ?? 1, ground),
  }));
  const columns = sideColumns(rings.map(({ sides }) => sides));
  return section(
    'Rings',
    rings.length === 0 ? nothing : tag('p', { class: 'small lead' }, ringNote),
    table(
      ['Ring', ...columns.head, 'Outside', 'Depth', 'Low', 'High', 'Lean'],
      ['', ...columns.looks, 'w', 'w', 'w', 'w', 's'],
      rings.map(({ row, sides }) => [
        nameOf(row),
        ...columns.cells(sides),
        ...['size', 'depth', 'low', 'high'].map((column) =>
          shownIn(row, column, { ground, dimension: length }),
        ),
        leanCell(row, { sides, ground }),
      ]),
    ),
  );
}

/** Sticks that aim the rings. */
export function shimList(ground: PaperGround): Html {
  const lines = partsOf(ground, ['shim']).map((row) => {
    const each = shownIn(row, 'use', { ground, dimension: length });
    return `${nameOf(row)}: ${each} on average; the low side takes the shortest, the high side the longest.`;
  });
  return section('Shims', list(lines));
}
