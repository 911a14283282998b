import type {
  CellView,
  ColumnView,
  JobView,
  ProblemView,
  RowView,
  SheetView,
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

const groups = [
  { group: 'structure', label: 'Structure' },
  { group: 'skin', label: 'Skin' },
  { group: 'finish', label: 'Finish' },
];

const kinds = [
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

export const materialOptions = [
  { value: 'panelboard_3', label: 'Panel board, 3 mm', detail: 'sheet · 4 × 8 ft' },
  { value: 'mdf_12', label: 'MDF, 12 mm', detail: 'sheet · 4 × 8 ft' },
  { value: 'polyester', label: 'Polyester resin, laminating', detail: 'liquid · quart, gallon' },
  { value: 'fleece', label: 'Stretch fleece', detail: 'roll · 60 in' },
  { value: 'vinyl_black', label: 'Marine vinyl, black', detail: 'roll · 54 in' },
];

const longName =
  'Midbass ring, second try after the window regulator turned out to sit a good inch further inboard than drawn';

function partRow(index: number): FakeRow {
  const kind = kinds[index % kinds.length] ?? kinds[0];
  const id = index === 0 ? 'base' : `${kind?.id ?? 'part'}_${String(index)}`;
  const cells: Record<string, string> = {
    name: index === 3 ? longName : `${kind?.name ?? ''} ${String(index)}`,
    kind: kind?.id ?? '',
    on: index === 0 ? '' : 'base',
    material: materialOptions[index % materialOptions.length]?.value ?? '',
    qty: index % 4 === 0 ? '2' : '',
  };
  if (kind?.id === 'ring') {
    cells['tilt'] = '15 deg';
    cells['depth'] = '=ROUNDUPTO(RING.DEPTH(driver.depth, job.cavity, 1/4in, tilt), 1/8in)';
  }
  if (index % 13 === 5) cells['use'] = '=base.area + length';
  return {
    table: 'part',
    id,
    kind: kind?.id ?? '',
    group: kind?.group ?? '',
    locked: index === 11,
    message: index === 11 ? 'Line 96 is not closed: a quotation mark is missing.' : '',
    cells,
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

const nameOf = new Map(
  [...kindOptions, ...materialOptions].map(({ value, label }) => [value, label]),
);

/** The view of one cell. Tilt and quantity are the only figures that anything hangs on. */
export function cellOf(row: FakeRow, key: string): CellView {
  const computed = row.table === 'part' ? partCell(row, key) : undefined;
  if (computed !== undefined) return computed;
  const typed = row.cells[key] ?? '';
  if (typed === '' && row.table === 'part' && (key === 'depth' || key === 'qty'))
    return { ...blank, shown: key === 'qty' ? '1' : '5/8 in', look: 'default' };
  if (typed === '') return blank;
  if (typed.includes('area + length'))
    return {
      shown: 'no answer',
      typed,
      look: 'error',
      formula: true,
      message: 'area + length: 2.6 sq ft and 24 in cannot be added.',
      severity: 'error',
    };
  if (typed.startsWith('='))
    return {
      ...blank,
      shown: `${row.cells['tilt'] ?? '0 deg'} → 2 5/8 in`,
      typed,
      look: 'typed',
      formula: true,
    };
  const shown = nameOf.get(typed) ?? typed;
  if (typed === '1200')
    return {
      ...blank,
      shown,
      typed,
      look: 'typed',
      severity: 'warning',
      message: 'No unit: is it 1200 in or 1200 mm?',
    };
  return { ...blank, shown, typed, look: 'typed' };
}

export function rowView(row: FakeRow): RowView {
  const { table, id, kind, group, locked, message } = row;
  const cells = (columnsOf[table] ?? []).map((one) => cellOf(row, one.key));
  return { table, id, occurrence: 0, kind, group, locked, message, cells };
}

export function sheetView(table: string, rows: readonly FakeRow[]): SheetView {
  const labels: Readonly<Record<string, string>> = {
    part: 'Parts',
    driver: 'Drivers',
    measure: 'Measures',
    panel: 'Panels',
  };
  const own = rows.filter((row) => row.table === table);
  const inGroup = (group: string): number => own.filter((row) => row.group === group).length;
  return {
    table,
    label: labels[table] ?? table,
    columns: columnsOf[table] ?? [],
    groups:
      table === 'part'
        ? groups.map((one) => ({
            ...one,
            totals: `charge $${(inGroup(one.group) * 4.35).toFixed(2)} · buy $${(inGroup(one.group) * 6).toFixed(2)}`,
          }))
        : [],
    order:
      table === 'part'
        ? groups.flatMap(({ group }) =>
            own.filter((row) => row.group === group).map((row) => row.id),
          )
        : own.map((row) => row.id),
    noun: table,
    kinds: table === 'part' ? kinds.map(({ id, name, group }) => ({ id, label: name, group })) : [],
  };
}

export function problemViews(rows: readonly FakeRow[]): readonly ProblemView[] {
  return rows.flatMap((row, index) => {
    const line = index * 9 + 20;
    const { table, id } = row;
    if (row.locked)
      return [
        {
          code: 'broken-block',
          message: row.message,
          severity: 'error' as const,
          table,
          row: id,
          occurrence: 0,
          column: '',
          line,
          fixes: [],
        },
      ];
    return (columnsOf[table] ?? []).flatMap(({ key }) => {
      const cell = cellOf(row, key);
      if (cell.severity === '') return [];
      return [
        {
          code: 'cannot-add',
          message: cell.message,
          severity: cell.severity,
          table,
          row: id,
          occurrence: 0,
          column: key,
          line,
          fixes: ['Multiply instead'],
        },
      ];
    });
  });
}

/** The job around the rows. `total` moves with the quantities, so edits are seen in it. */
export function jobView(rows: readonly FakeRow[], state: JobView['state'] = 'ready'): JobView {
  const messages: Readonly<Record<JobView['state'], string>> = {
    ready: '',
    empty: '',
    'read-only': 'The file is on a medium that cannot be written.',
    conflicted:
      'Two versions of this job were merged and disagree. Choose between them in the text.',
    unreadable: 'A table header is not closed. The grid shows the job as it last could be read.',
  };
  return {
    state,
    message: messages[state],
    line: state === 'conflicted' || state === 'unreadable' ? 42 : 0,
    units: 'in',
    sheets: ['part', 'driver', 'measure', 'panel', 'task'].map((table) => sheetView(table, rows)),
    headline: headlineView(rows),
    knobs: [
      {
        table: 'part',
        id: 'ring_1',
        column: 'tilt',
        label: 'Ring 1 · Tilt',
        value: rows.find((row) => row.id === 'ring_1')?.cells['tilt'] ?? '',
        step: '1 deg',
        effect: '+1 deg: +0.42 USD',
        check: 'window: 1/4 in to spare',
      },
      {
        table: 'part',
        id: 'base',
        column: 'qty',
        label: 'Base · Qty',
        value: '2',
        step: '1',
        effect: '',
        check: '',
      },
    ],
    bill: billView(rows, []),
    problems: problemViews(rows),
    kits: [
      { id: 'panel', name: 'Panel', help: 'A base on the door, its outline and how many.' },
      {
        id: 'driver_position',
        name: 'Driver position',
        help: 'Ring, baffle, shims and screws for one driver.',
      },
      { id: 'lay_up', name: 'Lay-up', help: 'Cloth, resin and mat over everything that stands.' },
    ],
  };
}

function total(rows: readonly FakeRow[]): number {
  return rows
    .filter((row) => row.table === 'part')
    .reduce((sum, row) => sum + 4.35 * (Number(row.cells['qty'] ?? '') || 1), 0);
}

export function headlineView(rows: readonly FakeRow[]): JobView['headline'] {
  const charge = total(rows);
  return {
    title: 'Front door pair, 6 1/2 midbass and tweeter',
    figures: [
      {
        key: 'charge',
        label: 'Materials charge',
        value: `$${charge.toFixed(2)}`,
        change: '+$4.35',
        tone: 'plain',
      },
      {
        key: 'buy',
        label: 'Materials to buy',
        value: `$${(charge * 1.4).toFixed(2)}`,
        change: '',
        tone: 'plain',
      },
      {
        key: 'panel',
        label: 'A panel',
        value: `$${(charge / 2).toFixed(2)}`,
        change: '',
        tone: 'plain',
      },
      {
        key: 'problems',
        label: 'Problems',
        value: String(problemViews(rows).length),
        change: '',
        tone: 'error',
      },
    ],
    notes: ['Materials only, no labour yet', '2 lines without price'],
  };
}

export function billView(rows: readonly FakeRow[], fresh: readonly string[]): JobView['bill'] {
  const charge = total(rows);
  const line = (id: string, share: number): JobView['bill']['groups'][number]['lines'][number] => ({
    id,
    name: nameOf.get(id) ?? id,
    need: `${(charge * share).toFixed(1)} sq ft`,
    buy: '2 sheets',
    buyCost: `$${(charge * share * 1.4).toFixed(2)}`,
    charge: `$${(charge * share).toFixed(2)}`,
    left: '11 sq ft',
    note: id === 'mdf_12' ? '≈' : '',
    problem: id === 'fleece' ? 'No price in the book.' : '',
    change: fresh.includes(id) ? '+$4.35' : '',
    fresh: fresh.includes(id),
    rows: ['base'],
  });
  const groupOf = (
    group: string,
    label: string,
    ids: readonly string[],
  ): JobView['bill']['groups'][number] => ({
    group,
    label,
    buy: `$${(charge * 0.5).toFixed(2)}`,
    charge: `$${(charge * 0.4).toFixed(2)}`,
    lines: ids.map((id) => line(id, 0.2)),
  });
  return {
    groups: [
      groupOf('structure', 'Structure', ['panelboard_3', 'mdf_12']),
      groupOf('skin', 'Skin', ['polyester', 'fleece']),
      groupOf('finish', 'Finish', ['vinyl_black']),
    ],
    buy: `$${(charge * 1.4).toFixed(2)}`,
    charge: `$${charge.toFixed(2)}`,
    left: `$${(charge * 0.4).toFixed(2)}`,
    change: '+$4.35',
    note: 'Lay-outs are rounded: ≈ marks what a cutting plan would settle.',
  };
}
