import type { Problem } from '../problems.ts';
import { differingPlaces } from '../units/renewed-list.ts';
import type { WorkedRow } from './outcomes.ts';
import type { OwnCost } from './own-cost.ts';
import type { RowOutcome } from './row-outcome.ts';

/** What the rows of the parts come to together beside what they ask for. */
export interface PartTally {
  /** Needs that no line stands for. */
  readonly loose: number;
  readonly problems: readonly Problem[];
  /** Costs of rows that have a price of their own. */
  readonly own: readonly OwnCost[];
}

type Rows = readonly Pick<WorkedRow, 'outcome'>[];

/** Marks of rows, so that most of thousands need not be looked at. */
class Marks {
  readonly loose: Int32Array;
  readonly troubled: Uint8Array;
  readonly own: Uint8Array;

  constructor(count: number) {
    this.loose = new Int32Array(count);
    this.troubled = new Uint8Array(count);
    this.own = new Uint8Array(count);
  }

  put(place: number, { loose, problems, own }: RowOutcome): void {
    this.loose[place] = loose;
    this.troubled[place] = Number(problems.length > 0);
    this.own[place] = Number(own !== undefined);
  }
}

/** Opens a tally of rows that are brought again and again. */
export function openPartTally(): (rows: Rows) => PartTally {
  let last: Rows = [];
  let marks = new Marks(0);

  function outcomes(at: Uint8Array): readonly RowOutcome[] {
    const found: RowOutcome[] = [];
    at.forEach((mark, place) => {
      const outcome = mark === 1 ? last[place]?.outcome : undefined;
      if (outcome !== undefined) found.push(outcome);
    });
    return found;
  }

  return (rows) => {
    const places = differingPlaces(last, rows);
    if (places === undefined) marks = new Marks(rows.length);
    for (const place of places ?? rows.keys()) {
      const row = rows[place];
      if (row !== undefined) marks.put(place, row.outcome);
    }
    last = rows;
    return {
      loose: marks.loose.reduce((sum, loose) => sum + loose, 0),
      problems: outcomes(marks.troubled).flatMap(({ problems }) => problems),
      own: outcomes(marks.own).flatMap(({ own }) => own ?? []),
    };
  };
}
