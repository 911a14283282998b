import {
  columnOf,
  costDriversDrawing,
  driverMark,
  driverWords,
  priceChangeText,
  type CostDriver,
  type Snapshot,
} from '../../engine/index.ts';
import type { CostDriverView, CostDriversView } from '../../protocol/drivers-view.ts';
import { pictureView } from './picture-view.ts';

function driverView(driver: CostDriver, { settings }: Snapshot): CostDriverView {
  const { table, id, occurrence, column, name, text, less, more } = driver;
  const label = columnOf(table, column)?.label ?? column;
  return {
    ...{ table, id, occurrence, column },
    name: `${name}: ${label}`,
    says: text,
    less: priceChangeText(less, settings.currency),
    more: priceChangeText(more, settings.currency),
  };
}

/** The cells that move the price most, with their bars; undefined for a job that did not come to rest. */
export function driversView(
  found: readonly CostDriver[] | undefined,
  snapshot: Snapshot,
): CostDriversView {
  const { currency } = snapshot.settings;
  const drawing = costDriversDrawing(found ?? [], currency);
  const empty = 'No typed figure moves the price of this job yet.';
  const busy = 'The job changed while its cells were tried: ask again when it rests.';
  const message = found === undefined ? busy : found.length === 0 ? empty : '';
  return {
    title: drawing.title,
    message,
    drivers: (found ?? []).map((driver) => driverView(driver, snapshot)),
    drawing: message === '' ? pictureView(drawing) : undefined,
    rows: Object.fromEntries(
      (found ?? []).map((driver) => {
        const { table, id } = driverMark(driver);
        return [`${table}/${id}`, driverWords(driver, currency)] as const;
      }),
    ),
  };
}
