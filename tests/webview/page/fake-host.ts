import { cutView } from './fake-cut.ts';
import type {
  Answers,
  EditReply,
  FromWebview,
  GridEdit,
  Question,
  ToWebview,
} from '../../../extension/protocol/messages.ts';
import { packRows } from '../../../extension/protocol/packing.ts';
import type { JobView } from '../../../extension/protocol/views.ts';
import { card, choices, complete, kit } from './fake-answers.ts';
import { asksPreview, templateAsks } from './fake-asks.ts';
import { actualsView, driversView, mixView, optionsView, scheduleView } from './fake-plans.ts';
import { moneyView } from './fake-price.ts';
import { fakeSvg, panelView } from './fake-panel.ts';
import { columnsOf, fakeRows, rowView, type FakeRow } from './fake-job.ts';
import { billView, headlineView, jobView, problemViews, sheetView } from './fake-views.ts';

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

  /** Sends what nobody asked for. */
  tell(message: ToWebview): void {
    this.#send(message);
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
    this.#send({ type: 'reply', request, answer: this.#given(question) });
  }

  #given(question: Exclude<Question, { ask: 'edit' }>): Answers[keyof Answers] {
    if (question.ask === 'panel') return panelView(this.rows, question.wish);
    if (question.ask === 'cut') return cutView(question.wish);
    if (isPlain(question)) return plainAnswers[question.ask]();
    if (question.ask === 'asks-preview') return asksPreview(question.answers);
    if (question.ask === 'actuals') return actualsView(this.cell('ring_1', 'used') ?? '');
    if (question.ask === 'cut-others') return [{ stock: 'half', words: '2 for 22.00 USD' }];
    return question.ask === 'panel-svg' ? fakeSvg : this.#reply(question);
  }

  #reply(question: Exclude<Question, { ask: 'edit' | Elsewhere }>): Answers[keyof Answers] {
    switch (question.ask) {
      case 'card':
        return card(this.rows, question.row.id);
      case 'choices':
        return choices(this.rows, question.cell.column);
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
        return kitPreview(question.answers['id'] ?? '');
      case 'trace':
        return question.wish.list.includes('\n')
          ? {
              message: '',
              sentence: '24 in × 15 in, from 4 points.',
              picture: { box: { left: 0, bottom: 0, right: 600, top: 400 }, marks: [] },
            }
          : { message: 'An outline takes three points or more.', sentence: '', picture: undefined };
      case 'write-trace':
        return { ok: true, revision: 1, focus: undefined };
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
      if (edit.kind === 'place') {
        this.#type(edit.row.id, 'at_x', `${String(edit.x)} mm`);
        this.#type(edit.row.id, 'at_y', `${String(edit.y)} mm`);
        changed.add(edit.row.id);
      } else if (edit.kind === 'type') {
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

  #rowEdit(edit: Exclude<GridEdit, { kind: 'type' | 'place' }>): string | undefined {
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
}

/** Answers that do not depend on the question. */
const plainAnswers = {
  price: moneyView,
  mix: mixView,
  schedule: scheduleView,
  options: optionsView,
  'cost-drivers': driversView,
  asks: () => templateAsks,
  conflicts: () => ({ conflicts: [], message: '' }),
  'conflict-totals': () => [],
  settle: () => ({ ok: true as const, revision: 1, focus: undefined }),
};

type Plain = Extract<Question, { readonly ask: keyof typeof plainAnswers }>;

function isPlain(question: Question): question is Plain {
  return question.ask in plainAnswers;
}

/** Questions that are answered before the others. */
type Elsewhere =
  | 'panel'
  | 'panel-svg'
  | 'cut'
  | 'cut-others'
  | 'actuals'
  | 'asks-preview'
  | keyof typeof plainAnswers;

function kitPreview(id: string): Answers['kit-preview'] {
  return {
    rows: [
      { table: 'part', id: `${id}_ring`, words: 'Ring, 8 in' },
      { table: 'part', id: `${id}_baffle`, words: 'Baffle on the ring' },
    ],
    totals: [],
    problems: id === 'base' ? { id: 'There is a row base already.' } : {},
  };
}
