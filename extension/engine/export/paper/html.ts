/** Text as HTML shows it. */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** HTML that is made already; texts become it by being escaped. */
export interface Html {
  readonly html: string;
}

export type Content = string | Html | readonly Content[];

function inner(content: Content): string {
  if (typeof content === 'string') return escaped(content);
  return 'html' in content ? content.html : content.map(inner).join('');
}

type Attributes = Readonly<Record<string, string>>;

/** An element with its attributes and content. */
export function tag(name: string, attributes: Attributes, ...content: readonly Content[]): Html {
  const given = Object.entries(attributes)
    .filter(([, value]) => value !== '')
    .map(([key, value]) => ` ${key}="${escaped(value)}"`)
    .join('');
  return { html: `<${name}${given}>${inner(content)}</${name}>` };
}

/** HTML made elsewhere, such as a drawing's SVG. */
export function made(html: string): Html {
  return { html };
}

/** Nothing. */
export const nothing: Html = { html: '' };

/** A section with its heading; none where it has no content. */
export function section(title: string, ...content: readonly Content[]): Html {
  if (content.every((one) => inner(one) === '')) return nothing;
  return tag('section', {}, tag('h2', {}, title), ...content);
}

/** Lines of a list. */
export function list(lines: readonly Content[]): Html {
  if (lines.length === 0) return nothing;
  return tag('ul', {}, ...lines.map((line) => tag('li', {}, line)));
}

/** How a column of a table stands: `n` is a number, at the right; `c` a box to tick. */
export type ColumnLook = '' | 'n' | 'c' | 'w';

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
