import { lengthText, sizeText } from '../../estimate/amount.ts';
import type { RowNeed } from '../../estimate/bill.ts';
import { nameOf, shapeIn } from '../../estimate/cells.ts';
import { isPlain, type Shape } from '../../geometry/shape.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { section, table, type Content, type Html } from './html.ts';
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

/** What a piece is cut to. What a row draws beside its own material is only cut to length. */
function outlineText(
  row: AnsweredRow,
  need: RowNeed,
  of: { sides: Sides; ground: PaperGround },
): string {
  const shape = need.draw === '' ? shapeIn(row, 'shape') : undefined;
  if (shape === undefined) return '';
  const words = outlineWords(shape, of.ground.settings);
  const mirrored = of.sides.left > 0 && of.sides.right > 0 && !isPlain(shape);
  return mirrored ? `${words}; left mirrors right` : words;
}

interface Cut {
  readonly material: string;
  readonly what: string;
  readonly sides: Sides;
  readonly size: string;
  readonly outline: string;
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
      const outline = outlineText(row, need, { sides, ground });
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
