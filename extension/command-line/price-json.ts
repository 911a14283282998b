import {
  priceBand,
  pricesByPanel,
  showQuantity,
  timeDimension,
  type Charge,
  type Snapshot,
  type Task,
} from '../engine/index.ts';
import { steady } from './steady.ts';

function minutesJson(minutes: number, { settings }: Snapshot): object {
  const base = steady(minutes);
  const { text } = showQuantity({ base: minutes, dimension: timeDimension }, settings, 'min');
  return { base, unit: 'min', text };
}

function moneyJson(minor: number, { price }: Snapshot): object {
  return { minor, currency: price.currency };
}

/** A task as programs read it; docs/command-line.md describes it. */
export function taskJson(task: Task, snapshot: Snapshot): object {
  const time = (minutes: number): object => minutesJson(minutes, snapshot);
  const { range } = task;
  const labour = snapshot.price.labourOf.get(`${task.id}#${String(task.occurrence)}`);
  return {
    id: task.id,
    name: task.name,
    kind: task.kind,
    phase: task.phase,
    row: task.on,
    after: task.after,
    who: task.who,
    waits: task.waits,
    setup: time(task.setup),
    each: time(task.each),
    times: steady(task.times),
    people: steady(task.people),
    elapsed: time(task.elapsed),
    working: time(task.working),
    low: range === undefined ? null : time(range.low),
    high: range === undefined ? null : time(range.high),
    labour: labour === undefined ? null : moneyJson(labour, snapshot),
    source: task.source,
    complete: task.complete,
    steps: task.steps.map(({ text }) => text),
  };
}

/** Hours by phase and by person. */
export function workJson(snapshot: Snapshot): object {
  const { work } = snapshot;
  const time = (minutes: number): object => minutesJson(minutes, snapshot);
  const { working, elapsed, waiting, spread, incomplete, uncalibrated } = work.totals;
  return {
    working: time(working),
    elapsed: time(elapsed),
    waiting: time(waiting),
    spread: time(spread),
    incomplete,
    uncalibrated,
    phases: work.phases.map((one) => ({
      phase: one.key,
      working: time(one.working),
      waiting: time(one.waiting),
    })),
    people: work.people.map((one) => ({
      who: one.key,
      working: time(one.working),
      waiting: time(one.waiting),
    })),
  };
}

/** A charge as programs read it. */
export function chargeJson(charge: Charge, snapshot: Snapshot): object {
  return {
    id: charge.id,
    name: charge.name,
    kind: charge.kind,
    does: charge.operation,
    base: charge.base === undefined ? null : moneyJson(charge.base, snapshot),
    amount: moneyJson(charge.amount, snapshot),
    taxed: moneyJson(charge.taxed, snapshot),
    complete: charge.complete,
    steps: charge.steps.map(({ text }) => text),
  };
}

/** How far price and hours may be off nine times in ten; null where no range is given. */
function bandJson(snapshot: Snapshot): object | null {
  const band = priceBand(snapshot);
  if (band === undefined) return null;
  return {
    share: 0.9,
    price: moneyJson(band.price, snapshot),
    total: moneyJson(band.total, snapshot),
    working: minutesJson(band.minutes, snapshot),
    unranged: band.unranged,
    causes: band.causes.map(({ of, id, name, spread }) => {
      return { of, id, name, spread: steady(spread) };
    }),
  };
}

/** The price and what it means. */
export function priceJson(snapshot: Snapshot): object {
  const { price } = snapshot;
  const { margin, ...amounts } = price.totals;
  const money = (minor: number): object => moneyJson(minor, snapshot);
  return {
    state: price.state,
    ...Object.fromEntries(Object.entries(amounts).map(([key, minor]) => [key, money(minor)])),
    margin: steady(margin),
    byPacks: money(price.ways.packs),
    byUse: money(price.ways.used),
    band: bandJson(snapshot),
    panels: pricesByPanel(snapshot).map(({ id, name, count, amount }) => ({
      id,
      name,
      count,
      price: money(amount),
    })),
  };
}
