import type { Money, SessionChange } from '../engine/index.ts';
import type { ToWebview } from '../protocol/messages.ts';
import type { KnobView } from '../protocol/views.ts';
import type { Cause, DeskPanel } from './desk-panel.ts';
import { patchOf, totalsOf, type Patch } from './views/patch.ts';
import type { SheetContext } from './views/sheet-context.ts';

/** How long all else that an edit moved waits behind its totals, so that these are painted first; in ms. */
const pause = 20;

export interface TellingParts {
  readonly post: (message: (panel: DeskPanel) => ToWebview) => void;
  readonly now: () => {
    readonly context: SheetContext;
    readonly baseline: Money;
    readonly knobs: readonly KnobView[];
    readonly revision: number;
  };
  /** Called once the grids know everything, with what they knew before. */
  readonly told: (before: SheetContext) => void;
}

/** Tells the grids of one job what changed: the totals of a typed cell at once, the rest behind them. */
export class Telling {
  readonly #parts: TellingParts;
  /** What the grids know. */
  #known: SheetContext;
  /** What they have not been told of. */
  #waiting: SessionChange | undefined;
  #timer = 0;

  constructor(known: SheetContext, parts: TellingParts) {
    this.#known = known;
    this.#parts = parts;
  }

  /** The job as it is now has come from what the grids know by this change, and others that wait. */
  tell(change: SessionChange, cause: Cause): void {
    const alone = this.#waiting === undefined;
    const all = both(this.#waiting, change);
    const { context: after, ...now } = this.#parts.now();
    const parts = { before: this.#known, after, change: all, ...now };
    const totals = totalsOf(parts, cause.typed);
    if (totals === undefined) {
      this.#post(patchOf(parts), cause);
      this.knowsAll();
      return;
    }
    this.#post(totals.patch, cause);
    this.#waiting = all;
    clearTimeout(this.#timer);
    // Rows told with the totals of an earlier edit may have moved since.
    const rows = alone ? totals.rows : new Set<string>();
    this.#timer = setTimeout(() => {
      this.#rest(rows);
    }, pause);
  }

  /** Everything has been sent: nothing waits any more. */
  knowsAll(): void {
    const before = this.#known;
    this.dispose();
    this.#waiting = undefined;
    this.#known = this.#parts.now().context;
    this.#parts.told(before);
  }

  dispose(): void {
    clearTimeout(this.#timer);
  }

  #rest(told: ReadonlySet<string>): void {
    const { context: after, ...now } = this.#parts.now();
    const change = this.#waiting;
    if (change === undefined) return;
    const parts = { before: this.#known, after, change, told, ...now };
    this.#post({ ...patchOf(parts), part: 'rest' }, undefined);
    this.knowsAll();
  }

  #post(patch: Omit<Patch, 'cause'>, cause: Cause | undefined): void {
    this.#parts.post((panel) => ({
      ...patch,
      cause: panel === cause?.panel ? cause.request : undefined,
    }));
  }
}

function both(one: SessionChange | undefined, two: SessionChange): SessionChange {
  if (one === undefined) return two;
  return {
    rows: new Set([...one.rows, ...two.rows]),
    structure: one.structure || two.structure,
    whole: one.whole || two.whole,
  };
}
