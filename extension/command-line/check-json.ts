import { showQuantity, type Check } from '../engine/index.ts';
import type { ReadJob } from './job.ts';
import { steady } from './steady.ts';

/** A check as programs read it; docs/command-line.md describes it. */
export function checkJson(check: Check, { snapshot }: ReadJob): object {
  const figure = (key: 'value' | 'least' | 'most' | 'margin'): object | null => {
    const quantity = check[key];
    if (quantity === undefined) return null;
    const unit = snapshot.book.kinds.get(check.kind)?.words;
    const { text } = showQuantity(quantity, snapshot.settings, unit);
    return { base: steady(quantity.base), text };
  };
  return {
    id: check.id,
    name: check.name,
    kind: check.kind,
    row: check.on,
    level: check.level,
    outcome: check.outcome,
    value: figure('value'),
    least: figure('least'),
    most: figure('most'),
    margin: figure('margin'),
    message: check.message,
  };
}
