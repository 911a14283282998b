import type {
  PictureLine,
  PictureMark,
  PictureText,
  PictureView,
} from '../../extension/protocol/panel-view.ts';
import { arrowHead, pathOf, type Fit, type Margins } from './fit.ts';

const svg = 'http://www.w3.org/2000/svg';

/** An element of a picture with its attributes. */
export function drawn(
  tag: 'svg' | 'g' | 'path' | 'text' | 'title',
  attributes: Readonly<Record<string, string>> = {},
): SVGElement {
  const made = document.createElementNS(svg, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}

/** Roles of which a thin line alone can be pointed at: they get a wider one that nobody sees. */
const thin = new Set(['ring', 'hole', 'driver', 'outline', 'baffle']);

function lineParts(mark: PictureLine, fit: Fit): readonly SVGElement[] {
  const { role, at, closed, filled, holes, arrow, row } = mark;
  const edge = pathOf(at, closed, fit);
  const d = [edge, ...holes.map((one) => pathOf(one, true, fit))].join('');
  const parts: SVGElement[] = [];
  if (filled) parts.push(drawn('path', { class: `area ${role}`, d, 'fill-rule': 'evenodd' }));
  // What is cut out of a base is drawn by itself; the inner edge of a wall is its own.
  parts.push(drawn('path', { class: `mark ${role}`, d: role === 'ring' ? d : edge }));
  const head = arrow ? arrowHead(at, fit) : '';
  if (head !== '') parts.push(drawn('path', { class: `mark ${role} head`, d: head }));
  if (row !== '' && thin.has(role)) parts.push(drawn('path', { class: 'hit', d: edge }));
  return parts;
}

const smallest = 10;
const largest = 14;

/** Size of letters in pixels: as drawn, within what can be read on a screen. */
function letters(height: number, fit: Fit): number {
  // A capital is about 0.7 of the size of its letters.
  const asDrawn = (height * fit.scale) / 0.7;
  return height === 0 ? 11 : Math.max(smallest, Math.min(largest, asDrawn));
}

interface Patch {
  readonly row: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room that words take, roughly: letters are about half as wide as they are high. */
function room(mark: PictureText, fit: Fit, size: number): Patch {
  const width = mark.text.length * size * 0.54;
  const [x, y] = [fit.x(mark.at[0]), fit.y(mark.at[1])];
  const before = { start: 0, middle: width / 2, end: width }[mark.anchor];
  const { row } = mark;
  if (Math.abs(mark.angle) > 45)
    return { row, left: x - size, right: x, top: y - width + before, bottom: y + before };
  return { row, left: x - before, right: x - before + width, top: y - size, bottom: y };
}

function overlaps(one: Patch, other: Patch): boolean {
  return (
    one.left < other.right &&
    other.left < one.right &&
    one.top < other.bottom &&
    other.top < one.bottom
  );
}

/** How far words of a picture stand out of its place on each side, in pixels. */
export function overhang(
  { marks }: PictureView,
  fit: Fit,
  place: { readonly width: number; readonly height: number },
): Margins {
  const out = { left: 0, right: 0, top: 0, bottom: 0 };
  for (const mark of marks) {
    if (mark.kind === 'line') continue;
    const patch = room(mark, fit, letters(mark.height, fit));
    out.left = Math.max(out.left, -patch.left);
    out.right = Math.max(out.right, patch.right - place.width);
    out.top = Math.max(out.top, -patch.top);
    out.bottom = Math.max(out.bottom, patch.bottom - place.height);
  }
  return out;
}

function textPart(mark: PictureText, fit: Fit, size: number): SVGElement {
  const [x, y] = [fit.x(mark.at[0]), fit.y(mark.at[1])];
  const place = `translate(${x.toFixed(1)} ${y.toFixed(1)})`;
  const part = drawn('text', {
    class: `mark ${mark.role}`,
    transform: mark.angle === 0 ? place : `${place} rotate(${String(-mark.angle)})`,
    'text-anchor': mark.anchor,
    'font-size': String(Math.round(size * 10) / 10),
  });
  part.textContent = mark.text;
  return part;
}

/** A run of marks that are one thing: a row, or what belongs to none. */
export interface MarkGroup {
  readonly row: string;
  readonly owner: string;
  readonly parts: readonly SVGElement[];
}

/**
 * Draws a picture's marks in their order, those of one row together. Figures that would lie on one
 * another are left out: the words beside the picture have them all.
 */
export function drawnGroups({ marks }: PictureView, fit: Fit): readonly MarkGroup[] {
  const groups: { row: string; owner: string; parts: SVGElement[] }[] = [];
  const taken: Patch[] = [];
  for (const mark of marks) {
    const parts = partsOf(mark, fit, taken);
    if (parts.length === 0) continue;
    const last = groups.at(-1);
    const group =
      mark.row === ''
        ? last?.row === ''
          ? last
          : undefined
        : groups.find(({ row, owner }) => row === mark.row && owner === mark.owner);
    if (group === undefined) groups.push({ row: mark.row, owner: mark.owner, parts: [...parts] });
    else group.parts.push(...parts);
  }
  return groups;
}

function partsOf(mark: PictureMark, fit: Fit, taken: Patch[]): readonly SVGElement[] {
  if (mark.kind === 'line') return lineParts(mark, fit);
  const size = letters(mark.height, fit);
  const patch = room(mark, fit, size);
  // Of a small part its name is said before its size.
  const yields = (one: Patch): boolean =>
    (mark.role === 'dimension' || (one.row === mark.row && mark.row !== '')) &&
    overlaps(one, patch);
  if (taken.some(yields)) return [];
  taken.push(patch);
  return [textPart(mark, fit, size)];
}
