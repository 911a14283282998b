import { kindGroups } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import { differingPlaces, renewedList } from '../../units/renewed-list.ts';
import type { WorkedTask } from './task-row.ts';
import type { Task, TimeTotal, Work } from './task.ts';

/** Sums up the tasks of a job again and again; what did not change is not looked at again. */
export type TaskSums = (rows: readonly SummedRow[]) => Work;

interface SummedRow {
  readonly worked: WorkedTask;
}

/** Numbers for words, so that times can be added up by them. */
class Keys {
  readonly words: string[] = [];
  private readonly numbers = new Map<string, number>();

  numberOf(word: string): number {
    const known = this.numbers.get(word);
    if (known !== undefined) return known;
    this.numbers.set(word, this.words.length);
    return this.words.push(word) - 1;
  }
}

/** Figures of tasks side by side: adding up hundreds of objects costs more than all else of the work. */
class Figures {
  readonly working: Float64Array;
  readonly elapsed: Float64Array;
  readonly spread: Float64Array;
  readonly phase: Int32Array;
  readonly who: Int32Array;
  /** 1 for a task in which nobody works. */
  readonly waits: Uint8Array;
  readonly open: Uint8Array;
  readonly uncalibrated: Uint8Array;
  readonly troubled: Uint8Array;
  readonly phases = new Keys();
  readonly people = new Keys();

  readonly count: number;

  constructor(count: number) {
    this.count = count;
    [this.working, this.elapsed, this.spread] = [numbers(count), numbers(count), numbers(count)];
    [this.phase, this.who] = [new Int32Array(count), new Int32Array(count)];
    [this.waits, this.open] = [new Uint8Array(count), new Uint8Array(count)];
    [this.uncalibrated, this.troubled] = [new Uint8Array(count), new Uint8Array(count)];
  }

  put(place: number, { task, problems }: WorkedTask): void {
    this.working[place] = task.working;
    this.elapsed[place] = task.elapsed;
    this.spread[place] = task.spread;
    this.phase[place] = this.phases.numberOf(task.phase);
    this.who[place] = this.people.numberOf(task.who);
    this.waits[place] = Number(task.waits);
    this.open[place] = Number(!task.complete);
    this.uncalibrated[place] = Number(task.source.startsWith('shop must calibrate'));
    this.troubled[place] = Number(problems.length > 0);
  }

  /** Times by the word that each task has a number of; words that no task has are left out. */
  by(numberOf: Int32Array, words: readonly string[]): ReadonlyMap<string, TimeTotal> {
    const totals = words.map((key) => ({ key, working: 0, elapsed: 0, waiting: 0, tasks: 0 }));
    for (let place = 0; place < this.count; place++) {
      const total = totals[numberOf[place] ?? 0];
      if (total === undefined) continue;
      total.tasks += 1;
      total.working += this.working[place] ?? 0;
      const elapsed = this.elapsed[place] ?? 0;
      if (this.waits[place] === 1) total.waiting += elapsed;
      else total.elapsed += elapsed;
    }
    return new Map(
      totals
        .filter(({ tasks }) => tasks > 0)
        .map(({ key, working, elapsed, waiting }) => [key, { key, working, elapsed, waiting }]),
    );
  }
}

function numbers(count: number): Float64Array {
  return new Float64Array(count);
}

// Not reduce(): it makes an object of every sum on the way that is no small whole number.
function sum(
  figures: Uint8Array | Float64Array,
  of: (one: number) => number = (one) => one,
): number {
  let total = 0;
  for (let place = 0; place < figures.length; place++) total += of(figures[place] ?? 0);
  return total;
}

function inOrder(
  keys: readonly string[],
  totals: ReadonlyMap<string, TimeTotal>,
): readonly TimeTotal[] {
  return keys.flatMap((key) => totals.get(key) ?? []);
}

/** Opens the sums of a job of which nothing is known yet. */
export function openTaskSums(): TaskSums {
  let last: readonly SummedRow[] = [];
  let tasks: readonly Task[] = [];
  let figures = new Figures(0);

  function takeAll(rows: readonly SummedRow[]): void {
    tasks = rows.map(({ worked }) => worked.task);
    figures = new Figures(rows.length);
    rows.forEach(({ worked }, place) => {
      figures.put(place, worked);
    });
  }

  function take(rows: readonly SummedRow[]): void {
    const places = differingPlaces(last, rows);
    last = rows;
    if (places === undefined) {
      takeAll(rows);
      return;
    }
    const fresh = new Map<number, Task>();
    for (const place of places) {
      const row = rows[place];
      if (row === undefined) continue;
      figures.put(place, row.worked);
      fresh.set(place, row.worked.task);
    }
    tasks = renewedList(tasks, fresh);
  }

  function problems(): readonly Problem[] {
    const found: Problem[] = [];
    figures.troubled.forEach((troubled, place) => {
      if (troubled === 1) found.push(...(last[place]?.worked.problems ?? []));
    });
    return found;
  }

  return (rows) => {
    take(rows);
    const { phase, phases, who, people, spread } = figures;
    const all = figures.by(new Int32Array(figures.count), ['']).get('');
    const { working = 0, elapsed = 0, waiting = 0 } = all ?? {};
    const byPerson = figures.by(who, people.words);
    return {
      tasks,
      phases: inOrder(kindGroups, figures.by(phase, phases.words)),
      people: inOrder([...byPerson.keys()].sort(), byPerson),
      totals: {
        ...{
          working,
          elapsed,
          waiting,
          spread: Math.sqrt(sum(spread, (one) => one * one)),
        },
        incomplete: sum(figures.open),
        uncalibrated: sum(figures.uncalibrated),
      },
      problems: problems(),
    };
  };
}
