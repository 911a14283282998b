import { amountText } from '../estimate/amount.ts';
import type { BillLine, Minor } from '../estimate/bill.ts';
import { taskKey } from '../estimate/price/labour.ts';
import { rowKey } from './row-key.ts';
import type { Snapshot } from './snapshot.ts';

/** A figure of the earlier and of the later version; undefined where that version has none. */
export interface Both<Value> {
  readonly before: Value | undefined;
  readonly after: Value | undefined;
}

/** A figure of the whole job: money in minor units, or time in minutes. */
export interface ComparedFigure {
  readonly key: 'materials' | 'labour' | 'price' | 'tax' | 'total' | 'hours';
  readonly label: string;
  readonly measure: 'money' | 'time';
  readonly before: number;
  readonly after: number;
}

/** A material, driver or extra that a job takes more or less of, or at another price. */
export interface ComparedMaterial {
  readonly id: string;
  readonly name: string;
  /** What is needed, in words. */
  readonly need: Both<string>;
  /** Money in the price. */
  readonly charge: Both<Minor>;
}

/** What one row takes: amount of its own material in words, money in the price, minutes to be paid. */
export interface RowFigures {
  readonly need: string | undefined;
  readonly charge: Minor | undefined;
  readonly minutes: number | undefined;
}

/** The figures that tell what a change of a job came to. */
export function comparedFigures(before: Snapshot, after: Snapshot): readonly ComparedFigure[] {
  const money = (
    key: 'materials' | 'labour' | 'price' | 'tax' | 'total',
    label: string,
  ): ComparedFigure => ({
    key,
    label,
    measure: 'money',
    before: before.price.totals[key],
    after: after.price.totals[key],
  });
  return [
    money('materials', 'Materials'),
    money('labour', 'Labour'),
    money('price', 'Price before tax'),
    money('tax', 'Tax'),
    money('total', 'Total'),
    {
      key: 'hours',
      label: 'Hours',
      measure: 'time',
      before: before.work.totals.working,
      after: after.work.totals.working,
    },
  ];
}

function needText(line: BillLine | undefined, { settings }: Snapshot): string | undefined {
  return line?.need === undefined ? undefined : amountText(line.need, settings);
}

/** Lines of the bill that differ in amount or money, as the later version has them, then those that are gone. */
export function comparedMaterials(before: Snapshot, after: Snapshot): readonly ComparedMaterial[] {
  const was = new Map(before.bill.lines.map((line) => [line.id, line]));
  const now = new Map(after.bill.lines.map((line) => [line.id, line]));
  return [...new Set([...now.keys(), ...was.keys()])].flatMap((id) => {
    const [old, line] = [was.get(id), now.get(id)];
    const need = { before: needText(old, before), after: needText(line, after) };
    const charge = { before: old?.charge, after: line?.charge };
    if (need.before === need.after && charge.before === charge.after) return [];
    return [{ id, name: line?.name ?? old?.name ?? id, need, charge }];
  });
}

/** What each row of a version takes, by row key; rows that take nothing are not in it. */
export function rowFigures(snapshot: Snapshot): ReadonlyMap<string, RowFigures> {
  const { workbook, needs, settings, work, price } = snapshot;
  const found = new Map<string, RowFigures>();
  for (const table of ['part', 'driver']) {
    for (const row of workbook.rows(table)) {
      const list = needs.get(rowKey(row)) ?? [];
      if (list.length === 0) continue;
      const own = list.find(({ draw }) => draw === '');
      found.set(rowKey(row), {
        need: own === undefined ? undefined : amountText(own.need, settings),
        charge: list.reduce((sum, { charge }) => sum + charge, 0),
        minutes: undefined,
      });
    }
  }
  for (const task of work.tasks) {
    found.set(rowKey({ ...task, table: 'task' }), {
      need: undefined,
      charge: price.labourOf.get(taskKey(task)),
      minutes: task.working,
    });
  }
  for (const charge of price.charges) {
    found.set(rowKey({ ...charge, table: 'charge' }), {
      need: undefined,
      charge: charge.amount,
      minutes: undefined,
    });
  }
  return found;
}
