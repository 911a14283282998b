import { clockText, dayAt, dayText, minutesAt } from '../../estimate/schedule/calendar.ts';
import { laySchedule } from '../../estimate/schedule/lay-schedule.ts';
import type { Laid } from '../../estimate/schedule/schedule.ts';
import { schedulePaperDrawings } from '../../estimate/schedule/schedule-drawing.ts';
import { minutesText } from '../../units/minutes-text.ts';
import { bearingTable } from './bearings.ts';
import { benchCautions, dangersNamed, papersFirst } from './bench-cautions.ts';
import { cutList } from './cut-list.ts';
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
import { openingTable, ringTable, shimList } from './ring-tables.ts';
import { panelNameOf } from './sides.ts';

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
      tools.length === 0 ? nothing : tag('p', {}, `${tools.join('; ')}.`),
    ),
    section('How it is made', told),
  ];
}

/** What to mind before the first tool is picked up; the limits stand on the safety sheet. */
function cautions(ground: PaperGround): Html {
  const told = benchCautions(ground);
  if (told.length === 0) return nothing;
  const dangers = dangersNamed(ground);
  const more = ` Dangers of this job: ${dangers.join('; ')}. The safety sheet quotes the limits.`;
  return section(
    'Cautions',
    tag('p', { class: 'small lead' }, papersFirst, dangers.length === 0 ? '' : more),
    list(told),
  );
}

function taskCell(laid: Laid, ground: PaperGround): Content {
  const row = ground.workbook.row('task', laid.task.id);
  const panel = row === undefined ? '' : panelNameOf(row, ground);
  const below = [panel === '' ? '' : `${panel}.`, ...laid.notes].filter((text) => text !== '');
  const { name } = laid.task;
  return below.length === 0 ? name : [name, tag('div', { class: 'small' }, below.join(' '))];
}

function momentText(moment: number): string {
  return `${dayText(dayAt(moment))} ${clockText(minutesAt(moment))}`;
}

function schedule(ground: PaperGround): Html {
  const found = laySchedule(ground);
  if (!found.ok) return nothing;
  const { laid, notes } = found.schedule;
  const rows = laid.map((one): readonly Content[] => [
    tickBox,
    taskCell(one, ground),
    minutesText(Math.round(one.task.elapsed), ground.settings),
    momentText(one.from),
    momentText(one.to),
  ]);
  const drawings = schedulePaperDrawings(found.schedule);
  return section(
    'Order of work',
    drawings.map((drawing) => tag('figure', {}, pictured(drawing))),
    table(['', 'Task', 'Takes', 'From', 'To'], ['c', '', 'n', 'w', 'w'], rows),
    tag('p', { class: 'small' }, notes.join(' ')),
  );
}

/** The shop sheet: what is cut, routed, drilled, bent and shimmed, the order of work, cautions, steps and tools. */
export function shopSheetPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  return paperContent(
    'Shop sheet',
    { ground, source, facts: usualFacts(ground) },
    schedule(ground),
    cutList(ground),
    bearingTable(ground),
    ringTable(ground),
    openingTable(ground),
    shimList(ground),
    cautions(ground),
    ...steps(ground),
  );
}
