import {
  bandWords,
  chargeDetail,
  minutesText,
  priceBand,
  priceRows,
  pricesByPanel,
  type Money,
  type PriceRow,
  type Snapshot,
  type Task,
  type UnitSettings,
} from '../../engine/index.ts';
import type {
  HoursPhase,
  HoursTask,
  HoursView,
  PriceLine,
  PriceView,
} from '../../protocol/price-view.ts';
import { changeText, moneyText } from './money.ts';
import { groupLabel } from './sheet-view.ts';

/** Times long and short in one column: `44 min`, `3 h 18 min`. */
function evenTime(minutes: number, settings: UnitSettings): string {
  return minutesText(Math.round(minutes), settings);
}

/** Why the time of a task cannot be told. */
function whyUntold({ id, occurrence }: Task, { work }: Snapshot): string {
  const problem = work.problems.find(
    ({ place }) => place?.table === 'task' && place.row === id && place.occurrence === occurrence,
  );
  return problem?.message ?? 'Its time cannot be told.';
}

// A task is worked out anew where anything it is shown by changes, the settings too.
const shownTasks = new WeakMap<Task, HoursTask>();

function taskView(task: Task, snapshot: Snapshot): HoursTask {
  const shown = shownTasks.get(task) ?? timedTask(task, snapshot.settings);
  shownTasks.set(task, shown);
  return task.complete ? shown : { ...shown, note: whyUntold(task, snapshot) };
}

function timedTask(task: Task, settings: UnitSettings): HoursTask {
  const { id, occurrence, name, complete, steps, source, waits } = task;
  const how = steps.map(({ text }) => text).filter((text) => !text.startsWith('= '));
  return {
    id,
    occurrence,
    name,
    time: complete ? `${evenTime(task.elapsed, settings)}${waits ? ' waiting' : ''}` : '–',
    how: how.join(' '),
    note: source,
    complete,
  };
}

function hoursNotes({ work, settings }: Snapshot): readonly string[] {
  const { incomplete, uncalibrated, spread } = work.totals;
  const notes: string[] = [];
  if (incomplete > 0) {
    notes.push(`${String(incomplete)} ${incomplete === 1 ? 'task has' : 'tasks have'} no time yet`);
  }
  if (uncalibrated > 0) {
    const tasks = uncalibrated === 1 ? '1 task goes' : `${String(uncalibrated)} tasks go`;
    notes.push(`${tasks} by rates of the built-in kinds, which are invented: time your own`);
  }
  if (spread > 0) notes.push(`± ${evenTime(spread, settings)} by the ranges given`);
  return notes;
}

/** Hours by phase with their tasks, and by person. */
export function hoursView(snapshot: Snapshot): HoursView {
  const { work, settings } = snapshot;
  const text = (minutes: number): string => evenTime(minutes, settings);
  const waiting = (minutes: number): string => (minutes === 0 ? '' : `${text(minutes)} waiting`);
  const phases = work.phases.map((phase): HoursPhase => ({
    key: phase.key,
    label: groupLabel(phase.key),
    working: text(phase.working),
    waiting: waiting(phase.waiting),
    tasks: work.tasks
      .filter((task) => task.phase === phase.key)
      .map((task) => taskView(task, snapshot)),
  }));
  const named = work.people.some(({ key }) => key !== '');
  const people = named
    ? work.people.map(({ key, working, waiting: waits }) => ({
        key,
        label: key === '' ? 'Anybody' : key,
        working: text(working),
        waiting: waiting(waits),
      }))
    : [];
  const { totals } = work;
  const waits = totals.waiting === 0 ? '' : `, ${text(totals.waiting)} of waiting`;
  return {
    phases,
    people,
    total: work.tasks.length === 0 ? '' : `${text(totals.working)} of work${waits}`,
    notes: hoursNotes(snapshot),
  };
}

const sumLabels = {
  price: ['Price before tax', 'sum'],
  total: ['Total', 'total'],
  balance: ['Balance', 'due'],
} as const;

function priceLine(row: PriceRow, settings: UnitSettings): PriceLine {
  const amount = moneyText(row.amount, settings);
  switch (row.sort) {
    case 'materials': {
      const label = `${groupLabel(row.group)}: materials`;
      const key = `materials/${row.group}`;
      return { key, label, detail: '', amount, look: 'part', table: '', id: '' };
    }
    case 'charge':
    case 'due': {
      const { id, name, complete, occurrence } = row.charge;
      return {
        key: `charge/${id}#${String(occurrence)}`,
        label: name,
        detail: row.sort === 'due' ? '' : chargeDetail(row.charge),
        amount: complete ? amount : '–',
        look: row.sort === 'due' ? 'due' : 'part',
        table: 'charge',
        id,
      };
    }
    default: {
      const [label, look] = sumLabels[row.sort];
      return { key: row.sort, label, detail: '', amount, look, table: '', id: '' };
    }
  }
}

/** A share as people read it: `4.8 %`. */
export function shareText(share: number): string {
  return `${(Math.round(share * 1000) / 10).toFixed(1)} %`;
}

function priceFacts(snapshot: Snapshot): PriceView['facts'] {
  const { price, settings } = snapshot;
  const { totals, ways } = price;
  const money = (minor: number): string => moneyText(minor, settings);
  const panels = pricesByPanel(snapshot).map(({ id, name, count, amount }) => ({
    key: `panel/${id}`,
    label: count === 1 ? name : `${name}, ${String(count)} of them`,
    value:
      count === 1 ? money(amount) : `${money(amount)}, ${money(Math.round(amount / count))} each`,
  }));
  const band = priceBand(snapshot);
  return [
    ...(band === undefined
      ? []
      : [{ key: 'band', label: 'By the ranges given', value: bandWords(band, price) }]),
    {
      key: 'earned',
      label: 'Earned over the cost',
      value: `${money(totals.earned)}, ${shareText(totals.margin)} of the price`,
    },
    ...panels,
    { key: 'packs', label: 'If all packs were charged whole', value: money(ways.packs) },
    { key: 'used', label: 'If only what is used were charged', value: money(ways.used) },
  ];
}

const stateNotes: Readonly<Record<Snapshot['price']['state'], string>> = {
  whole: '',
  'materials-only': 'Materials only: no charges yet. Insert the kit “Measuring, office, charges”.',
  'no-labour': 'No labour in it yet',
  incomplete: 'Incomplete: something in it has no figure yet',
};

/** What the price leaves out; empty where it is whole. */
export function priceNote({ price }: Pick<Money, 'price'>): string {
  return stateNotes[price.state];
}

/** The price from materials to balance. */
export function priceView(snapshot: Snapshot, baseline: Money): PriceView {
  const note = priceNote(snapshot);
  const { total } = snapshot.price.totals;
  return {
    lines: priceRows(snapshot.price).map((row) => priceLine(row, snapshot.settings)),
    facts: priceFacts(snapshot),
    notes: note === '' ? [] : [note],
    change: changeText(total - baseline.price.totals.total, snapshot.settings),
  };
}
