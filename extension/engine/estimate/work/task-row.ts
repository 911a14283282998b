import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import { learnedTotal, threePointTime } from '../../trade/work-time.ts';
import { plain, time } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { Step } from '../bill.ts';
import { nameOf, placeOf, wordIn } from '../cells.ts';
import { multiplicity, type Multiplicity } from '../panels.ts';
import { figureIn, likelyTime, minutesIn, rangeOf, type Likely } from './task-figures.ts';
import type { Task } from './task.ts';
import { workProblem } from './work-problems.ts';

/** A task with what a person has to be told of it. */
export interface WorkedTask {
  readonly task: Task;
  readonly problems: readonly Problem[];
}

/** What a task's time is worked from beside its row. */
export interface TaskGround {
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly panel: AnsweredRow | undefined;
  /** The part it is done on: a part for one hand is worked on for that hand alone. */
  readonly part: AnsweredRow | undefined;
  /** How often a task without a panel is done; undefined where the panels differ. */
  readonly loose: number | undefined;
}

const untold: Pick<WorkedTask, 'problems'> = { problems: [] };

/** Works out the time of one row of the tasks sheet. */
export function taskRow(row: AnsweredRow, ground: TaskGround): WorkedTask {
  const { book, settings } = ground;
  const empty = emptyTask(row, ground);
  const unknown = book.kinds.get(row.kind)?.table !== 'task';
  if (unknown && row.cell('minutes').result.state === 'blank') {
    const more = { severity: 'warning' as const, place: placeOf(row, 'kind') };
    const problem = workProblem('task-kind-missing', { task: nameOf(row) }, more);
    return { task: empty, problems: [problem] };
  }
  const likely = likelyTime(row, settings);
  if (!likely.ok) return { task: empty, problems: [likely.problem] };
  const figures = otherFigures(row, likely.value.minutes, settings);
  if ('failure' in figures) return { task: empty, problems: [figures.failure] };
  const times = timesOf(row, ground);
  const told = times.problem === undefined ? [] : [times.problem];
  const timed = { ...figures, likely: likely.value, times, settings };
  const source = likely.value.defaulted ? (book.kinds.get(row.kind)?.source ?? '') : '';
  const problems = [...figures.problems, ...told];
  return {
    ...untold,
    task: { ...empty, ...timeOf(row, timed, empty.waits), source, complete: true },
    ...(problems.length > 0 && { problems }),
  };
}

interface Timed extends Figures {
  readonly likely: Likely;
  readonly times: Multiplicity;
  readonly settings: UnitSettings;
}

function timeOf(row: AnsweredRow, timed: Timed, waits: boolean): Partial<Task> {
  const { likely, range, setup, people, learn, times } = timed;
  const { minutes } = likely;
  const each = range === undefined ? minutes : threePointTime(range.low, minutes, range.high);
  const factor = learnedFactor(times.panels, learn);
  const elapsed = setup + each * factor;
  const paid = waits ? 0 : people;
  return {
    setup,
    each,
    ...(range === undefined ? {} : { range: { ...range, likely: minutes } }),
    times: times.panels,
    people,
    elapsed,
    working: elapsed * paid,
    spread: range === undefined ? 0 : ((range.high - range.low) / 6) * factor * paid,
    steps: [...likely.steps, ...moreSteps(row, { ...timed, each, factor, elapsed })],
  };
}

/** A task before its time is known. */
function emptyTask(row: AnsweredRow, { book }: TaskGround): Task {
  const kind = book.kinds.get(row.kind);
  return {
    id: row.id,
    occurrence: row.occurrence,
    name: taskName(row, book),
    kind: row.kind,
    phase: kind?.group ?? 'shop',
    on: wordIn(row, 'on'),
    after: wordIn(row, 'after'),
    who: wordIn(row, 'who'),
    waits: kind?.waits ?? false,
    setup: 0,
    each: 0,
    times: 0,
    people: 1,
    elapsed: 0,
    working: 0,
    spread: 0,
    source: '',
    steps: [],
    complete: false,
  };
}

function taskName(row: AnsweredRow, book: Book): string {
  const name = wordIn(row, 'name');
  return name === '' ? (book.kinds.get(row.kind)?.name ?? row.id) : name;
}

interface Figures {
  readonly setup: number;
  readonly people: number;
  readonly learn: number;
  readonly range: { readonly low: number; readonly high: number } | undefined;
  readonly problems: readonly Problem[];
}

function otherFigures(
  row: AnsweredRow,
  likely: number,
  settings: UnitSettings,
): Figures | { readonly failure: Problem } {
  const setup = minutesIn(row, 'setup', { otherwise: 0, settings });
  if (!setup.ok) return { failure: setup.problem };
  const people = minutesIn(row, 'people', { otherwise: 1, settings, dimension: plain });
  if (!people.ok) return { failure: people.problem };
  const range = rangeOf(row, likely, settings);
  if (!range.ok) return { failure: range.problem };
  const learning = learningOf(row, settings);
  if ('failure' in learning) return learning;
  const told = [range.value?.problem, learning.problem];
  const { value } = range;
  return {
    setup: setup.value,
    people: people.value,
    learn: learning.share,
    range: value === undefined ? undefined : { low: value.low, high: value.high },
    problems: told.filter((problem) => problem !== undefined),
  };
}

function learningOf(
  row: AnsweredRow,
  settings: UnitSettings,
):
  | { readonly share: number; readonly problem: Problem | undefined }
  | { readonly failure: Problem } {
  const found = figureIn(row, 'learn', { base: 1, dimension: plain });
  if (!found.ok) return { failure: found.problem };
  const { base } = found.value;
  if (base > 0 && base <= 1 + 1e-12) return { share: Math.min(1, base), problem: undefined };
  const value = showQuantity(found.value, settings, '%').text;
  const more = { severity: 'warning' as const, place: placeOf(row, 'learn') };
  const problem = workProblem('task-learning-outside', { task: nameOf(row), value }, more);
  return { share: 1, problem };
}

// Learning is told of whole panels; half a panel more is half of what the next one takes.
function learnedFactor(times: number, learn: number): number {
  const whole = Math.floor(times);
  const total = (unit: number): number => learnedTotal(1, learn, { unit, model: 'unit' });
  const rest = times - whole;
  return total(whole) + (rest === 0 ? 0 : rest * (total(whole + 1) - total(whole)));
}

function timesOf(row: AnsweredRow, ground: TaskGround): Multiplicity {
  const per = wordIn(row, 'per');
  const { panel, part, loose } = ground;
  if (per === 'job' || panel !== undefined) {
    // A hand that fits no panel is told at the part.
    const { panels, words } = multiplicity(part ?? row, panel, per);
    return { panels, words };
  }
  if (loose === undefined) {
    const more = { severity: 'warning' as const, place: placeOf(row, 'on') };
    const problem = workProblem('task-panels-unclear', { task: nameOf(row) }, more);
    return { panels: 1, words: 'once for the job', problem };
  }
  return { panels: loose, words: `${String(loose)} ${loose === 1 ? 'panel' : 'panels'}` };
}

interface Worked extends Timed {
  readonly each: number;
  readonly factor: number;
  readonly elapsed: number;
}

function moreSteps(row: AnsweredRow, worked: Worked): readonly Step[] {
  const { range, each, times, factor, learn, setup, people, elapsed, settings } = worked;
  const text = (base: number): string =>
    showQuantity({ base, dimension: time }, settings, 'min').text;
  const at = (column: string): Step['row'] & object => ({ table: row.table, id: row.id, column });
  const steps: Step[] = [];
  if (range !== undefined) {
    const words = `at best ${text(range.low)}, at worst ${text(range.high)}: expected ${text(each)}`;
    steps.push({ text: words, row: at('low') });
  }
  if (times.panels !== 1) {
    const learning =
      learn === 1
        ? ''
        : `, each doubling at ${String(Math.round(learn * 1000) / 10)} % of the time`;
    const total = learn === 1 ? '' : `: × ${String(Math.round(factor * 1000) / 1000)}`;
    steps.push({ text: `× ${times.words}${learning}${total}`, row: at('per') });
  }
  if (setup > 0) steps.push({ text: `+ set-up ${text(setup)}`, row: at('setup') });
  steps.push({ text: `= ${text(elapsed)} by the clock` });
  if (people !== 1) {
    const number = showQuantity({ base: people, dimension: plain }, settings).text;
    steps.push({ text: `× ${number} people`, row: at('people') });
  }
  return steps;
}
