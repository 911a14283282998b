import {
  openSession,
  type HeavyReplies,
  type Session,
  type SessionChange,
} from '../../extension/engine/index.ts';
import { workedOut } from '../../extension/engine/session/worked-out.ts';
import { patchOf } from '../../extension/host/views/patch.ts';
import { sheetContext } from '../../extension/host/views/sheet-context.ts';

/** How long the host's thread was taken by each thing it did for one edit, in ms. */
export interface Turns {
  /** The edit planned, taken over, and told to the grid. */
  readonly edit: number;
  /** Each answer of the worker taken over and told to the grid. */
  readonly settled: readonly number[];
}

/** A job whose edits are timed as the host does them, one turn of its thread after the other. */
export interface TimedDesk {
  readonly edit: (row: string, column: string, text: string) => Turns;
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Opens a job with all its answers worked out. */
export function openTimedDesk(...given: Parameters<typeof openSession>): TimedDesk {
  const session = openSession(...given);
  const first = session.snapshot();
  answerAll(session, (replies) => session.settle(replies));
  let context = sheetContext(session.snapshot());

  const tell = (change: SessionChange): void => {
    const before = context;
    context = sheetContext(session.snapshot());
    patchOf({ before, after: context, change, baseline: first, knobs: [], revision: 1 });
  };
  return {
    edit: (row, column, text) => {
      const edit = timed(() => {
        const edits = [
          { kind: 'set-cell', row: { table: 'part', id: row }, column, text },
        ] as const;
        const planned = session.plan(edits);
        if (!planned.ok) throw new Error(planned.problem.message);
        tell(session.take(planned.value));
      });
      const settled: number[] = [];
      answerAll(session, (replies) => {
        settled.push(
          timed(() => {
            tell(session.settle(replies));
          }),
        );
      });
      return { edit, settled };
    },
  };
}

/** Works out what the job asks, as the worker does, and has each answer taken over. */
function answerAll(session: Session, take: (replies: HeavyReplies) => unknown): void {
  for (;;) {
    const [question] = session.snapshot().heavy;
    if (question === undefined) return;
    take(new Map([[question.key, { question, answer: workedOut(question) }]]));
  }
}
