import type { Book } from '../book/book.ts';
import type { FunctionContext, HeavyAnswers } from '../formula/catalogue.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { OutlineSource } from '../geometry/outline-files.ts';
import { readQuantity } from '../units/read-quantity.ts';

/** What is brought to a job from outside its own text and book. */
export interface Brought {
  readonly outlines?: OutlineSource;
  readonly heavy?: HeavyAnswers;
}

/** What functions may ask of the job: its settings, its outlines, the charts of its book in base units. */
export function functionContext(
  settings: UnitSettings,
  book: Book,
  { outlines, heavy }: Brought,
): FunctionContext {
  const charts = new Map<string, ReturnType<FunctionContext['chart']>>();
  const base = (text: string, otherwise: number): number => {
    const read = readQuantity(text, { settings, wanted: 'any' });
    return read.ok ? read.value.value.base : otherwise;
  };
  return {
    settings,
    ...(outlines === undefined ? {} : { outlines }),
    ...(heavy === undefined ? {} : { heavy }),
    chart: (name) => {
      const known = charts.get(name);
      if (known !== undefined) return known;
      const bands = book.bands
        .filter((band) => band.chart === name)
        .map((band) => ({
          // A band without an edge goes on for ever on that side.
          from: band.from === '' ? -Infinity : base(band.from, NaN),
          to: band.to === '' ? Infinity : base(band.to, NaN),
          value: base(band.value, NaN),
        }))
        .filter(({ from, to, value }) => !Number.isNaN(from + value) && !Number.isNaN(to))
        .sort((a, b) => a.from - b.from);
      charts.set(name, bands);
      return bands;
    },
  };
}
