import type { CellView, RowView } from './views.ts';

// Thousands of small objects cost four times what one string costs to post (JSON both ways), so
// rows travel as text: rows end with RS, cells with GS, fields with US. Cell texts never hold them:
// they are control characters and TOML strings refuse them.
const unit = '\u001f';
const group = '\u001d';
const record = '\u001e';

const looks: readonly CellView['look'][] = [
  'typed',
  'default',
  'computed',
  'blank',
  'error',
  'waiting',
];
const severities: readonly CellView['severity'][] = ['', 'error', 'warning', 'note'];

function packCell(cell: CellView): string {
  const same = cell.typed === cell.shown;
  const flags = [
    looks.indexOf(cell.look),
    cell.formula ? 1 : 0,
    severities.indexOf(cell.severity),
    same ? 1 : 0,
  ].join('');
  return [cell.shown, same ? '' : cell.typed, flags, cell.message].join(unit);
}

function unpackCell(text: string): CellView {
  const [shown = '', typed = '', flags = '', message = ''] = text.split(unit);
  return {
    shown,
    typed: flags[3] === '1' ? shown : typed,
    look: looks[Number(flags[0])] ?? 'blank',
    formula: flags[1] === '1',
    severity: severities[Number(flags[2])] ?? '',
    message,
  };
}

/** Packs rows into one string. */
export function packRows(rows: readonly RowView[]): string {
  return rows
    .map((row) =>
      [
        [
          row.table,
          row.id,
          String(row.occurrence),
          row.kind,
          row.group,
          row.locked ? '1' : '0',
          row.message,
        ].join(unit),
        ...row.cells.map(packCell),
      ].join(group),
    )
    .join(record);
}

/** Reads what `packRows` wrote. */
export function unpackRows(text: string): readonly RowView[] {
  if (text === '') return [];
  return text.split(record).map((line) => {
    const [head = '', ...cells] = line.split(group);
    const [
      table = '',
      id = '',
      occurrence = '0',
      kind = '',
      rowGroup = '',
      locked = '',
      message = '',
    ] = head.split(unit);
    return {
      table,
      id,
      occurrence: Number(occurrence),
      kind,
      group: rowGroup,
      locked: locked === '1',
      message,
      cells: cells.map(unpackCell),
    };
  });
}
