import type { HeadlineFigure, HeadlineView } from './views.ts';

/** Figures that are told behind the totals: what was checked, and what needs a look. */
const toldBehind: readonly HeadlineFigure['key'][] = ['checks', 'problems'];

/** A headline whose totals have moved on, with the figures that are told behind them as they were. */
export function headlineWithTotals(before: HeadlineView, totals: HeadlineView): HeadlineView {
  const others = before.figures.filter(({ key }) => toldBehind.includes(key));
  return { ...totals, figures: [...totals.figures, ...others] };
}
