import type { Drawing } from '../../drawing/drawing.ts';
import { drawingSvg } from '../drawing-svg.ts';
import { escaped } from '../escaped.ts';

type Attributes = Readonly<Record<string, string>>;

/** A part of a paper: what it is, and what stands in it. HTML and PDF are both written from these. */
export interface Html {
  /** Name of the element; empty for parts that only stand beside each other. */
  readonly name: string;
  readonly attributes: Attributes;
  readonly content: readonly Content[];
  readonly drawing?: Drawing;
}

export type Content = string | Html | readonly Content[];

/** An element with its attributes and content. */
export function tag(name: string, attributes: Attributes, ...content: readonly Content[]): Html {
  return { name, attributes, content };
}

/** A drawing as wide as the paper. */
export function pictured(drawing: Drawing): Html {
  return { ...tag('svg', {}), drawing };
}

/** Nothing. */
export const nothing: Html = { name: '', attributes: {}, content: [] };

function isMany(content: Content): content is readonly Content[] {
  return Array.isArray(content);
}

/** Content without the lists that it was put together from. */
export function flatContent(content: readonly Content[]): readonly (string | Html)[] {
  return content.flatMap((one): readonly (string | Html)[] => {
    if (typeof one === 'string') return [one];
    if (isMany(one)) return flatContent(one);
    return one.name === '' ? flatContent(one.content) : [one];
  });
}

function isEmpty(content: readonly Content[]): boolean {
  return flatContent(content).every((one) => one === '');
}

/** Content as HTML writes it. */
export function htmlText(content: Content): string {
  return flatContent([content]).map(oneText).join('');
}

function oneText(one: string | Html): string {
  if (typeof one === 'string') return escaped(one);
  if (one.drawing !== undefined) return drawingSvg(one.drawing).replace(/^<\?xml[^>]*\?>\n/, '');
  const given = Object.entries(one.attributes)
    .filter(([, value]) => value !== '')
    .map(([key, value]) => ` ${key}="${escaped(value)}"`)
    .join('');
  return `<${one.name}${given}>${htmlText(one.content)}</${one.name}>`;
}

/** A section with its heading; none where it has no content. */
export function section(title: string, ...content: readonly Content[]): Html {
  if (isEmpty(content)) return nothing;
  return tag('section', {}, tag('h2', {}, title), ...content);
}

/** Lines of a list. */
export function list(lines: readonly Content[]): Html {
  if (lines.length === 0) return nothing;
  return tag('ul', {}, ...lines.map((line) => tag('li', {}, line)));
}

/**
 * How a column of a table stands: `n` is a number, at the right; `c` a box to tick; `w` is never broken;
 * `s` holds a few words, broken between them. The rest holds names, which may be of any length.
 */
export type ColumnLook = '' | 'n' | 'c' | 'w' | 's';

/** A table with its head; a row of one cell goes across. */
export function table(
  head: readonly string[],
  looks: readonly ColumnLook[],
  rows: readonly (readonly Content[])[],
): Html {
  if (rows.length === 0) return nothing;
  const cells = (row: readonly Content[]): readonly Html[] =>
    row.length === 1
      ? [tag('th', { colspan: String(head.length), scope: 'rowgroup' }, row)]
      : row.map((cell, index) => tag('td', { class: looks[index] ?? '' }, cell));
  return tag(
    'table',
    {},
    tag(
      'thead',
      {},
      tag(
        'tr',
        {},
        ...head.map((text, index) => tag('th', { scope: 'col', class: looks[index] ?? '' }, text)),
      ),
    ),
    tag(
      'tbody',
      {},
      ...rows.map((row) => tag('tr', row.length === 1 ? { class: 'group' } : {}, ...cells(row))),
    ),
  );
}

/** A box to tick by hand. */
export const tickBox: Html = tag('span', { class: 'box' }, '');

/** A line to write on. */
export function blankLine(label: string, width = ''): Html {
  return tag('span', { class: `blank ${width}`.trim() }, tag('span', { class: 'label' }, label));
}
