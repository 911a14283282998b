import { shapeInsideRadius } from '../geometry/inside-radius.ts';
import { isPlain, shapeLength, shapeWidth, type Shape } from '../geometry/shape.ts';
import { boxAround, type Point } from '../geometry/outline.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';
import { partOpening } from '../workbook/part-opening.ts';
import { baseIn, nameOf, shapeIn, wordIn } from '../workbook/row-cells.ts';
import { isOnHand, type Hand } from './hands.ts';
import { cross, lengthText, line, words } from './marks.ts';
import { cutLoop, cutOutline, onHand, patternOf, type Pattern } from './pattern-marks.ts';
import type { PanelSource } from './pictured-panel.ts';

/** Blanks that are larger than what they cover by less than this are cut to its outline, in mm. */
const sameMm = 1;

/** Ending of an id and words of a title for a hand. */
export function handWords(hand: Hand): { readonly id: string; readonly title: string } {
  return hand === 'drawn' ? { id: '', title: '' } : { id: `_${hand}`, title: `, ${hand}` };
}

/** Hands in which a part of this outline differs: a plain one is the same for both. */
function handsFor(row: AnsweredRow, shape: Shape, hands: readonly Hand[]): readonly Hand[] {
  const own = hands.filter((hand) => isOnHand(wordIn(row, 'hand'), hand));
  return isPlain(shape) ? ['drawn'] : own;
}

function middleOf(points: readonly Point[]): Point {
  const { left, right, bottom, top } = boxAround(points);
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
}

/** Material and thickness of a part, as the bench reads them. */
export function madeOf(row: AnsweredRow, { answers, settings }: PanelSource): string {
  const material = answers.row('material', wordIn(row, 'material'));
  const thickness = baseIn(row, 'thickness', length);
  const thick = thickness === undefined ? '' : `${lengthText(thickness, settings)} thick`;
  return [material === undefined ? '' : nameOf(material), thick]
    .filter((one) => one !== '')
    .join(', ');
}

/** Which bits and bearings reach along an outline; nothing where it has no inside corner. */
export function reachWords(shape: Shape, settings: UnitSettings): readonly string[] {
  const tight = shapeInsideRadius(shape, 'outside');
  if (tight === undefined) return [];
  const at = `(${lengthText(tight.at.x, settings)}, ${lengthText(tight.at.y, settings)})`;
  return tight.radius < 0.05
    ? [`A sharp inside corner at ${at}: a bit leaves it round; finish it with a saw or a file.`]
    : [`Tightest inside radius ${lengthText(tight.radius, settings)} at ${at}.`];
}

/** A board that is cut to its outline: baffle, grille frame, bezel and the like. */
function boardPattern(row: AnsweredRow, shape: Shape, hand: Hand, source: PanelSource): Pattern {
  const { answers, settings } = source;
  const points = onHand(cutOutline(shape).points, hand);
  const middle = middleOf(points);
  const opening = partOpening(row, answers);
  const hole = opening === undefined || opening <= 0 ? undefined : opening;
  const round: Shape | undefined =
    hole === undefined ? undefined : { kind: 'circle', diameter: hole };
  const inner = round === undefined ? [] : cutOutline(round).points;
  const moved = inner.map(({ x, y }) => ({ x: x + middle.x, y: y + middle.y }));
  const { id, title } = handWords(hand);
  const size = `${lengthText(shapeLength(shape), settings)} × ${lengthText(shapeWidth(shape), settings)}`;
  return patternOf({
    row,
    id: `${row.id}${id}`,
    title: `${nameOf(row)}${title}`,
    sentences: [
      [madeOf(row, source), size].filter((one) => one !== '').join(': '),
      ...(hole === undefined ? [] : [`Opening ${lengthText(hole, settings)} across.`]),
      ...reachWords(shape, settings),
    ],
    marks: [
      cutLoop('outline', points, row),
      ...(moved.length === 0 ? [] : [cutLoop('hole', moved, row)]),
      ...cross(middle, Math.min(15, shapeWidth(shape) / 4)),
    ],
  });
}

interface BlankForm {
  readonly size: { readonly length: number; readonly width: number };
  /** What it covers; undefined for a blank on its own. */
  readonly covered: Shape | undefined;
}

/** Cloth, covering or board cut as a rectangle, with what it covers marked inside. */
function blankPattern(
  row: AnsweredRow,
  { size, covered }: BlankForm,
  hand: Hand,
  source: PanelSource,
): Pattern {
  const { settings } = source;
  const fold = covered === undefined ? [] : onHand(cutOutline(covered).points, hand);
  const middle = fold.length === 0 ? { x: 0, y: 0 } : middleOf(fold);
  const [halfLength, halfWidth] = [size.length / 2, size.width / 2];
  const corner = (x: 1 | -1, y: 1 | -1): Point => ({
    x: middle.x + x * halfLength,
    y: middle.y + y * halfWidth,
  });
  const box = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  const shown = (mm: number): string => lengthText(mm, settings);
  const allowance =
    covered === undefined
      ? []
      : [
          `Allowance ${shown((size.length - shapeLength(covered)) / 2)} at the ends and ${shown((size.width - shapeWidth(covered)) / 2)} at the sides, from the dashed line: edge, turn and grip.`,
        ];
  const { id, title } = handWords(hand);
  const arrow = Math.min(60, halfLength * 0.8);
  return patternOf({
    row,
    id: `${row.id}${id}`,
    title: `${nameOf(row)}${title}`,
    sentences: [
      `Blank ${shown(size.length)} × ${shown(size.width)}${madeOf(row, source) === '' ? '' : `: ${madeOf(row, source)}`}`,
      ...allowance,
    ],
    marks: [
      cutLoop('outline', box, row),
      ...(fold.length === 0
        ? []
        : [{ kind: 'line' as const, role: 'fold' as const, points: fold, closed: true }]),
      line(
        'grain',
        [
          { x: middle.x - arrow, y: middle.y },
          { x: middle.x + arrow, y: middle.y },
        ],
        { arrow: true },
      ),
      words('grain', { x: middle.x, y: middle.y + 4 }, 'nap or grain', { height: 4 }),
    ],
  });
}

function isRoundIt(size: BlankForm['size'], shape: Shape): boolean {
  return (
    Math.abs(size.length - shapeLength(shape)) < sameMm &&
    Math.abs(size.width - shapeWidth(shape)) < sameMm
  );
}

function sizeOf(row: AnsweredRow): BlankForm['size'] | undefined {
  const [long, wide] = [baseIn(row, 'length', length), baseIn(row, 'width', length)];
  if (long === undefined || wide === undefined) return undefined;
  return long > 0 && wide > 0 ? { length: long, width: wide } : undefined;
}

/** What a blank covers: its own outline, or that of what it lies on, where it reaches over it. */
function coveredBy(row: AnsweredRow, size: BlankForm['size'], answers: Answers): Shape | undefined {
  const [ground] = answers.under(row);
  const shape = shapeIn(row, 'shape') ?? (ground && shapeIn(ground, 'shape'));
  if (shape === undefined) return undefined;
  const covers = size.length >= shapeLength(shape) && size.width >= shapeWidth(shape);
  return covers ? shape : undefined;
}

/** Patterns of a part that is cut from flat stock, one for each hand in which it differs. */
export function partPatterns(
  row: AnsweredRow,
  hands: readonly Hand[],
  source: PanelSource,
): readonly Pattern[] {
  const { answers, book } = source;
  if (book.kinds.get(row.kind)?.takes !== 'blank') return [];
  const [shape, size] = [shapeIn(row, 'shape'), sizeOf(row)];
  if (shape !== undefined && (size === undefined || isRoundIt(size, shape))) {
    return handsFor(row, shape, hands).map((hand) => boardPattern(row, shape, hand, source));
  }
  if (size === undefined) return [];
  const covered = coveredBy(row, size, answers);
  const shown = covered === undefined ? (['drawn'] as const) : handsFor(row, covered, hands);
  return shown.map((hand) => blankPattern(row, { size, covered }, hand, source));
}
