import {
  minutesText,
  moneyChangeText,
  moneyOrDash,
  signedText,
  type ComparedCell,
  type ComparedJobs,
  type ComparedRow,
  type UnitSettings,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';

const settings: UnitSettings = { units: 'in', currency: 'USD' };

function timeText(minutes: number): string {
  return minutesText(minutes, settings);
}

function timeChange(minutes: number): string {
  if (minutes === 0) return '';
  return signedText(minutes, timeText(Math.abs(minutes)));
}

/** Texts of the file, but for one that a person would not know as a change. */
function cellLine(cell: ComparedCell, currency: string): TableLine {
  const told = (shown: string, text: string | undefined): string =>
    text === undefined ? '(blank)' : text.startsWith('=') ? `${text} (${shown})` : text;
  const own = cell.own === undefined || cell.own === 0 ? '' : moneyChangeText(cell.own, currency);
  return [
    `    ${cell.label}`,
    `${told(cell.shownBefore, cell.before)} → ${told(cell.shownAfter, cell.after)}`,
    own,
  ];
}

const signs = { added: '+', removed: '-', kept: '~' } as const;

function rowHead(row: ComparedRow): string {
  const marks = [
    row.formerId === undefined ? '' : `was ${row.formerId}`,
    row.moved ? 'moved' : '',
    row.broken ? 'cannot be read in full' : '',
  ].filter((mark) => mark !== '');
  const tail = marks.length === 0 ? '' : ` (${marks.join(', ')})`;
  return (
    `  ${signs[row.kind]} ${row.table} ${row.id}  ${row.name === row.id ? '' : row.name}`.trimEnd() +
    tail
  );
}

function rowEffect({ before, after }: ComparedRow, currencies: ComparedJobs['currencies']): string {
  const parts = [
    before.need === after.need
      ? ''
      : `needs ${before.need ?? 'nothing'} → ${after.need ?? 'nothing'}`,
    before.minutes === after.minutes
      ? ''
      : `takes ${timeText(before.minutes ?? 0)} → ${timeText(after.minutes ?? 0)}`,
    before.charge === after.charge
      ? ''
      : `costs ${moneyOrDash(before.charge, currencies.before)} → ${moneyOrDash(after.charge, currencies.after)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `      ${parts.join('; ')}`;
}

function rowLines(row: ComparedRow, { currencies }: ComparedJobs): readonly TableLine[] {
  const effect = rowEffect(row, currencies);
  const own =
    row.own === undefined || row.own === 0
      ? ''
      : `      alone: ${moneyChangeText(row.own, currencies.before)}`;
  const cells =
    row.kind === 'kept' ? row.cells.map((cell) => cellLine(cell, currencies.before)) : [];
  return [rowHead(row), ...cells, ...[effect, own].filter((line) => line !== '')];
}

function figureLines({ figures, currencies }: ComparedJobs): readonly TableLine[] {
  const same = currencies.before === currencies.after;
  return figures.map(({ label, measure, before, after }) => {
    if (measure === 'time')
      return [`  ${label}`, timeText(before), timeText(after), timeChange(after - before)];
    const change =
      same && after !== before ? moneyChangeText(after - before, currencies.after) : '';
    const [was, now] = [
      moneyOrDash(before, currencies.before),
      moneyOrDash(after, currencies.after),
    ];
    return [`  ${label}`, was, now, change];
  });
}

function materialLines({ materials, currencies }: ComparedJobs): readonly TableLine[] {
  return materials.map(({ name, need, charge }) => [
    `  ${name}`,
    `${need.before ?? '—'} → ${need.after ?? '—'}`,
    `${moneyOrDash(charge.before, currencies.before)} → ${moneyOrDash(charge.after, currencies.after)}`,
  ]);
}

function part(title: string, lines: readonly TableLine[], ends: readonly number[] = []): string {
  return lines.length === 0 ? '' : `\n${title}\n${inColumns(lines, ends)}`;
}

/** What differs between two versions and what it came to, to be read. */
export function diffReport(found: ComparedJobs, notes: readonly string[]): string {
  const told = notes.map((note) => `${note}\n`).join('');
  if (found.same) return `No cell differs.\n${told}`;
  const { currencies } = found;
  return [
    told,
    part(
      'Settings',
      found.settings.map((cell) => cellLine(cell, currencies.before)),
    ),
    part(
      'Rows',
      found.rows.flatMap((row) => rowLines(row, found)),
    ),
    part(
      'What follows',
      found.followers.map((row) => `  ${row.name}: ${rowEffect(row, currencies).trim()}`),
    ),
    part('Materials', materialLines(found)),
    part('Altogether', [['', 'Before', 'After', 'Change'], ...figureLines(found)], [1, 2, 3]),
  ]
    .join('')
    .replace(/^\n/, '');
}
