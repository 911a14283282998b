import type { FiguresCommand } from './figures-arguments.ts';

/** Help of options, actuals and workbooks. */
export const figuresUses: Readonly<
  Record<FiguresCommand, { readonly use: string; readonly help: string }>
> = {
  options: {
    use: 'panelwright options FILE [--json] | --accept ID [--write]',
    help: `Holds the options of a job side by side: price, hours, weight and checks of each.
  --json    for programs
  --accept  makes the option with this id the job: its cells are written and it is an option no more
  --write   writes the job; else it is only shown`,
  },
  actuals: {
    use: 'panelwright actuals FILE... [--json]',
    help: `Holds what jobs took (actual of tasks, used of parts) against what was estimated.
  --json   for programs`,
  },
  rates: {
    use: 'panelwright rates BOOK JOB... [--write]',
    help: `Proposes rates and wastes for a shop book from what jobs took: the median of at least three jobs,
with the lowest and the highest.
  --write  writes the book; else it is only shown`,
  },
  xlsx: {
    use: 'panelwright xlsx FILE --out FILE.xlsx',
    help: `Writes all sheets of a job as a workbook, with formulas for sums and charges.
  --out    the file it is written to`,
  },
};
