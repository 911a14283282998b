import { turnedLoops } from '../cutting/outlines/forms.ts';
import type { CutPattern, Placement, SawCut } from '../cutting/instance.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import type { Drawing, DrawnRow, LineMark, Mark } from '../drawing/drawing.ts';
import { lengthText, sizeText } from '../estimate/amount.ts';
import type { BillLine } from '../estimate/bill.ts';
import { nameOf } from '../estimate/cells.ts';
import { placementOwners } from '../estimate/placement-owners.ts';
import type { Laid, Owner } from '../estimate/cut-layout.ts';
import type { Point } from '../geometry/outline.ts';
import { pairMarks, pairWords } from './pair-drawing.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Answers } from '../workbook/answers.ts';

/** What a cut layout is drawn with. */
export interface CutDrawing {
  readonly line: BillLine;
  readonly settings: UnitSettings;
  /** What a row is called. */
  readonly name: (row: DrawnRow) => string;
  /** Draws the saw's cuts with their numbers. */
  readonly cuts?: boolean;
}

/** What rows are called: by their name, else by their id. */
export function rowName(answers: Answers): (row: DrawnRow) => string {
  return ({ table, id }) => {
    const row = answers.row(table, id);
    return row === undefined ? id : nameOf(row);
  };
}

/** One drawing for each sheet of a line's layout, for its cloth, or for its lengths together. */
export function cutDrawings(how: CutDrawing): readonly Drawing[] {
  const { laid } = how.line;
  if (laid === undefined || laid.order.instance.kind === 'packs') return [];
  if (laid.answer.kind === 'strips') return [stripsDrawing(how, laid)];
  const owners = placementOwners(laid);
  return laid.answer.sheets.map((_, index) => sheetDrawing(how, laid, { index, owners }));
}

type Loop = readonly Point[];

function rectangle(x: number, y: number, length: number, width: number): Loop {
  return [
    { x, y },
    { x: x + length, y },
    { x: x + length, y: y + width },
    { x, y: y + width },
  ];
}

function area(role: LineMark['role'], points: Loop, row?: DrawnRow): LineMark {
  return { kind: 'line', role, points, closed: true, filled: true, ...(row ? { row } : {}) };
}

interface OneSheet {
  readonly index: number;
  readonly owners: ReadonlyMap<Placement, Owner>;
}

function sheetDrawing(how: CutDrawing, laid: Laid, { index, owners }: OneSheet): Drawing {
  const { line, settings } = how;
  const { answer } = laid;
  const sheet = answer.sheets[index];
  const stock = stocksOf(laid).find(({ id }) => id === sheet?.stock);
  const length = answer.length ?? stock?.length ?? 0;
  const width = stock?.width ?? 0;
  const own = answer.placements.filter((one) => one.index === index);
  const cuts = answer.cuts.filter((one) => one.index === index);
  const number =
    answer.kind === 'bolt' ? '' : `, sheet ${String(index + 1)} of ${String(answer.count)}`;
  return {
    id: `${line.id}-${String(index + 1)}`,
    title: `${line.name}${number}`,
    words: [
      `${sizeText({ length, width }, settings)}, ${String(own.length)} ${own.length === 1 ? 'part' : 'parts'}, ${percent(sheet?.utilisation ?? 0)} used.`,
      ...own.map((one) => partWords(one, owners.get(one), how)),
      ...(how.cuts === true ? cuts.map((cut, step) => cutWords(cut, step, settings)) : []),
    ],
    box: { left: 0, bottom: 0, right: length, top: width },
    marks: [
      area('offcut', rectangle(0, 0, length, width)),
      ...own.flatMap((one) => partMarks(one, owners.get(one), how)),
      ...(how.cuts === true ? cuts.flatMap(cutMarks) : []),
    ],
  };
}

function stocksOf({ order }: Laid): readonly { id: string; length: number; width: number }[] {
  return order.instance.kind === 'packs' ? [] : order.instance.stocks;
}

function percent(share: number): string {
  return `${String(Math.round(share * 1000) / 10)} %`;
}

function nameFor(owner: Owner | undefined, how: CutDrawing, otherwise: string): string {
  return owner === undefined ? otherwise : how.name({ table: owner.table, id: owner.row });
}

function partWords(one: Placement, owner: Owner | undefined, how: CutDrawing): string {
  const { settings } = how;
  const turned = one.rotation === 0 ? '' : `, turned by ${String(one.rotation)}°`;
  const held = one.fixed === undefined ? '' : ', locked';
  const from = `${lengthText(one.x, settings)} along, ${lengthText(one.y, settings)} across`;
  const two = pairOf(one, how);
  const pair = two === undefined ? '' : `; ${pairWords(two)}`;
  return `${nameFor(owner, how, one.part)}: ${sizeText(one, settings)} at ${from}${turned}${held}${pair}.`;
}

function partMarks(one: Placement, owner: Owner | undefined, how: CutDrawing): readonly Mark[] {
  const { x, y, length, width } = one;
  const row = owner === undefined ? undefined : { table: owner.table, id: owner.row };
  const pair = pairOf(one, how);
  if (pair !== undefined) {
    return [
      ...pairMarks(one, pair, { name: nameFor(owner, how, one.part), row }),
      ...grainMarks(one),
    ];
  }
  const middle = { x: x + length / 2, y: y + width / 2 };
  const name = nameFor(owner, how, one.part);
  const size = `${sizeText(one, how.settings)}${one.fixed === undefined ? '' : ', locked'}`;
  const tall = width > 2 * length;
  // Capitals of Helvetica are about as high as one and a quarter of its letters are wide.
  const longest = Math.max(name.length, size.length, 1);
  const fits = (1.2 * (tall ? width : length)) / longest;
  const height = Math.max(4, Math.min(18, Math.min(length, width) / 8, fits));
  const labelled = { ...(row === undefined ? {} : { row }), height, anchor: 'middle' as const };
  const text = { kind: 'text' as const, role: 'note' as const, ...labelled };
  const turn = tall ? { angle: Math.PI / 2 } : {};
  const under = tall
    ? { x: middle.x + height * 1.6, y: middle.y }
    : { x: middle.x, y: middle.y - height * 1.6 };
  return [
    outlineMark(one, how, row),
    { ...text, at: middle, text: name, ...turn },
    { ...text, at: under, text: size, ...turn },
    ...grainMarks(one),
  ];
}

function pairOf({ part }: Placement, { line }: CutDrawing): TaperedPair | undefined {
  return line.laid?.order.pairs.get(part);
}

/** A part where it lies, openings left out. */
function outlineMark(one: Placement, how: CutDrawing, row: DrawnRow | undefined): LineMark {
  const loops = loopsOf(one, how);
  const { x, y, length, width } = one;
  const mark = area('outline', loops?.outer ?? rectangle(x, y, length, width), row);
  return loops === undefined || loops.holes.length === 0 ? mark : { ...mark, holes: loops.holes };
}

/** The outline of a part as it lies; undefined where it is a rectangle. */
function loopsOf(
  one: Placement,
  { line }: CutDrawing,
): { readonly outer: Loop; readonly holes: readonly Loop[] } | undefined {
  const instance = line.laid?.order.instance;
  if (instance === undefined || instance.kind === 'packs') return undefined;
  const part = instance.parts.find(({ id }) => id === one.part);
  if (part?.points === undefined) return undefined;
  const { outer, holes } = turnedLoops(
    { outer: part.points, holes: part.holes ?? [] },
    one.rotation,
  );
  const moved = (loop: typeof outer): Loop =>
    loop.map(([x, y]) => ({ x: x + one.x, y: y + one.y }));
  return { outer: moved(outer), holes: holes.map(moved) };
}

/** The part's own length, as an arrow: it shows how grain and nap run. */
function grainMarks({ x, y, length, width, rotation }: Placement): readonly Mark[] {
  const along = rotation % 180 === 0;
  const reach = Math.min(60, 0.3 * (along ? length : width));
  const back = rotation >= 180;
  const low = { x: x + length * 0.06, y: y + width * 0.06 };
  const high = along ? { x: low.x + reach, y: low.y } : { x: low.x, y: low.y + reach };
  const points = back ? [high, low] : [low, high];
  return [{ kind: 'line', role: 'grain', points, closed: false, arrow: true }];
}

function cutWords(cut: SawCut, step: number, settings: UnitSettings): string {
  const way = cut.way === 'across' ? 'across at' : 'along at';
  return `Cut ${String(step + 1)}: ${way} ${lengthText(cut.at, settings)}.`;
}

function cutMarks({ way, at, from, to }: SawCut, step: number): readonly Mark[] {
  const points =
    way === 'across'
      ? [
          { x: at, y: from },
          { x: at, y: to },
        ]
      : [
          { x: from, y: at },
          { x: to, y: at },
        ];
  const [start] = points;
  return [
    { kind: 'line', role: 'kerf', points, closed: false },
    ...(start === undefined
      ? []
      : [
          {
            kind: 'text' as const,
            role: 'dimension' as const,
            at: start,
            text: String(step + 1),
            height: 12,
            anchor: 'start' as const,
          },
        ]),
  ];
}

// Strips lie one below another; their real width does not matter for where they are cut.
const stripHeight = 60;
const stripPitch = 110;

function stripsDrawing(how: CutDrawing, laid: Laid): Drawing {
  const { line, settings } = how;
  const { patterns } = laid.answer;
  const lengths = new Map(stocksOf(laid).map(({ id, length }) => [id, length]));
  const longest = Math.max(0, ...patterns.map(({ stock }) => lengths.get(stock) ?? 0));
  const marks = patterns.flatMap((pattern, index) =>
    patternMarks(how, laid, {
      pattern,
      y: -index * stripPitch,
      length: lengths.get(pattern.stock) ?? 0,
    }),
  );
  return {
    id: `${line.id}-lengths`,
    title: line.name,
    words: patterns.map((pattern) => patternWords(pattern, settings)),
    box: {
      left: 0,
      bottom: -Math.max(0, patterns.length - 1) * stripPitch,
      right: longest,
      top: stripHeight,
    },
    marks,
  };
}

function patternWords({ times, pieces, left }: CutPattern, settings: UnitSettings): string {
  const cut = pieces.map(
    ({ length, count }) => `${String(count)} × ${lengthText(length, settings)}`,
  );
  return `${String(times)} ×: ${cut.join(', ')}; ${lengthText(left, settings)} left.`;
}

function patternMarks(
  { settings, name }: CutDrawing,
  { order }: Laid,
  strip: { readonly pattern: CutPattern; readonly y: number; readonly length: number },
): readonly Mark[] {
  const { pattern, y, length } = strip;
  const kerf = order.instance.kind === 'packs' ? 0 : (order.instance.kerf ?? 0);
  const marks: Mark[] = [area('offcut', rectangle(0, y, length, stripHeight))];
  let x = 0;
  for (const piece of pattern.pieces) {
    const [owner] = order.owners.get(piece.part) ?? [];
    const row = owner === undefined ? undefined : { table: owner.table, id: owner.row };
    for (let count = 0; count < piece.count; count++) {
      marks.push(area('outline', rectangle(x, y, piece.length, stripHeight), row), {
        kind: 'text',
        role: 'note',
        at: { x: x + piece.length / 2, y: y + stripHeight / 3 },
        text: `${row === undefined ? piece.part : name(row)} ${lengthText(piece.length, settings)}`,
        height: 12,
        anchor: 'middle',
        ...(row === undefined ? {} : { row }),
      });
      x += piece.length + kerf;
    }
  }
  marks.push({
    kind: 'text',
    role: 'dimension',
    at: { x: 0, y: y + stripHeight + 8 },
    text: `${String(pattern.times)} ×`,
    height: 14,
    anchor: 'start',
  });
  return marks;
}
