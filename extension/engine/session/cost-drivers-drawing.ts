import type { Drawing, Mark } from '../drawing/drawing.ts';
import { moneyChangeText } from '../estimate/money.ts';
import type { Point } from '../geometry/outline.ts';
import type { CostDriver } from './cost-drivers.ts';

const rowHeight = 15;
const barHeight = 5;
/** Room for the bars, and for the figures beside them. */
const chartWidth = 96;
const figureWidth = 32;

/** A change with its sign: `+12.50 USD`; what has no price says so. */
export function priceChangeText(minor: number | undefined, currency: string): string {
  if (minor === undefined) return 'no price';
  return moneyChangeText(minor, currency);
}

/** The row and column of a driver as marks name them. */
export function driverMark({ table, id, occurrence, column }: CostDriver): {
  readonly table: string;
  readonly id: string;
} {
  return { table, id: `${id}${occurrence === 0 ? '' : `#${String(occurrence)}`}/${column}` };
}

/** The sentence of one driver. */
export function driverWords(driver: CostDriver, currency: string): string {
  const { name, column, text, less, more } = driver;
  const change = (minor: number | undefined): string => priceChangeText(minor, currency);
  return `${name}, ${column} ${text}: 10 % less is ${change(less)}, 10 % more is ${change(more)}.`;
}

function box(from: number, to: number, y: number): readonly Point[] {
  const [bottom, top] = [y - barHeight / 2, y + barHeight / 2];
  return [
    { x: from, y: bottom },
    { x: to, y: bottom },
    { x: to, y: top },
    { x: from, y: top },
  ];
}

/**
 * Bars of how far a tenth less and a tenth more of each cell move the price, the longest first. What
 * less of a cell does is dashed on the screen, so that no bar is told by its colour alone.
 */
export function costDriversDrawing(drivers: readonly CostDriver[], currency: string): Drawing {
  const widest = Math.max(
    1,
    ...drivers.flatMap(({ less = 0, more = 0 }) => [Math.abs(less), Math.abs(more)]),
  );
  const zero = figureWidth + chartWidth / 2;
  const x = (minor: number): number => zero + (minor / widest) * (chartWidth / 2);
  const top = drivers.length * rowHeight;
  const axis: Mark = {
    kind: 'line',
    role: 'axis',
    points: [
      { x: zero, y: 0 },
      { x: zero, y: top },
    ],
    closed: false,
  };
  const marks = drivers.flatMap((driver, index): readonly Mark[] => {
    const y = top - index * rowHeight - 10;
    const row = driverMark(driver);
    const note = (at: Point, text: string, anchor: 'start' | 'end'): Mark => {
      return { kind: 'text', role: 'note', at, text, height: 2.4, anchor };
    };
    const bars = [driver.less, driver.more].flatMap((minor, side): readonly Mark[] => {
      if (minor === undefined || minor === 0) return [];
      const role = side === 0 ? 'skin' : 'part';
      const points = box(zero, x(minor), y);
      const out = minor < 0 ? -1 : 1;
      const at = { x: x(minor) + out * 1.5, y: y - 1.2 };
      return [
        { kind: 'line', role, points, closed: true, filled: true, row },
        note(at, priceChangeText(minor, currency), out < 0 ? 'end' : 'start'),
      ];
    });
    const label = `${driver.name}: ${driver.column} ${driver.text}`;
    const short = label.length > 52 ? `${label.slice(0, 51)}…` : label;
    // The figures stand beside the bars and are no part of what the bars are called.
    return [{ ...note({ x: 0, y: y + 4.2 }, short, 'start'), row }, ...bars];
  });
  return {
    id: 'cost_drivers',
    title: 'What moves the price most: 10 % less and 10 % more of a cell',
    words: drivers.map((driver) => driverWords(driver, currency)),
    box: { left: 0, bottom: 0, right: chartWidth + 2 * figureWidth, top },
    marks: [axis, ...marks],
  };
}
