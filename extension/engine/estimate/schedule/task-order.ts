import type { Book } from '../../book/book.ts';
import type { Answers } from '../../workbook/answers.ts';
import type { Task } from '../work/task.ts';

function rankOf(task: Task, kinds: readonly string[], { answers, book }: Ground): number {
  const own = kinds.indexOf(task.kind);
  if (!task.waits) return own < 0 ? kinds.length : own;
  // A wait on filler comes after filling, one on a covering after that is glued.
  const row = task.on === '' ? undefined : answers.row('part', task.on);
  const calls = row === undefined ? [] : (book.kinds.get(row.kind)?.tasks ?? []);
  const first = calls[0]?.split('/')[0] ?? '';
  return Math.max(own, kinds.indexOf(first) + 0.5);
}

interface Ground {
  readonly answers: Answers;
  readonly book: Book;
}

/**
 * Tasks in the order they are done: by their kinds as the book lists them (measure before cutting, fit
 * to the car near the end), those of one kind as they stand on the sheet, and none before the task that
 * its row says must be finished first.
 *
 * @returns the tasks, and those that wait for each other in a loop, which stand as on the sheet
 */
export function taskOrder(
  tasks: readonly Task[],
  ground: Ground,
): { readonly order: readonly Task[]; readonly looped: readonly Task[] } {
  const kinds = [...ground.book.kinds.values()]
    .filter(({ table }) => table === 'task')
    .map(({ id }) => id);
  const ranked = tasks
    .map((task, index) => ({ task, index, rank: rankOf(task, kinds, ground) }))
    .sort((one, two) => one.rank - two.rank || one.index - two.index)
    .map(({ task }) => task);
  const known = new Set(tasks.map(({ id }) => id));
  const order: Task[] = [];
  const done = new Set<string>();
  let left = ranked;
  while (left.length > 0) {
    const ready = left.find(({ after }) => after === '' || !known.has(after) || done.has(after));
    if (ready === undefined) return { order: [...order, ...left], looped: left };
    order.push(ready);
    done.add(ready.id);
    left = left.filter((task) => task !== ready);
  }
  return { order, looped: [] };
}
