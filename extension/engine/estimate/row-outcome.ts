import type { Kind } from '../book/book.ts';
import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { sameData } from '../workbook/same-meaning.ts';
import { billProblem } from './bill-problems.ts';
import { nameOf, placeOf, quantityIn, wordIn } from './cells.ts';
import { notedRow, readsTheSame, type CellsRead } from './cells-read.ts';
import type { MaterialFacts } from './material.ts';
import { isSameAsked, readNeed, type Asked } from './need.ts';
import { readOwnCost, type OwnCost } from './own-cost.ts';
import { multiplicity } from './panels.ts';
import { columnOf, type Asking } from './use.ts';

/** Everything one part row asks of the bill. */
export interface RowOutcome {
  readonly asked: readonly Asked[];
  /** Cost of a row that has its own price. */
  readonly own?: OwnCost;
  /** The driver a baffle holds, and how many of it. */
  readonly holds?: { readonly driver: string; readonly count: number; readonly words: string };
  /** Materials whose need has no answer. */
  readonly missing: readonly string[];
  /** Needs that no line stands for: no material was named, or it does not exist. */
  readonly loose: number;
  readonly problems: readonly Problem[];
}

/** What the outcome of a row is worked from. */
export interface RowInput {
  readonly row: AnsweredRow;
  readonly kind: Kind;
  readonly panel: AnsweredRow | undefined;
  readonly material: (id: string) => MaterialFacts | undefined;
  readonly settings: UnitSettings;
  /** What falls out of a part, as loops in mm. */
  readonly openings?: Asking['openings'];
}

const nothing: RowOutcome = { asked: [], missing: [], loose: 0, problems: [] };

/** The material a row or a draw names: an id, `none`, or empty. */
function materialNamed(row: AnsweredRow, column: string): string {
  const word = wordIn(row, column);
  return word === '' ? (row.cell(column).text ?? '').trim() : word;
}

/** What a row asks for in one respect, and the cells that it was read from. */
export interface OutcomePiece {
  /** `own`, `holds`, or a draw of the row as `draw.glue`. */
  readonly of: string;
  readonly read: CellsRead;
  /** Materials looked up, found or not. */
  readonly materials: readonly string[];
  readonly outcome: RowOutcome;
}

/** What a row asks for, in all respects and together. */
export interface PiecedOutcome {
  readonly outcome: RowOutcome;
  readonly pieces: readonly OutcomePiece[];
}

/**
 * What a part row needs: its own material, those of its draws, its own price, the driver it holds.
 * A need that cannot be worked out is told on the row and left out.
 *
 * @param before what the row came to when all but its cells was the same: pieces whose cells say the
 *   same again are taken over, and so is a piece that comes to the same
 */
export function rowOutcome(input: RowInput, before?: PiecedOutcome): PiecedOutcome {
  const old = before?.pieces;
  const known = (of: string): OutcomePiece | string => old?.find((piece) => piece.of === of) ?? of;
  const drawn = input.row.draws.map((draw) =>
    pieceOf(input, known(`draw.${draw}`), (noted) => drawOutcome(noted, draw)),
  );
  const pieces = Array.of(pieceOf(input, known('own'), ownOutcome)).concat(
    drawn,
    pieceOf(input, known('holds'), heldOutcome),
  );
  const same =
    old?.length === pieces.length &&
    pieces.every(({ outcome }, index) => outcome === old[index]?.outcome);
  return { outcome: before !== undefined && same ? before.outcome : together(pieces), pieces };
}

const nothingRead: OutcomePiece = { of: '', read: [], materials: [], outcome: nothing };

function pieceOf(
  input: RowInput,
  old: OutcomePiece | string,
  work: (input: RowInput) => RowOutcome,
): OutcomePiece {
  const before = typeof old === 'string' ? undefined : old;
  if (before !== undefined && readsTheSame(before.read, input.row)) return before;
  const noted = notedRow(input.row);
  const materials: string[] = [];
  const material = (id: string): MaterialFacts | undefined => {
    materials.push(id);
    return input.material(id);
  };
  const fresh = work({ ...input, row: noted.row, material });
  const same = before !== undefined && isSameOutcome(before.outcome, fresh);
  const of = typeof old === 'string' ? old : old.of;
  const outcome = same ? before.outcome : fresh;
  return { ...nothingRead, of, read: noted.read(), materials: materials.slice(), outcome };
}

function isSameOutcome(
  { asked, ...one }: RowOutcome,
  { asked: others, ...other }: RowOutcome,
): boolean {
  return (
    sameData(one, other) &&
    asked.length === others.length &&
    asked.every((need, index) => {
      const two = others[index];
      return two !== undefined && isSameAsked(need, two);
    })
  );
}

function together(pieces: readonly OutcomePiece[]): RowOutcome {
  const all = pieces.map(({ outcome }) => outcome);
  const own = all.find((one) => one.own !== undefined)?.own;
  const holds = all.find((one) => one.holds !== undefined)?.holds;
  return {
    ...nothing,
    asked: all.flatMap(({ asked }) => asked),
    ...(own === undefined ? {} : { own }),
    ...(holds === undefined ? {} : { holds }),
    missing: all.flatMap(({ missing }) => missing),
    loose: all.reduce((sum, { loose }) => sum + loose, 0),
    problems: all.flatMap(({ problems }) => problems),
  };
}

function ownOutcome(input: RowInput): RowOutcome {
  const { row, kind } = input;
  const named = materialNamed(row, 'material');
  if (quantityIn(row, 'price').state !== 'blank') {
    const material = named === 'none' ? undefined : input.material(named);
    const cost = readOwnCost({ ...input, material });
    return cost.ok
      ? { ...nothing, own: cost.value }
      : { ...nothing, loose: 1, problems: [cost.problem] };
  }
  if (kind.takes === 'none') return unpriced(input);
  if (named === 'none') return nothing;
  return named === '' ? withoutMaterial(row, 'material') : materialOutcome(input, '', named);
}

// A one-off cost is a row that can have a price and no material.
function unpriced({ row, kind }: RowInput): RowOutcome {
  if (!kind.columns.includes('price') || kind.columns.includes('material')) return nothing;
  const problem = billProblem(
    'price-blank',
    { row: nameOf(row) },
    { severity: 'warning', place: placeOf(row, 'price') },
  );
  return { ...nothing, loose: 1, problems: [problem] };
}

function withoutMaterial(row: AnsweredRow, column: string): RowOutcome {
  const problem = billProblem(
    'material-blank',
    { row: nameOf(row), column },
    { severity: 'warning', place: placeOf(row, column) },
  );
  return { ...nothing, loose: 1, problems: [problem] };
}

function drawOutcome(input: RowInput, draw: string): RowOutcome {
  const { row } = input;
  const column = columnOf({ draw }, 'material');
  const named = materialNamed(row, column);
  if (named === 'none') return nothing;
  if (named !== '') return materialOutcome(input, draw, named);
  const unused = row.cell(columnOf({ draw }, 'use')).result.state === 'blank';
  return unused ? nothing : withoutMaterial(row, column);
}

function materialOutcome(input: RowInput, draw: string, named: string): RowOutcome {
  const { row, kind, panel, settings, openings } = input;
  const material = input.material(named);
  if (material === undefined) {
    const problem = billProblem(
      'material-unknown',
      { row: nameOf(row), material: named },
      { place: placeOf(row, columnOf({ draw }, 'material')) },
    );
    return { ...nothing, loose: 1, problems: [problem] };
  }
  const { asked, problems } = readNeed({
    ...{ row, kind, panel, draw, material, settings },
    ...(openings && { openings }),
  });
  return asked === undefined
    ? { ...nothing, missing: [material.id], problems }
    : { ...nothing, asked: Array.of(asked), problems };
}

// Rings, grilles and gaskets are linked to a driver too; the baffle is what it is screwed to.
const holders = ['baffle'];

function heldOutcome({ row, kind, panel }: RowInput): RowOutcome {
  const driver = holders.includes(kind.id) ? wordIn(row, 'driver') : '';
  if (driver === '') return nothing;
  const pieces = quantityIn(row, 'qty');
  const each = pieces.state === 'value' ? Math.max(0, pieces.value.base) : 1;
  const times = multiplicity(row, panel, wordIn(row, 'per'));
  const number = each === 1 ? '' : `${String(each)} × `;
  const holds = { driver, count: each * times.panels, words: `${number}${times.words}` };
  return { ...nothing, holds };
}
