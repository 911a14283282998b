import { parseXml, XmlElement, XmlError } from '@rgrove/parse-xml';
import type { DrawnFile, DrawnLine } from './drawn-file.ts';
import { elementPath } from './svg-elements.ts';
import { svgPage } from './svg-page.ts';
import { pathLines } from './svg-path.ts';

/** Elements whose content is kept for use elsewhere and is not drawn where it stands. */
const undrawn: ReadonlySet<string> = new Set([
  ...['defs', 'clipPath', 'mask', 'marker', 'pattern', 'symbol', 'metadata', 'style', 'script'],
  ...['title', 'desc', 'linearGradient', 'radialGradient', 'filter'],
]);

/** Elements that show something which has no outline here. */
const unreadable: ReadonlySet<string> = new Set(['text', 'image', 'use', 'foreignObject']);

interface Above {
  readonly names: readonly string[];
  /** Transforms of what an element stands in, the innermost first. */
  readonly transforms: readonly string[];
}

function localName({ name }: XmlElement): string {
  return name.slice(name.indexOf(':') + 1);
}

function isHidden({ attributes }: XmlElement): boolean {
  const { style = '' } = attributes;
  return attributes['display'] === 'none' || /display\s*:\s*none/.test(style);
}

/** Names and transforms as they are for what stands in an element. */
function within({ attributes }: XmlElement, above: Above): Above {
  const { id = '', transform, 'inkscape:label': label = '' } = attributes;
  return {
    names: [...[id, label].filter((one) => one !== ''), ...above.names],
    transforms: transform === undefined ? above.transforms : [transform, ...above.transforms],
  };
}

function rootOf(text: string): XmlElement | string {
  try {
    const { root } = parseXml(text, { ignoreUndefinedEntities: true });
    return root === null || localName(root) !== 'svg' ? 'it is no SVG' : root;
  } catch (error) {
    if (error instanceof XmlError) return error.message.split('\n')[0] ?? 'it is no XML';
    throw error;
  }
}

/**
 * Reads the lines of an SVG drawing: paths and plain shapes in groups, with their transforms. Up is up:
 * y runs from the lower edge of the page.
 *
 * @returns the reason in words where the text is no SVG
 */
export function readSvg(text: string): DrawnFile | string {
  const root = rootOf(text);
  if (typeof root === 'string') return root;
  const page = svgPage(root.attributes);
  const lines: DrawnLine[] = [];
  const unread = new Set<string>();
  const faults: string[] = [];

  function visit(element: XmlElement, above: Above): void {
    const name = localName(element);
    if (undrawn.has(name) || isHidden(element)) return;
    if (unreadable.has(name)) unread.add(name);
    const here = within(element, above);
    const drawn = elementPath(name, element.attributes);
    const read = drawn === undefined ? [] : pathLines(drawn, here, page);
    if (typeof read === 'string') faults.push(read);
    else lines.push(...read);
    for (const child of element.children) if (child instanceof XmlElement) visit(child, here);
  }

  visit(root, { names: [], transforms: [] });
  if (faults[0] !== undefined) return faults[0];
  return { unit: page.unit, lines, unread: [...unread], nameWord: 'id' };
}
