import type { Book } from '../../book/book.ts';
import { keptProblems, type Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { differingPlaces } from '../../units/renewed-list.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { isSameRow } from '../../workbook/row-view.ts';
import { sameData } from '../../workbook/same-meaning.ts';
import { wordIn } from '../cells.ts';
import { notedRow, readsTheSame, type CellsRead } from '../cells-read.ts';
import { openRowKeeper, openUnbroken, type KeptRow } from '../kept-rows.ts';
import { allPanels, panelAsBefore, panelOf, type PanelWay } from '../panels.ts';
import { changedRows, changedUnder } from '../table-changes.ts';
import { missingWork } from './missing-work.ts';
import { taskRow, type WorkedTask } from './task-row.ts';
import { openTaskSums } from './task-sums.ts';
import type { Work } from './task.ts';

/** The work of a job, kept up with the answers: a task that did not change is not worked out again. */
export interface WorkKeeper {
  /** The same object comes back where nothing it depends on changed. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => Work;
}

const tables = ['task', 'part', 'panel'] as const;
type Tables = ReadonlyMap<string, readonly AnsweredRow[]>;

interface Kept extends PanelWay, KeptRow {
  readonly row: AnsweredRow;
  readonly read: CellsRead;
  readonly part: AnsweredRow | undefined;
  readonly loose: number | undefined;
  readonly worked: WorkedTask;
}

interface Around {
  readonly answers: Answers;
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly loose: number | undefined;
  /** Whether a row, as `table/id`, is not as before. */
  readonly moved: (key: string) => boolean;
}

/** Stands for the number of panels that loose tasks are done for: every task looks at it. */
const looseKey = 'panels';

/** No work yet; `update` brings it. */
export function openWork(): WorkKeeper {
  let grounds: { readonly book: Book; readonly settings: UnitSettings } | undefined;
  const unbroken = openUnbroken();
  let before: Tables = new Map();
  let keeper = openRowKeeper<Kept>();
  const sums = openTaskSums();
  let loose: number | undefined;
  let missing: readonly Problem[] = [];
  let work: Work | undefined;

  function forget(book: Book, settings: UnitSettings): void {
    const fresh = grounds?.book !== book || !sameSettings(grounds.settings, settings);
    if (fresh) [before, keeper, work] = [new Map(), openRowKeeper<Kept>(), undefined];
    grounds = { book, settings };
  }

  /** Rows that changed, and the key of loose tasks where these are done for another number now. */
  function movedKeys(now: Tables, keys: ReadonlySet<string>): ReadonlySet<string> {
    if (now.get('panel') === before.get('panel')) return keys;
    const old = loose;
    loose = loosePanels(now.get('panel') ?? []);
    return old === loose ? keys : new Set([...keys, looseKey]);
  }

  function summedUp(kept: readonly Kept[], told: readonly Problem[]): Work {
    const summed = sums(kept);
    return { ...summed, problems: [...summed.problems, ...told] };
  }

  return {
    update: (answers, book, settings) => {
      forget(book, settings);
      const now: Tables = new Map(tables.map((table) => [table, answers.rows(table)]));
      const { keys, moved } = changedRows(before, now);
      if (work !== undefined && !moved) return work;
      const stale = movedKeys(now, changedUnder(before, now, keys));
      const around = { answers, book, settings, loose, moved: (key: string) => stale.has(key) };
      let others = 0;
      const { kept, changed } = keeper.update(
        unbroken(now.get('task') ?? []),
        stale,
        (row, old) => {
          const fresh = keepTask(row, old, around);
          if (fresh.worked !== old?.worked) others += 1;
          return fresh;
        },
      );
      const stands = standsMoved(before, now);
      const told = stands ? keptProblems(missing, missingWork(answers, book), sayTheSame) : missing;
      const same = told === missing && changed !== undefined && others === 0;
      [before, missing] = [now, told];
      if (work === undefined || !same) work = summedUp(kept, told);
      return work;
    },
  };
}

function sayTheSame(one: Problem, two: Problem): boolean {
  return one.message === two.message && one.place?.row === two.place?.row;
}

/** How often a task without a panel is done: as often as every panel is made, where that is one number. */
function loosePanels(panels: readonly AnsweredRow[]): number | undefined {
  const counts = new Set(panels.filter(({ broken }) => !broken).map(allPanels));
  const [only = 1] = counts;
  return counts.size > 1 ? undefined : only;
}

/** What the plan of a row hangs on beside its place. */
function standOf(row: AnsweredRow): string {
  return `${row.kind} ${wordIn(row, 'on')} ${wordIn(row, 'name')} ${String(row.broken)}`;
}

/**
 * True where a part or task came, went or was moved, or is of another kind or on another row: the rest
 * moves no plan.
 */
function standsMoved(before: Tables, now: Tables): boolean {
  return ['part', 'task'].some((table) => {
    const [old, fresh] = [before.get(table) ?? [], now.get(table) ?? []];
    const places = differingPlaces(old, fresh);
    if (places === undefined) return true;
    return places.some((place) => {
      const [row, now] = [old[place], fresh[place]];
      if (row === undefined || now === undefined) return true;
      return !isSameRow(row, now) || standOf(row) !== standOf(now);
    });
  });
}

function keepTask(row: AnsweredRow, old: Kept | undefined, ground: Around): Kept {
  const { answers, book, settings, loose } = ground;
  const way = old === undefined ? panelOf(row, answers) : panelAsBefore(row, old, ground);
  const [below] = answers.under(row);
  const part = below?.table === 'part' ? below : undefined;
  const looked = [...way.walked, looseKey];
  const around = old !== undefined && old.loose === loose && old.panel === way.panel;
  if (around && sameHand(old.part, part) && saysTheSame(old, row)) {
    return { ...old, ...way, row, part, looked };
  }
  const noted = notedRow(row);
  const fresh = taskRow(noted.row, { book, settings, loose, panel: way.panel, part });
  const worked = old !== undefined && sameData(old.worked, fresh) ? old.worked : fresh;
  return { ...way, row, read: noted.read(), part, loose, worked, looked };
}

function saysTheSame({ row: before, read }: Kept, row: AnsweredRow): boolean {
  return before === row || (before.kind === row.kind && readsTheSame(read, row));
}

function sameHand(one: AnsweredRow | undefined, two: AnsweredRow | undefined): boolean {
  if (one === two) return true;
  return one !== undefined && two !== undefined && wordIn(one, 'hand') === wordIn(two, 'hand');
}
