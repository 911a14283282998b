import type { CheckView } from '../../../extension/protocol/check-view.ts';
import type { JobView, ProblemView, SheetView } from '../../../extension/protocol/views.ts';
import { cellOf, columnsOf, groups, kinds, nameOf, type FakeRow } from './fake-job.ts';

/** A table's sheet, without its rows. */
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

/** Checks of the fake job: one that fails, one that is near, one that passes. */
export function checkViews(): readonly CheckView[] {
  return [
    {
      id: 'edge',
      occurrence: 0,
      outcome: 'fail',
      word: 'fails',
      tone: 'error',
      message: 'Edge at the door seal: 3/4 in, but at most 5/8 in is allowed: 1/8 in too much.',
    },
    {
      id: 'aim',
      occurrence: 0,
      outcome: 'near',
      word: 'near',
      tone: 'plain',
      message: 'Off-axis: 44.7 deg; at most 45 deg is allowed, so only 0.3 deg is to spare.',
    },
    {
      id: 'room',
      occurrence: 0,
      outcome: 'pass',
      word: 'pass',
      tone: 'plain',
      message:
        'Midbass clears what is behind: 1 in; at least 1/4 in is wanted, so 3/4 in is to spare.',
    },
  ];
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
          follows: false,
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
          follows: false,
        },
      ];
    });
  });
}

/** The job around the rows. `total` moves with the quantities, so edits are seen in it. */
export function jobView(rows: readonly FakeRow[], state: JobView['state'] = 'ready'): JobView {
  const messages: Readonly<Record<JobView['state'], string>> = {
    ready: '',
    calculating: '',
    empty: '',
    'read-only': 'The file is on a medium that cannot be written.',
    conflicted:
      'Two versions of this job were merged and disagree. Choose between them in the text.',
    unreadable: 'A table header is not closed. The grid shows the job as it last could be read.',
  };
  return {
    form: 'job',
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
    checks: checkViews(),
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
    cautions: {
      first: 'Labels come first.',
      list: [
        {
          id: 'dust',
          title: 'Dust',
          text: 'Extract it.',
          limits: [{ text: '1 mg/m³', source: 'a rule' }],
          rows: 'Baffle',
        },
      ],
    },
  };
}
