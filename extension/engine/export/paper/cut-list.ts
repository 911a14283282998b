import type { TaperedPair } from '../../cutting/strips/tapered-pair.ts';
import { lengthText, sizeText } from '../../estimate/amount.ts';
import type { BillLine, RowNeed } from '../../estimate/bill.ts';
import { nameOf, shapeIn } from '../../estimate/cells.ts';
import { isPlain, type Shape } from '../../geometry/shape.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { section, table, tag, type Content, type Html } from './html.ts';
import type { PaperGround } from './paper.ts';
import { sideColumns, sidesOf, type Sides } from './sides.ts';

/** An outline in words: `8 in across`, `26 in × 15 in, corners 2 in`; free ones come as patterns. */
export function outlineWords(shape: Shape, settings: UnitSettings): string {
  switch (shape.kind) {
    case 'circle':
      return `${lengthText(shape.diameter, settings)} across`;
    case 'oval':
      return `${sizeText(shape, settings)} oval`;
    case 'rect':
      return sizeText(shape, settings);
    case 'roundrect':
      return `${sizeText(shape, settings)}, corners ${lengthText(shape.radius, settings)}`;
    default:
      return 'by its pattern';
  }
}

function cutSize(need: RowNeed, { settings }: PaperGround): string {
  if (need.blank !== undefined) return sizeText(need.blank, settings);
  const strip = !need.use.count && need.use.dimension.length === 1;
  return strip ? lengthText(need.use.base, settings) : '';
}

/** How two strips come out of one blank; the hands of a pair get one each. */
function pairText(
  { length, width, turned }: TaperedPair,
  { sides, ground }: { sides: Sides; ground: PaperGround },
): readonly string[] {
  const blank = sizeText({ length, width }, ground.settings);
  const both = sides.left > 0 && sides.left === sides.right;
  if (turned) return [`two head to tail out of ${blank}`, 'alike, one turned end for end'];
  const [one, other] = both ? ['left', 'right'] : ['one', 'the other'];
  return [`two head to tail out of ${blank}`, `seam: ${one} high side, ${other} low side`];
}

/** What a piece is cut to. What a row draws beside its own material is only cut to length. */
function outlineText(
  row: AnsweredRow,
  need: RowNeed,
  of: { sides: Sides; ground: PaperGround; pair: TaperedPair | undefined },
): Content {
  const shape = need.draw === '' ? shapeIn(row, 'shape') : undefined;
  if (shape === undefined) return '';
  const words = outlineWords(shape, of.ground.settings);
  if (of.pair !== undefined) {
    return [words, ...pairText(of.pair, of).map((line) => tag('div', { class: 'small' }, line))];
  }
  const mirrored = of.sides.left > 0 && of.sides.right > 0 && !isPlain(shape);
  return mirrored ? `${words}; left mirrors right` : words;
}

/** The pair that a row's strips are cut in, where the layout cuts them so. */
function pairedIn({ laid }: BillLine, { row, occurrence }: RowNeed): TaperedPair | undefined {
  if (laid === undefined) return undefined;
  const { pairs, owners } = laid.order;
  const isOwn = (part: string): boolean =>
    owners.get(part)?.some((one) => one.row === row && one.occurrence === occurrence) ?? false;
  return [...pairs].find(([part]) => isOwn(part))?.[1];
}

interface Cut {
  readonly material: string;
  readonly what: string;
  readonly sides: Sides;
  readonly size: string;
  readonly outline: Content;
}

function cutsOf(ground: PaperGround): readonly Cut[] {
  const { bill, workbook } = ground;
  return bill.lines.flatMap((line) =>
    line.rows.flatMap((need): readonly Cut[] => {
      const size = cutSize(need, ground);
      const row = workbook.row(need.table, need.row);
      if (size === '' || row === undefined) return [];
      const sides = sidesOf(row, need.pieces, ground);
      const what = need.draw === '' ? nameOf(row) : `${nameOf(row)} (${need.draw})`;
      const pair = pairedIn(line, need);
      const outline = outlineText(row, need, { sides, ground, pair });
      return [{ material: line.name, what, sides, size, outline }];
    }),
  );
}

/** Everything that is cut, material after material, with a box to tick for each side. */
export function cutList(ground: PaperGround): Html {
  const cuts = cutsOf(ground);
  const columns = sideColumns(cuts.map(({ sides }) => sides));
  const rows = cuts.flatMap(
    ({ material, what, sides, size, outline }, index): readonly (readonly Content[])[] => {
      const first = cuts[index - 1]?.material !== material;
      const row = [what, ...columns.cells(sides), size, outline];
      return first ? [[material], row] : [row];
    },
  );
  return section(
    'Cut list',
    table(['Piece', ...columns.head, 'Blank', 'Outline'], ['', ...columns.looks, 'w', 's'], rows),
  );
}
