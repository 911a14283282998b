import type {
  Answers,
  CellAddress,
  EditReply,
  GridEdit,
  Question,
  RowAddress,
} from '../extension/protocol/messages.ts';
import { cellKey } from './addresses.ts';
import { NotAnswered, type Channel } from './channel.ts';
import type { State } from './state.ts';

/** What the person typed and why it was not taken. */
export interface Refusal {
  readonly message: string;
  readonly cell: CellAddress | undefined;
  /** What was typed there; `undefined` where the gesture was not one cell's typing. */
  readonly text: string | undefined;
}

export interface EditsHooks {
  /** Cells of these tables show what was typed until it is answered. */
  readonly echoed: (tables: ReadonlySet<string>) => void;
  /** Repaint these tables: cells were taken or restored. */
  readonly repaint: (tables: ReadonlySet<string>) => void;
  readonly refused: (refusal: Refusal) => void;
  readonly goToRow: (row: RowAddress) => void;
  /** The host has taken or refused an edit. */
  readonly answered: () => void;
}

type Typed = Extract<GridEdit, { readonly kind: 'type' }>;

function typedOnly(edits: readonly GridEdit[]): readonly Typed[] {
  return edits.flatMap((edit) => (edit.kind === 'type' ? [edit] : []));
}

/** Sends gestures: shown at once, one question each, put back if refused. */
export class Edits {
  readonly #state: State;
  readonly #channel: Channel;
  readonly #hooks: EditsHooks;
  #unanswered = 0;

  constructor(state: State, channel: Channel, hooks: EditsHooks) {
    this.#state = state;
    this.#channel = channel;
    this.#hooks = hooks;
  }

  /** Something was sent that the host has not answered. */
  get underWay(): boolean {
    return this.#unanswered > 0;
  }

  /** One gesture, one undo step. Resolves to whether the host took it. */
  async send(edits: readonly GridEdit[]): Promise<boolean> {
    if (edits.length === 0) return true;
    if (!this.#state.editable) {
      this.#refuse(edits, this.#state.job?.message ?? 'The job is still being read.', undefined);
      return false;
    }
    performance.mark('panelwright:edit');
    const { request, answer } = this.#channel.ask({
      ask: 'edit',
      revision: this.#state.revision,
      edits,
    });
    const typed = typedOnly(edits);
    this.#state.echo(request, typed);
    const tables = new Set(typed.map(({ cell }) => cell.table));
    if (tables.size > 0) this.#hooks.echoed(tables);
    this.#unanswered += 1;
    const reply = await settled(answer);
    this.#unanswered -= 1;
    this.#hooks.answered();
    return this.#finish(reply, { request, edits, tables });
  }

  /** Types one cell from beside the grid. Resolves to whether the host took it. */
  type(cell: CellAddress, text: string): Promise<boolean> {
    return this.send([{ kind: 'type', cell, text }]);
  }

  /** Asks something else than an edit; a question without an answer is `undefined`. */
  async ask<Ask extends Exclude<Question['ask'], 'edit'>>(
    question: Extract<Question, { readonly ask: Ask }>,
  ): Promise<Answers[Ask] | undefined> {
    try {
      return await this.#channel.ask(question).answer;
    } catch (problem) {
      if (problem instanceof NotAnswered) return undefined;
      throw problem;
    }
  }

  #finish(
    reply: EditReply,
    sent: {
      readonly request: number;
      readonly edits: readonly GridEdit[];
      readonly tables: ReadonlySet<string>;
    },
  ): boolean {
    if (reply.ok) {
      this.#state.acknowledge(sent.request, reply.revision);
      if (sent.tables.size > 0) this.#hooks.repaint(sent.tables);
      if (reply.focus !== undefined) this.#hooks.goToRow(reply.focus);
      return true;
    }
    this.#state.settle(sent.request);
    this.#hooks.repaint(sent.tables);
    this.#refuse(sent.edits, reply.message, reply.cell);
    return false;
  }

  #refuse(edits: readonly GridEdit[], message: string, at: CellAddress | undefined): void {
    const typed = typedOnly(edits);
    const one = typed.length === 1 ? typed[0] : undefined;
    const named = at && typed.find(({ cell }) => cellKey(cell) === cellKey(at));
    const cell = at ?? one?.cell;
    this.#hooks.refused({ message, cell, text: (named ?? one)?.text });
  }
}

async function settled(answer: Promise<EditReply>): Promise<EditReply> {
  try {
    return await answer;
  } catch (problem) {
    if (!(problem instanceof NotAnswered)) throw problem;
    return { ok: false, message: problem.message, cell: undefined };
  }
}
