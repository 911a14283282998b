import type { Answers } from '../../../extension/protocol/messages.ts';
import type { CardField, CardView } from '../../../extension/protocol/views.ts';
import { cellOf, columnsOf, kindOptions, materialOptions, type FakeRow } from './fake-job.ts';
import { checkViews, problemViews } from './fake-views.ts';

/** What a choice or link cell may hold. */
export function choices(rows: readonly FakeRow[], column: string): Answers['choices'] {
  if (column === 'kind') return kindOptions;
  if (column === 'material') return materialOptions;
  if (column === 'hands')
    return ['pair', 'left', 'right', 'alike'].map((value) => ({
      value,
      label: value,
      detail: '',
    }));
  return rows
    .filter((row) => row.table === 'part')
    .slice(0, 20)
    .map((row) => ({ value: row.id, label: row.id, detail: row.cells['name'] ?? '' }));
}

/** The card of a row. */
export function card(rows: readonly FakeRow[], id: string): CardView | undefined {
  const row = rows.find((one) => one.id === id);
  if (row === undefined) return undefined;
  const columns = columnsOf[row.table] ?? [];
  const field = (key: string, label: string, editor: CardField['editor']): CardField => ({
    key,
    label,
    help: `What ${label} means.`,
    cell: cellOf(row, key),
    fallback: key === 'depth' ? '=RING.LEAST(size, tilt, 5/8in)' : '',
    unit: key === 'use' ? 'sq ft' : '',
    editor,
    pinned: key === 'tilt',
    fixes: [],
  });
  const own = columns.filter((one) => one.editor !== 'none');
  return {
    table: row.table,
    id,
    occurrence: 0,
    title: row.cells['name'] ?? id,
    kind: kindOptions.find((one) => one.value === row.kind)?.label ?? '',
    kindHelp:
      row.table === 'part'
        ? 'Bent from panel board around the driver, from the base plane to the baffle.'
        : '',
    fields: own.map((one) => field(one.key, one.label, one.editor)),
    results: columns
      .filter((one) => one.editor === 'none')
      .map((one) => field(one.key, one.label, 'none')),
    draws:
      row.kind === 'ring'
        ? [
            {
              name: 'glue',
              label: 'Glue',
              fields: [
                field('draw.glue.material', 'Material', 'link'),
                field('draw.glue.use', 'Use', 'text'),
              ],
            },
          ]
        : [],
    amounts: [
      {
        label: 'Panel board, 3 mm',
        value: '6.6 sq ft · $8.70',
        steps: ['3 sq ft × 2 panels', '+ 10 % waste'],
      },
    ],
    checks: id === 'ring_1' ? checkViews() : [],
    problems: problemViews(rows).filter((problem) => problem.row === id),
    steps: ['Cut the strip, kerf it, bend it dry.', 'Glue and brad to the base.'],
    cautions: ['Board dust: wear a mask.'],
  };
}

/** Completion, as far as the page need see it. */
export function complete(text: string, caret: number): Answers['complete'] {
  const before = text.slice(0, caret);
  const word = /[A-Za-z_.]*$/.exec(before)?.[0] ?? '';
  const all = [
    {
      label: 'RING.DEPTH',
      detail: 'depth of the ring at its centre',
      kind: 'function' as const,
      insert: 'RING.DEPTH(',
    },
    {
      label: 'RING.LEAST',
      detail: 'least depth that can be bent',
      kind: 'function' as const,
      insert: 'RING.LEAST(',
    },
    {
      label: 'ROUNDUPTO',
      detail: 'rounds up to a step',
      kind: 'function' as const,
      insert: 'ROUNDUPTO(',
    },
    { label: 'tilt', detail: 'this row · 15 deg', kind: 'column' as const, insert: 'tilt' },
    { label: 'base', detail: 'row · Base 0', kind: 'row' as const, insert: 'base' },
  ];
  const items =
    word === ''
      ? []
      : all.filter(({ label }) => label.toLowerCase().startsWith(word.toLowerCase()));
  const inside = /ROUNDUPTO\(([^)]*)$/.exec(before);
  return {
    start: caret - word.length,
    end: caret,
    items,
    signature:
      inside === null
        ? undefined
        : {
            name: 'ROUNDUPTO',
            help: 'Rounds up to the next multiple of a step.',
            parameters: [
              { label: 'value', help: 'what is rounded' },
              { label: 'step', help: 'of the same dimension' },
            ],
            active: inside[1]?.includes(',') === true ? 1 : 0,
            example: '=ROUNDUPTO(2.57in, 1/8in) → 2 5/8 in',
          },
    preview: text.endsWith('in') ? '= 2 5/8 in' : '',
  };
}

/** A kit with a question of each type. */
export function kit(id: string): Answers['kit'] {
  return {
    id,
    name: 'Driver position',
    help: 'Ring, baffle, shims and screws for one driver.',
    questions: [
      {
        key: 'id',
        label: 'Short name',
        help: 'Begins the ids of its rows.',
        type: 'text',
        options: [],
        start: 'mid',
        required: true,
      },
      {
        key: 'driver',
        label: 'Driver',
        help: '',
        type: 'choice',
        options: [
          { value: 'mid', label: 'Midbass, 6 1/2 in', detail: '' },
          { value: 'twt', label: 'Tweeter', detail: '' },
        ],
        start: 'mid',
        required: true,
      },
      {
        key: 'tilt',
        label: 'Tilt',
        help: 'How far the baffle leans from the base.',
        type: 'text',
        options: [],
        start: '15 deg',
        required: false,
      },
      {
        key: 'grille',
        label: 'With a grille',
        help: '',
        type: 'yes-no',
        options: [],
        start: 'yes',
        required: false,
      },
    ],
  };
}
