import type { RowNeed } from '../../estimate/bill.ts';
import { baseIn, nameOf, wordIn } from '../../estimate/cells.ts';
import { lengthText, sizeText } from '../../estimate/amount.ts';
import { panelCount, panelOf } from '../../estimate/panels.ts';
import { clockText, dayAt, dayText, minutesAt } from '../../estimate/schedule/calendar.ts';
import { laySchedule } from '../../estimate/schedule/lay-schedule.ts';
import { scheduleDrawing } from '../../estimate/schedule/schedule-drawing.ts';
import type { Shape } from '../../geometry/shape.ts';
import { angle, length, time, type Dimension } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import {
  list,
  nothing,
  pictured,
  section,
  table,
  tag,
  tickBox,
  type Content,
  type Html,
} from './html.ts';
import {
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';

function shownIn(
  row: AnsweredRow,
  column: string,
  of: { readonly ground: PaperGround; readonly dimension: Dimension },
): string {
  const base = baseIn(row, column, of.dimension);
  if (base === undefined) return '';
  return showQuantity({ base, dimension: of.dimension }, of.ground.settings).text;
}

/** Left and right pieces of a row: `1 left, 1 right`, `2`. */
function handsText(row: AnsweredRow, pieces: number, { workbook }: PaperGround): string {
  const { panel } = panelOf(row, workbook);
  if (panel === undefined || wordIn(row, 'per') === 'job') return String(pieces);
  const { left, right, alike } = panelCount(panel);
  const hand = wordIn(row, 'hand');
  const count = (panels: number): string => String(Math.round(panels * pieces * 1000) / 1000);
  if (alike > 0) return count(alike);
  const sides = [
    ...(left > 0 && hand !== 'right' ? [`${count(left)} left`] : []),
    ...(right > 0 && hand !== 'left' ? [`${count(right)} right`] : []),
  ];
  return sides.join(', ');
}

/** An outline in words: `8 in across`, `26 in × 15 in, corners 2 in`; free ones come as patterns. */
function outlineWords(shape: Shape, { settings }: PaperGround): string {
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

function outlineText(row: AnsweredRow, ground: PaperGround): string {
  const { result } = row.cell('shape');
  if (result.state !== 'value' || result.value.kind !== 'shape') return '';
  return outlineWords(result.value.shape, ground);
}

function cutSize(need: RowNeed, { settings }: PaperGround): string {
  if (need.blank !== undefined) return sizeText(need.blank, settings);
  const strip = !need.use.count && need.use.dimension.length === 1;
  return strip ? lengthText(need.use.base, settings) : '';
}

/** Everything that is cut, material after material. */
function cutList(ground: PaperGround): Html {
  const { bill, workbook } = ground;
  const rows = bill.lines.flatMap((line): readonly (readonly Content[])[] => {
    const cut = line.rows.flatMap((need): readonly (readonly Content[])[] => {
      const size = cutSize(need, ground);
      const row = workbook.row(need.table, need.row);
      if (size === '' || row === undefined) return [];
      const what = need.draw === '' ? nameOf(row) : `${nameOf(row)} (${need.draw})`;
      return [[tickBox, what, handsText(row, need.pieces, ground), size, outlineText(row, ground)]];
    });
    return cut.length === 0 ? [] : [[line.name], ...cut];
  });
  return section(
    'Cut list',
    table(['', 'Piece', 'How many', 'Blank', 'Outline'], ['c', '', 'w', 'w', ''], rows),
  );
}

const openings = ['hole', 'wiring_hole'];

function holes(ground: PaperGround): Html {
  const { workbook } = ground;
  const rows = workbook
    .rows('part')
    .filter(({ kind, broken }) => !broken && openings.includes(kind))
    .map((row): readonly Content[] => {
      const ground_ = workbook.row('part', wordIn(row, 'on'));
      const size = outlineText(row, ground) || shownIn(row, 'size', { ground, dimension: length });
      const place = ['at_x', 'at_y'].map((key) => shownIn(row, key, { ground, dimension: length }));
      return [
        nameOf(row),
        ground_ === undefined ? '' : nameOf(ground_),
        size,
        place.filter((text) => text !== '').join(', '),
      ];
    });
  const cuts = workbook
    .rows('part')
    .filter(({ kind, broken }) => !broken && kind === 'baffle')
    .flatMap((row): readonly (readonly Content[])[] => {
      const driver = workbook.row('driver', wordIn(row, 'driver'));
      if (driver === undefined) return [];
      const cutout = shownIn(driver, 'cutout', { ground, dimension: length });
      return [[`Cut-out for ${nameOf(driver)}`, nameOf(row), cutout, 'centre of the baffle']];
    });
  return section(
    'Holes and cut-outs',
    table(
      ['Hole', 'In', 'Size', 'Centre (to the rear, up)'],
      ['', '', 'w', ''],
      [...rows, ...cuts],
    ),
  );
}

const rings = ['ring', 'tube_ring', 'stacked_ring'];

function ringTable(ground: PaperGround): Html {
  const rows = ground.workbook
    .rows('part')
    .filter(({ kind, broken }) => !broken && rings.includes(kind))
    .map((row): readonly Content[] => {
      const inches = (column: string): string =>
        shownIn(row, column, { ground, dimension: length });
      const lean = ['tilt', 'turn'].map((column) =>
        shownIn(row, column, { ground, dimension: angle }),
      );
      return [
        nameOf(row),
        handsText(row, baseIn(row, 'qty', { ...length, length: 0 }) ?? 1, ground),
        inches('size'),
        inches('depth'),
        inches('low'),
        inches('high'),
        lean.filter((text) => text !== '').join(', to '),
      ];
    });
  return section(
    'Rings',
    rows.length === 0
      ? nothing
      : tag(
          'p',
          { class: 'small' },
          'Depth is from the back of the base to the driver’s seat at the centre; low and high are the sides of the wall over the base. Right-hand rings are mirror images of left-hand ones.',
        ),
    table(
      ['Ring', 'How many', 'Outside', 'Depth', 'Low', 'High', 'Lean'],
      ['', 'w', 'w', 'w', 'w', 'w', ''],
      rows,
    ),
  );
}

function shims(ground: PaperGround): Html {
  const lines = ground.workbook
    .rows('part')
    .filter(({ kind, broken }) => !broken && kind === 'shim')
    .map((row) => {
      const each = shownIn(row, 'use', { ground, dimension: length });
      return `${nameOf(row)}: ${each} on average; the low side takes the shortest, the high side the longest.`;
    });
  return section('Shims', list(lines));
}

/** Steps and tools by kind of part, in the order of the sheet. */
function steps(ground: PaperGround): readonly Html[] {
  const { workbook, book } = ground;
  const kinds = [...new Set(workbook.rows('part').map(({ kind }) => kind))];
  const known = kinds.flatMap((id) => book.kinds.get(id) ?? []);
  const tools = [...new Set(known.flatMap((kind) => kind.tools))].sort();
  const told = known
    .filter((kind) => kind.steps.length > 0)
    .map((kind) => tag('div', { class: 'avoid' }, tag('h3', {}, kind.name), list(kind.steps)));
  return [
    section(
      'Tools to set out',
      tools.length === 0 ? nothing : tag('p', {}, `${tools.join(', ')}.`),
    ),
    section('How it is made', told),
  ];
}

function schedule(ground: PaperGround): Html {
  const found = laySchedule(ground);
  if (!found.ok) return nothing;
  const { laid, notes } = found.schedule;
  const rows = laid.map((one): readonly Content[] => [
    tickBox,
    one.notes.length === 0
      ? one.task.name
      : [one.task.name, tag('div', { class: 'small' }, one.notes.join(' '))],
    showQuantity({ base: Math.round(one.task.elapsed), dimension: time }, ground.settings).text,
    `${dayText(dayAt(one.from))} ${clockText(minutesAt(one.from))}`,
    `${dayText(dayAt(one.to))} ${clockText(minutesAt(one.to))}`,
  ]);
  return section(
    'Order of work',
    tag('figure', {}, pictured(scheduleDrawing(found.schedule))),
    table(['', 'Task', 'Takes', 'From', 'To'], ['c', '', 'n', 'w', 'w'], rows),
    tag('p', { class: 'small' }, notes.join(' ')),
  );
}

/** The shop sheet: what is cut, drilled, bent and shimmed, the order of work, steps and tools. */
export function shopSheetPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  return paperContent(
    'Shop sheet',
    { ground, source, facts: usualFacts(ground) },
    schedule(ground),
    cutList(ground),
    ringTable(ground),
    holes(ground),
    shims(ground),
    ...steps(ground),
  );
}
