import type {
  CellView,
  ChoiceOption,
  ColumnView,
  RowView,
} from '../../../extension/protocol/views.ts';

/** A small stand-in for the job behind the page: texts in, views out, no arithmetic of the trade. */
export interface FakeRow {
  readonly table: string;
  readonly id: string;
  readonly kind: string;
  readonly group: string;
  readonly locked: boolean;
  readonly message: string;
  readonly cells: Readonly<Record<string, string>>;
}

function column(key: string, label: string, more: Partial<ColumnView> = {}): ColumnView {
  return {
    key,
    label,
    help: `What ${label} means.`,
    editor: 'text',
    align: 'start',
    width: 120,
    ...more,
  };
}

export const partColumns: readonly ColumnView[] = [
  column('name', 'Name', { width: 210 }),
  column('kind', 'Kind', { editor: 'choice', width: 110 }),
  column('on', 'On', { editor: 'link', width: 100 }),
  column('material', 'Material', { editor: 'link', width: 170 }),
  column('words', 'Main size', { editor: 'none', width: 170 }),
  column('tilt', 'Tilt', { align: 'end', width: 80 }),
  column('depth', 'Depth', { align: 'end', width: 90 }),
  column('use', 'Use', { align: 'end', width: 90 }),
  column('qty', 'Qty', { align: 'end', width: 60 }),
  column('need', 'Need', { editor: 'none', align: 'end', width: 90 }),
  column('charge', 'Charge', { editor: 'none', align: 'end', width: 90 }),
];

export const columnsOf: Readonly<Record<string, readonly ColumnView[]>> = {
  part: partColumns,
  driver: [
    column('name', 'Name', { width: 240 }),
    column('frame', 'Frame', { align: 'end' }),
    column('depth', 'Depth', { align: 'end' }),
  ],
  measure: [column('name', 'Name', { width: 320 }), column('value', 'Value', { align: 'end' })],
  panel: [column('name', 'Name', { width: 240 }), column('hands', 'Hands', { editor: 'choice' })],
};

interface Kind {
  readonly id: string;
  readonly name: string;
  readonly group: string;
  readonly size: string;
}

export const groups = [
  { group: 'structure', label: 'Structure' },
  { group: 'skin', label: 'Skin' },
  { group: 'finish', label: 'Finish' },
];

export const kinds: readonly [Kind, ...Kind[]] = [
  { id: 'base', name: 'Base', group: 'structure', size: '24 in × 15 in' },
  { id: 'ring', name: 'Ring', group: 'structure', size: '8 in, 2 5/8 in deep' },
  { id: 'baffle', name: 'Baffle', group: 'structure', size: '7 in' },
  { id: 'shim', name: 'Shim', group: 'structure', size: '1/4 in' },
  { id: 'skin', name: 'Skin', group: 'skin', size: '5.1 sq ft' },
  { id: 'resin', name: 'Resin', group: 'skin', size: '24 fl oz' },
  { id: 'mat', name: 'Glass mat', group: 'skin', size: '1.5 oz/sq ft' },
  { id: 'filler', name: 'Filler', group: 'finish', size: '2 coats' },
  { id: 'vinyl', name: 'Vinyl', group: 'finish', size: '30 in × 22 in' },
  { id: 'grille', name: 'Grille', group: 'finish', size: '6 7/8 in' },
];

export const kindOptions = kinds.map(({ id, name, group }) => ({
  value: id,
  label: name,
  detail: group,
}));

export const materialOptions: readonly [ChoiceOption, ...ChoiceOption[]] = [
  { value: 'panelboard_3', label: 'Panel board, 3 mm', detail: 'sheet · 4 × 8 ft' },
  { value: 'mdf_12', label: 'MDF, 12 mm', detail: 'sheet · 4 × 8 ft' },
  { value: 'polyester', label: 'Polyester resin, laminating', detail: 'liquid · quart, gallon' },
  { value: 'fleece', label: 'Stretch fleece', detail: 'roll · 60 in' },
  { value: 'vinyl_black', label: 'Marine vinyl, black', detail: 'roll · 54 in' },
];

const longName =
  'Midbass ring, second try after the window regulator turned out to sit a good inch further inboard than drawn';

function partCells(index: number, kind: (typeof kinds)[number]): Record<string, string> {
  const material = materialOptions[index % materialOptions.length] ?? materialOptions[0];
  const ring = {
    tilt: '15 deg',
    depth: '=ROUNDUPTO(RING.DEPTH(driver.depth, job.cavity, 1/4in, tilt), 1/8in)',
  };
  return {
    name: index === 3 ? longName : `${kind.name} ${String(index)}`,
    kind: kind.id,
    on: index === 0 ? '' : 'base',
    material: material.value,
    qty: index % 4 === 0 ? '2' : '',
    ...(kind.id === 'ring' && ring),
    ...(index % 13 === 5 && { use: '=base.area + length' }),
  };
}

function partRow(index: number): FakeRow {
  const kind = kinds[index % kinds.length] ?? kinds[0];
  const locked = index === 11;
  return {
    table: 'part',
    id: index === 0 ? 'base' : `${kind.id}_${String(index)}`,
    kind: kind.id,
    group: kind.group,
    locked,
    message: locked ? 'Line 96 is not closed: a quotation mark is missing.' : '',
    cells: partCells(index, kind),
  };
}

/** `count` parts in their groups, with a driver, measures and a panel. */
export function fakeRows(count: number): readonly FakeRow[] {
  const parts = Array.from({ length: count }, (_, index) => partRow(index));
  const other = (table: string, id: string, cells: Readonly<Record<string, string>>): FakeRow => ({
    table,
    id,
    kind: '',
    group: '',
    locked: false,
    message: '',
    cells,
  });
  return [
    ...groups.flatMap(({ group }) => parts.filter((part) => part.group === group)),
    other('driver', 'mid', {
      name: 'Midbass, 6 1/2 in nominal',
      frame: '6 5/8 in',
      depth: '2 3/4 in',
    }),
    other('measure', 'cavity', {
      name: 'Base plane to window track, glass down',
      value: '2 1/2 in',
    }),
    other('measure', 'dash_room', {
      name: 'Door shut: base plane to the dash end',
      value: '3 3/8 in',
    }),
    other('panel', 'door', { name: 'Front door', hands: 'pair' }),
  ];
}

const blank: CellView = {
  shown: '',
  typed: '',
  look: 'blank',
  formula: false,
  message: '',
  severity: '',
};

function partCell(row: FakeRow, key: string): CellView | undefined {
  const kind = kinds.find((one) => one.id === row.kind);
  const qty = Number(row.cells['qty'] ?? '') || 1;
  switch (key) {
    case 'words':
      return { ...blank, shown: kind?.size ?? '', look: 'computed' };
    case 'need':
      return { ...blank, shown: `${String(qty * 3)} sq ft`, look: 'computed' };
    case 'charge':
      return { ...blank, shown: `$${(qty * 4.35).toFixed(2)}`, look: 'computed' };
    default:
      return undefined;
  }
}

export const nameOf = new Map(
  [...kindOptions, ...materialOptions].map(({ value, label }) => [value, label]),
);

/** The view of one cell. Tilt and quantity are the only figures that anything hangs on. */
export function cellOf(row: FakeRow, key: string): CellView {
  const computed = row.table === 'part' ? partCell(row, key) : undefined;
  if (computed !== undefined) return computed;
  const typed = row.cells[key] ?? '';
  return typed === '' ? defaultCell(row, key) : typedCell(row, typed);
}

function defaultCell(row: FakeRow, key: string): CellView {
  const fallback = row.table === 'part' ? { depth: '5/8 in', qty: '1' }[key] : undefined;
  return fallback === undefined ? blank : { ...blank, shown: fallback, look: 'default' };
}

function typedCell(row: FakeRow, typed: string): CellView {
  if (typed.includes('area + length'))
    return {
      shown: 'no answer',
      typed,
      look: 'error',
      formula: true,
      message: 'area + length: 2.6 sq ft and 24 in cannot be added.',
      severity: 'error',
    };
  if (typed.startsWith('=')) {
    const shown = `${row.cells['tilt'] ?? '0 deg'} → 2 5/8 in`;
    return { ...blank, shown, typed, look: 'typed', formula: true };
  }
  return { ...blank, shown: nameOf.get(typed) ?? typed, typed, look: 'typed' };
}

export function rowView(row: FakeRow): RowView {
  const { table, id, kind, group, locked, message } = row;
  const cells = (columnsOf[table] ?? []).map((one) => cellOf(row, one.key));
  return { table, id, occurrence: 0, kind, group, locked, message, cells };
}
