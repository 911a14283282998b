import type {
  Answers,
  EditReply,
  FromWebview,
  GridEdit,
  Question,
  ToWebview,
} from '../../../extension/protocol/messages.ts';
import { packRows } from '../../../extension/protocol/packing.ts';
import type { CardField, CardView, JobView } from '../../../extension/protocol/views.ts';
import {
  billView,
  cellOf,
  columnsOf,
  fakeRows,
  headlineView,
  jobView,
  kindOptions,
  materialOptions,
  problemViews,
  rowView,
  sheetView,
  type FakeRow,
} from './fake-job.ts';

/** Answers the page as the extension would, from a made-up job of `rows` parts. */
export class FakeHost {
  readonly asked: FromWebview[] = [];
  rows: FakeRow[];
  revision = 1;
  /** Edits are answered when this resolves: a slow link. */
  delay: () => Promise<void> = () => Promise.resolve();
  readonly #state: JobView['state'];
  readonly #send: (message: ToWebview) => void;
  #drawn = 0;

  constructor(send: (message: ToWebview) => void, rows: number, state: JobView['state'] = 'ready') {
    this.#send = send;
    this.#state = state;
    this.rows = state === 'empty' ? [] : [...fakeRows(rows)];
  }

  receive(message: FromWebview): void {
    this.asked.push(message);
    if (message.type === 'ready') this.#open();
    if (message.type === 'ask') void this.#answer(message.request, message.question);
    if (message.type === 'selection')
      this.#send({
        type: 'sum',
        text: `${String(message.rows.length * message.columns.length)} cells`,
      });
    if (message.type === 'step-knob') this.#stepKnob(message.by);
  }

  /** Edits seen so far, gesture by gesture. */
  get edits(): readonly (readonly GridEdit[])[] {
    return this.asked.flatMap((message) =>
      message.type === 'ask' && message.question.ask === 'edit' ? [message.question.edits] : [],
    );
  }

  cell(id: string, column: string): string | undefined {
    return this.rows.find((row) => row.id === id)?.cells[column];
  }

  #open(): void {
    this.#send({ type: 'shown', revision: this.revision, job: jobView(this.rows, this.#state) });
    for (const table of Object.keys(columnsOf)) {
      const rows = packRows(this.rows.filter((row) => row.table === table).map(rowView));
      if (rows !== '') this.#send({ type: 'rows', revision: this.revision, table, rows });
    }
  }

  #stepKnob(by: 1 | -1): void {
    const row = this.rows.find((one) => one.id === 'ring_1');
    const tilt = Number.parseFloat(row?.cells['tilt'] ?? '0') + by;
    const cell = { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' };
    this.#apply([{ kind: 'type', cell, text: `${String(tilt)} deg` }], undefined);
  }

  async #answer(request: number, question: Question): Promise<void> {
    if (question.ask === 'edit') {
      await this.delay();
      this.#send({ type: 'reply', request, answer: this.#edit(question.edits, request) });
      return;
    }
    this.#send({ type: 'reply', request, answer: this.#reply(question) });
  }

  #reply(question: Exclude<Question, { ask: 'edit' }>): Answers[keyof Answers] {
    switch (question.ask) {
      case 'card':
        return this.#card(question.row.id);
      case 'choices':
        return this.#choices(question.cell.column);
      case 'complete':
        return complete(question.text, question.caret);
      case 'where-from':
      case 'where-from-cell':
        return {
          title: 'Where from: Panel board, 3 mm',
          steps: [
            { text: 'ring_1: 3 sq ft × 2 panels', table: 'part', row: 'ring_1', column: 'tilt' },
            { text: '+ 10 % waste = 6.6 sq ft', table: '', row: '', column: '' },
            { text: 'bought as 2 sheets of 8 sq ft', table: '', row: '', column: '' },
          ],
        };
      case 'kit':
        return kit(question.kit);
      case 'kit-preview':
        return {
          rows: [
            { table: 'part', id: `${question.answers['id'] ?? ''}_ring`, words: 'Ring, 8 in' },
            {
              table: 'part',
              id: `${question.answers['id'] ?? ''}_baffle`,
              words: 'Baffle on the ring',
            },
          ],
          problems: question.answers['id'] === 'base' ? { id: 'There is a row base already.' } : {},
        };
    }
  }

  #edit(edits: readonly GridEdit[], request: number): EditReply {
    const refused = edits.find((edit) => edit.kind === 'type' && edit.text.includes('EUR'));
    if (refused?.kind === 'type')
      return {
        ok: false,
        message: `“${refused.text}” is in euros; this job is in USD.`,
        cell: refused.cell,
      };
    const focus = this.#apply(edits, request);
    return {
      ok: true,
      revision: this.revision,
      focus: focus === undefined ? undefined : { table: 'part', id: focus, occurrence: 0 },
    };
  }

  #apply(edits: readonly GridEdit[], cause: number | undefined): string | undefined {
    const changed = new Set<string>();
    let focus: string | undefined;
    let structure = false;
    for (const edit of edits) {
      if (edit.kind === 'type') {
        this.#type(edit.cell.id, edit.cell.column, edit.text);
        changed.add(edit.cell.id);
      } else {
        structure = true;
        focus = this.#rowEdit(edit) ?? focus;
        if (focus !== undefined) changed.add(focus);
      }
    }
    this.revision += 1;
    const rows = this.rows.filter((row) => changed.has(row.id));
    this.#send({
      type: 'patch',
      revision: this.revision,
      cause,
      sheets: structure ? Object.keys(columnsOf).map((table) => sheetView(table, this.rows)) : [],
      rows: packRows(rows.map(rowView)),
      headline: headlineView(this.rows),
      knobs: jobView(this.rows).knobs,
      bill: billView(this.rows, ['panelboard_3']),
      problems: problemViews(this.rows),
    });
    return focus;
  }

  #type(id: string, column: string, text: string): void {
    this.rows = this.rows.map((row) =>
      row.id === id ? { ...row, cells: { ...row.cells, [column]: text } } : row,
    );
  }

  #rowEdit(edit: Exclude<GridEdit, { kind: 'type' }>): string | undefined {
    const at = (id: string): number => this.rows.findIndex((row) => row.id === id);
    switch (edit.kind) {
      case 'insert': {
        this.#drawn += 1;
        const id = `new${String(this.#drawn)}_${edit.rowKind}`;
        const place = edit.after === undefined ? 0 : at(edit.after.id) + 1;
        const fresh = {
          table: edit.table,
          id,
          kind: edit.rowKind,
          group: 'structure',
          locked: false,
          message: '',
          cells: { kind: edit.rowKind },
        };
        this.rows.splice(place, 0, fresh);
        return id;
      }
      case 'duplicate': {
        const row = this.rows[at(edit.row.id)];
        if (row === undefined) return undefined;
        const copy = { ...row, id: `${row.id}_copy` };
        this.rows.splice(at(edit.row.id) + 1, 0, copy);
        return copy.id;
      }
      case 'delete':
        this.rows.splice(at(edit.row.id), 1);
        return undefined;
      case 'move': {
        const from = at(edit.row.id);
        const [row] = this.rows.splice(from, 1);
        if (row !== undefined) this.rows.splice(from + edit.by, 0, row);
        return edit.row.id;
      }
      case 'rename':
        this.rows = this.rows.map((row) =>
          row.id === edit.row.id ? { ...row, id: edit.id } : row,
        );
        return edit.id;
      default:
        return undefined;
    }
  }

  #choices(column: string): Answers['choices'] {
    if (column === 'kind') return kindOptions;
    if (column === 'material') return materialOptions;
    if (column === 'hands')
      return ['pair', 'left', 'right', 'alike'].map((value) => ({
        value,
        label: value,
        detail: '',
      }));
    return this.rows
      .filter((row) => row.table === 'part')
      .slice(0, 20)
      .map((row) => ({ value: row.id, label: row.id, detail: row.cells['name'] ?? '' }));
  }

  #card(id: string): CardView | undefined {
    const row = this.rows.find((one) => one.id === id);
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
      problems: problemViews(this.rows).filter((problem) => problem.row === id),
      steps: ['Cut the strip, kerf it, bend it dry.', 'Glue and brad to the base.'],
      cautions: ['Board dust: wear a mask.'],
    };
  }
}

function complete(text: string, caret: number): Answers['complete'] {
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

function kit(id: string): Answers['kit'] {
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
