import {
  packText,
  shapeInWords,
  sidesInWords,
  type AnsweredCell,
  type AnsweredRow,
  type BillLine,
  type Snapshot,
  type UnitSettings,
} from '../../engine/index.ts';
import { shownCell } from './cell-view.ts';

export { shapeInWords };

const about = '≈ ';

/** A text that says ≈ once at most: what comes after the first is about as true. */
function aboutOnce(text: string): string {
  const first = text.indexOf(about);
  if (first < 0) return text;
  const after = first + about.length;
  return text.slice(0, after) + text.slice(after).replaceAll(about, '');
}

/** Text of a cell in a row's main size; empty where it says no size: no answer, or less than nothing. */
function sizeOf(cell: AnsweredCell, snapshot: Snapshot): string {
  const { result } = cell;
  if (result.state !== 'value') return '';
  const { value } = result;
  if (value.kind === 'shape') return shapeInWords(value.shape, snapshot.settings);
  if (value.kind === 'quantity' && value.base < 0 && value.dimension.length > 0) return '';
  const shown = shownCell(cell, snapshot.settings);
  if (cell.column !== 'material') return shown;
  return snapshot.book.materials.get(shown)?.cells.get('name') ?? shown;
}

/** Fills a kind's words (`{size}, {depth} deep`), leaving out pieces whose cell says no size. */
export function sizeInWords(row: AnsweredRow, snapshot: Snapshot): string {
  const words = snapshot.book.kinds.get(row.kind)?.words ?? '';
  return words
    .split(', ')
    .flatMap((piece) => {
      const keys = [...piece.matchAll(/\{([\w.]+)\}/g)].map(([, key = '']) => key);
      const texts = new Map(keys.map((key) => [key, sizeOf(row.cell(key), snapshot)]));
      if ([...texts.values()].includes('')) return [];
      return [
        aboutOnce(piece.replaceAll(/\{([\w.]+)\}/g, (_, key: string) => texts.get(key) ?? '')),
      ];
    })
    .join(', ');
}

/** What is bought, as it is asked for at the counter: `1 sheet, 48 in × 32 in`, `2 × 1 qt`. */
export function packWords(pack: BillLine['packs'][number], settings: UnitSettings): string {
  const { count, cut, sheet, shelf } = pack;
  if (cut !== undefined || sheet === undefined) return packText(pack, settings);
  const number = count * sheet.number;
  // A size is read in one piece; in a narrow bill there is room for mm once.
  const sides = sidesInWords(sheet.length, sheet.width, settings).replace(/ mm(?= × .* mm$)/, '');
  const size = sides.replaceAll(' ', '\u00A0');
  const text = `${String(number)} ${number === 1 ? 'sheet' : 'sheets'}, ${size}`;
  return shelf === true ? `${text} from stock` : text;
}
