import { differingPlaces, renewedList } from '../units/renewed-list.ts';
import { sameList } from '../units/same-list.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { isSameRow } from '../workbook/row-view.ts';

/** What was worked out of one row. */
export interface KeptRow {
  /** Rows that were looked at for it, as `table/id`, whether they were there or not. */
  readonly looked: readonly string[];
}

/** What is kept of the rows of a table. */
export interface RowsKept<Kept> {
  readonly kept: readonly Kept[];
  /** Places at which another thing is kept than before; undefined where rows came, went or moved. */
  readonly changed: readonly number[] | undefined;
}

/** Works a row out; `before` is what was made of it, or of what it said before, where there is such. */
export type WorkRow<Kept> = (row: AnsweredRow, before: Kept | undefined) => Kept;

/** Keeps what was worked out of rows, in their order. */
export interface RowKeeper<Kept> {
  /**
   * Works out the rows that are others now, and those that looked at one of the `moved` rows
   * (`table/id`); all others are not looked at.
   */
  readonly update: (
    rows: readonly AnsweredRow[],
    moved: ReadonlySet<string>,
    work: WorkRow<Kept>,
  ) => RowsKept<Kept>;
}

/** Places of rows that are other objects than before; undefined where the rows are not the same ones. */
function placesOfOthers(
  before: readonly AnsweredRow[],
  now: readonly AnsweredRow[],
): readonly number[] | undefined {
  const places = differingPlaces(before, now);
  const same = places?.every((place) => {
    const old = before[place];
    return old !== undefined && isSameRow(old, now[place]);
  });
  return same === true ? places : undefined;
}

/** Who looked at which row. */
class Lookers {
  private readonly places = new Map<string, Set<number>>();

  constructor(kept: readonly KeptRow[]) {
    kept.forEach(({ looked }, place) => {
      this.add(place, looked);
    });
  }

  at(key: string): Iterable<number> {
    return this.places.get(key) ?? [];
  }

  renew(place: number, before: readonly string[], now: readonly string[]): void {
    if (sameList(before, now)) return;
    for (const key of before) this.places.get(key)?.delete(place);
    this.add(place, now);
  }

  private add(place: number, looked: readonly string[]): void {
    for (const key of looked) {
      const known = this.places.get(key);
      if (known === undefined) this.places.set(key, new Set([place]));
      else known.add(place);
    }
  }
}

/** Tells the rows whose blocks can be read: the same list where that is all of them. */
export function openUnbroken(): (rows: readonly AnsweredRow[]) => readonly AnsweredRow[] {
  const isBroken = ({ broken }: AnsweredRow): boolean => broken;
  let whole: readonly AnsweredRow[] = [];
  return (rows) => {
    const places = differingPlaces(whole, rows);
    const broken = places?.some((place) => rows[place]?.broken) ?? rows.some(isBroken);
    if (!broken) return (whole = rows);
    return rows.filter((row) => !isBroken(row));
  };
}

/** Opens a keeper of rows that has seen none yet. */
export function openRowKeeper<Kept extends KeptRow>(): RowKeeper<Kept> {
  let rows: readonly AnsweredRow[] = [];
  let kept: readonly Kept[] = [];
  let lookers: Lookers | undefined;

  function inPlace(
    now: readonly AnsweredRow[],
    stale: Iterable<number>,
    work: WorkRow<Kept>,
  ): RowsKept<Kept> {
    const renewed = new Map<number, Kept>();
    for (const place of stale) {
      const [row, before] = [now[place], kept[place]];
      if (row === undefined || before === undefined) continue;
      const fresh = work(row, before);
      if (fresh === before) continue;
      renewed.set(place, fresh);
      lookers?.renew(place, before.looked, fresh.looked);
    }
    if (renewed.size > 0) kept = renewedList(kept, renewed);
    return { kept, changed: [...renewed.keys()] };
  }

  function anew(
    now: readonly AnsweredRow[],
    moved: ReadonlySet<string>,
    work: WorkRow<Kept>,
  ): RowsKept<Kept> {
    const known = new Map(rows.map((row, place) => [row, kept[place]]));
    kept = now.map((row) => {
      const before = known.get(row);
      const stands = before !== undefined && !before.looked.some((key) => moved.has(key));
      return stands ? before : work(row, before);
    });
    lookers = undefined;
    return { kept, changed: undefined };
  }

  return {
    update: (now, moved, work) => {
      const differing = placesOfOthers(rows, now);
      let result: RowsKept<Kept>;
      if (differing === undefined) result = anew(now, moved, work);
      else {
        lookers ??= new Lookers(kept);
        const stale = new Set(differing);
        for (const key of moved) for (const place of lookers.at(key)) stale.add(place);
        result = inPlace(now, stale, work);
      }
      rows = now;
      return result;
    },
  };
}
