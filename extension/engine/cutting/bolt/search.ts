import { below, type Chance } from '../chance.ts';
import type { Report } from '../instance.ts';
import { laidAlong, type Laid, type Panel, type Roll } from './skyline.ts';

export interface BoltSearch {
  readonly roll: Roll;
  readonly panels: readonly Panel[];
  /** No layout is shorter. */
  readonly bound: number;
  /** Ledges and panels that may be looked at. */
  readonly budget: number;
  readonly chance: Chance;
  readonly report: Report | undefined;
}

interface State {
  readonly list: readonly Panel[];
  readonly turnsFirst: readonly boolean[];
  readonly laid: Laid;
}

const keys: readonly ((panel: Panel) => number)[] = [
  ({ along, across }) => along * across,
  ({ along, across }) => across * 2 ** 22 + along,
  ({ along, across }) => along * 2 ** 22 + across,
  ({ along, across }) => Math.max(along, across) * 2 ** 22 + Math.min(along, across),
  ({ along, across }) => along + across,
];

function begun({ roll, panels }: BoltSearch): { readonly best: State; readonly done: number } {
  let best: State = { list: panels, turnsFirst: [], laid: laidAlong(roll, panels, []) };
  let done = best.laid.work;
  for (const key of keys) {
    for (const first of [false, true]) {
      const list = [...panels].sort((a, b) => key(b) - key(a) || a.index - b.index);
      const turnsFirst = panels.map(() => first);
      const laid = laidAlong(roll, list, turnsFirst);
      done += laid.work;
      if (laid.length < best.laid.length) best = { list, turnsFirst, laid };
    }
  }
  return { best, done };
}

// How many of the last states a new one is measured against (late acceptance).
const memory = 100;

/** The shortest layout found: a list of panels bettered by swaps and moves. */
export function searchBolt(search: BoltSearch): Laid {
  const { roll, bound, budget, chance, report } = search;
  const start = begun(search);
  let { best, done } = start;
  let now = best;
  const late = Array.from({ length: memory }, () => now.laid.length);
  const every = Math.max(1, Math.floor(budget / 20));
  let told = done;
  for (let step = 0; done < budget && best.laid.length > bound; step++) {
    const next = varied(roll, now, chance);
    done += next.laid.work + 1;
    const slot = step % memory;
    const reach = next.laid.length;
    if (reach <= now.laid.length || reach <= (late[slot] ?? 0)) now = next;
    late[slot] = now.laid.length;
    if (now.laid.length < best.laid.length) best = now;
    if (done - told > every) {
      told = done;
      report?.(done / budget);
    }
  }
  return best.laid;
}

function varied(roll: Roll, { list, turnsFirst }: State, chance: Chance): State {
  const next = [...list];
  const turns = [...turnsFirst];
  const from = below(chance, next.length);
  const to = below(chance, next.length);
  const [a, b] = [next[from], next[to]];
  const way = chance();
  if (a !== undefined && b !== undefined) {
    if (a.turns && way < 0.25) turns[a.index] = turns[a.index] !== true;
    else if (way < 0.65) [next[from], next[to]] = [b, a];
    else {
      next.splice(from, 1);
      next.splice(to, 0, a);
    }
  }
  return { list: next, turnsFirst: turns, laid: laidAlong(roll, next, turns) };
}
