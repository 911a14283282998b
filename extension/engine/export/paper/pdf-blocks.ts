import type { Drawing } from '../../drawing/drawing.ts';
import { pointsPerMm } from '../pdf-objects.ts';
import { flatContent, type Content, type Html } from './html.ts';
import { blankBlocks, isBlank } from './pdf-blanks.ts';
import { elementIn, framePadding, heightOf, stacked, type Block } from './pdf-flow.ts';
import { scaled, type Place } from './pdf-place.ts';
import { tableBlocks } from './pdf-table.ts';
import { classesOf, runsOf, wrapped, type Face } from './pdf-text.ts';

const body: Face = { font: 'F1', size: 10 };

/** How much larger the letters of a card for the bench are. */
const cardScale = 1.2;

interface TextLook {
  readonly type: string;
  readonly face: Face;
  readonly before: number;
  readonly keep?: boolean;
  /** A line below it. */
  readonly ruled?: boolean;
}

const looks: Readonly<Record<string, TextLook>> = {
  h1: { type: 'H1', face: { font: 'F2', size: 18 }, before: 2, keep: true },
  h2: { type: 'H2', face: { font: 'F2', size: 12 }, before: 16, keep: true, ruled: true },
  h3: { type: 'H3', face: { font: 'F2', size: 10.5 }, before: 9, keep: true },
  p: { type: 'P', face: body, before: 5 },
};

const classFaces: Readonly<Record<string, Partial<TextLook>>> = {
  kind: { face: { font: 'F2', size: 9.5 } },
  small: { face: { font: 'F1', size: 8.5 } },
  lead: { keep: true },
  what: { face: { font: 'F2', size: 9.5 }, before: 0 },
  much: { face: { font: 'F2', size: 27 }, before: 0 },
  also: { face: { font: 'F1', size: 10.5 }, before: 0 },
  warn: { face: { font: 'F2', size: 10 } },
};

function lookOf(part: Html): TextLook {
  const base = looks[part.name] ?? { type: 'P', face: body, before: 5 };
  return classesOf(part).reduce<TextLook>((look, one) => ({ ...look, ...classFaces[one] }), base);
}

function textBlock(content: readonly Content[], look: TextLook, place: Place): Block {
  const { x, width, parent } = place;
  const face = scaled(look.face, place);
  const lines = wrapped(runsOf(content, face), width, face);
  const element = elementIn(parent, look.type);
  const under = look.ruled === true ? 5 : 0;
  const height = heightOf(lines) + under;
  return {
    height,
    before: look.before,
    keep: look.keep === true,
    draw: (pen, y) => {
      pen.marked(element, () => {
        pen.lines(lines, { x, y });
      });
      if (under > 0) pen.rule(x, x + width, y + height - 1, { width: 1, grey: 0 });
    },
  };
}

function listBlocks(part: Html, place: Place): readonly Block[] {
  const list = elementIn(place.parent, 'L');
  return flatContent(part.content).flatMap((item): readonly Block[] => {
    if (typeof item === 'string') return [];
    const parent = elementIn(list, 'LI');
    const inner = { x: place.x + 12, width: place.width - 12, parent };
    const text = textBlock(item.content, { type: 'LBody', face: body, before: 2 }, inner);
    const bullet = wrapped([{ ...body, text: '•' }], 12, body);
    return [
      {
        ...text,
        draw: (pen, y) => {
          pen.unread(() => {
            pen.lines(bullet, { x: place.x + 2, y });
          });
          text.draw(pen, y);
        },
      },
    ];
  });
}

const factColumns = 3;

/** Labels with what they say, three beside each other. */
function factBlocks(part: Html, place: Place): readonly Block[] {
  const gap = 12;
  const width = (place.width - gap * (factColumns - 1)) / factColumns;
  const pairs = flatContent(part.content).filter((one): one is Html => typeof one !== 'string');
  const rows = Array.from({ length: Math.ceil(pairs.length / factColumns) }, (_, row) =>
    pairs.slice(row * factColumns, (row + 1) * factColumns),
  );
  return rows.map((row) => {
    const cells = row.map((pair, index) => {
      const [label, value] = flatContent(pair.content);
      const name = typeof label === 'string' ? [label] : (label?.content ?? []);
      const words: readonly Content[] = [...name, ': ', value ?? ''];
      const at = { ...place, x: place.x + index * (width + gap), width };
      return textBlock(words, { type: 'P', face: { font: 'F1', size: 9.5 }, before: 0 }, at);
    });
    return beside(cells, 3);
  });
}

/** Blocks beside each other. */
function beside(cells: readonly Block[], before: number): Block {
  return {
    height: Math.max(0, ...cells.map(({ height }) => height)),
    before,
    draw: (pen, y) => {
      for (const cell of cells) cell.draw(pen, y);
    },
  };
}

/** The two amounts of a mix card, each in a box of its own. */
function amountBlocks(part: Html, place: Place): readonly Block[] {
  const cells = flatContent(part.content).filter((one): one is Html => typeof one !== 'string');
  const gap = 10;
  const width = (place.width - gap * (cells.length - 1)) / Math.max(1, cells.length);
  const made = cells.map((cell, index) => {
    const x = place.x + index * (width + gap);
    const inner = { ...place, x: x + framePadding, width: width - 2 * framePadding };
    return { x, block: stacked(blocksOf(cell.content, inner), { before: 0, frame: { x, width } }) };
  });
  const height = Math.max(0, ...made.map(({ block }) => block.height));
  return [
    {
      height,
      before: 6,
      draw: (pen, y) => {
        for (const { block } of made) block.draw(pen, y);
      },
    },
  ];
}

/** A picture leaves room for the head of the paper and its own heading. */
const mostPicture = 175 * pointsPerMm;

function pictureBlock(drawing: Drawing, { x, width, parent }: Place): Block {
  const { left, right, bottom, top } = drawing.box;
  const scale = Math.min(
    width / pointsPerMm / Math.max(1, right - left),
    mostPicture / pointsPerMm / Math.max(1, top - bottom),
  );
  const figure = elementIn(parent, 'Figure');
  return {
    height: (top - bottom) * scale * pointsPerMm,
    before: 6,
    draw: (pen, y) => {
      pen.marked(figure, () => {
        pen.drawing(drawing, x, y, scale);
      });
    },
  };
}

function framed(part: Html, place: Place): readonly Block[] {
  const large = classesOf(part).includes('card') ? { scale: cardScale } : {};
  const inner = {
    ...place,
    ...large,
    x: place.x + framePadding,
    width: place.width - 2 * framePadding,
  };
  const content =
    part.name === 'p'
      ? [textBlock(part.content, { ...lookOf(part), before: 0 }, inner)]
      : blocksOf(part.content, inner);
  return [stacked(content, { before: 10, frame: { x: place.x, width: place.width } })];
}

function headerBlocks(part: Html, place: Place): readonly Block[] {
  const content = blocksOf(part.content, place);
  const end: Block = {
    height: 4,
    before: 4,
    draw: (pen, y) => {
      pen.rule(place.x, place.x + place.width, y + 2, { width: 2, grey: 0 });
    },
  };
  return [...content, end];
}

type Maker = (part: Html, place: Place) => readonly Block[];

const byClass: ReadonlyMap<string, Maker> = new Map([
  ['card', framed],
  ['warn', framed],
  ['amounts', amountBlocks],
]);

const byName: ReadonlyMap<string, Maker> = new Map([
  ['table', (part, place) => tableBlocks(part, place)],
  ['ul', listBlocks],
  ['ol', listBlocks],
  ['dl', factBlocks],
  ['header', headerBlocks],
]);

const containers = new Set(['main', 'section', 'div', 'figure', 'article', 'body']);
const inlines: ReadonlySet<string> = new Set(['span', 'strong', 'b', 'em', 'i']);

/** True for a part that holds others than words. */
function holdsBlocks({ name, content }: Html): boolean {
  const inner = flatContent(content);
  const blocks = inner.some((one) => typeof one !== 'string' && !inlines.has(one.name));
  return containers.has(name) && (blocks || inner.some(isBlank));
}

function partBlocks(part: Html, place: Place): readonly Block[] {
  if (part.drawing !== undefined) return [pictureBlock(part.drawing, place)];
  const classes = classesOf(part);
  const maker = classes.flatMap((one) => byClass.get(one) ?? [])[0] ?? byName.get(part.name);
  if (maker !== undefined) return maker(part, place);
  const inner = flatContent(part.content);
  if (inner.length > 0 && inner.every(isBlank)) return blankBlocks(inner, place);
  if (!holdsBlocks(part)) return [textBlock(part.content, lookOf(part), place)];
  const blocks = blocksOf(part.content, place);
  return classes.includes('avoid') ? [stacked(blocks, { before: blocks[0]?.before ?? 0 })] : blocks;
}

/** Content of a paper as blocks below each other; lines to write on stand beside each other. */
export function blocksOf(content: readonly Content[], place: Place): readonly Block[] {
  const blocks: Block[] = [];
  let blanks: Html[] = [];
  const flush = (): void => {
    if (blanks.length > 0) blocks.push(...blankBlocks(blanks, place));
    blanks = [];
  };
  for (const part of flatContent(content)) {
    if (isBlank(part)) {
      blanks.push(part);
      continue;
    }
    flush();
    if (typeof part !== 'string') blocks.push(...partBlocks(part, place));
    else if (part.trim() !== '')
      blocks.push(textBlock([part], { type: 'P', face: body, before: 5 }, place));
  }
  flush();
  return blocks;
}
