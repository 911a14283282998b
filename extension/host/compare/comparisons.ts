import * as vscode from 'vscode';
import {
  compareSnapshots,
  openSession,
  type ComparedJobs,
  type Session,
  type Snapshot,
} from '../../engine/index.ts';
import type { CompareView } from '../../protocol/compare-view.ts';
import type { DeskPanel, DeskServices } from '../desk-panel.ts';
import type { JobDesk } from '../job-desk.ts';
import { Settling } from '../settling.ts';
import { compareView } from '../views/compare-view.ts';
import type { Earlier } from './earlier.ts';

/** Somebody who types is not held up by what their typing is compared with. In ms. */
const pauseMs = 300;
/** With more changes than this, each one's own effect would take too long to try. */
const mostTried = 24;

interface Comparison {
  readonly desk: JobDesk;
  readonly earlier: Earlier;
  readonly session: Session;
  /** The earlier version once more, for trying one change at a time. */
  readonly again: Session;
  readonly settling: Settling;
  /** Called when either version has moved on: it is looked at again soon. */
  readonly moved: () => void;
  timer: number;
}

function opened({ text, book, outlines }: Earlier): Session {
  return openSession(text, book, outlines);
}

function changeCount({ settings, rows }: ComparedJobs): number {
  return settings.length + rows.reduce((sum, { cells }) => sum + Math.max(1, cells.length), 0);
}

/** Jobs that are held against another version, kept up while they are edited. */
export class Comparisons {
  readonly #open = new Map<JobDesk, Comparison>();
  readonly #services: DeskServices;

  constructor(services: DeskServices) {
    this.#services = services;
  }

  start(desk: JobDesk, earlier: Earlier): void {
    this.stop(desk);
    const session = opened(earlier);
    const settling = new Settling(this.#services, {
      snapshot: () => session.snapshot(),
      settle: (replies) => {
        session.settle(replies);
        moved();
      },
    });
    const moved = (): void => {
      this.#soon(comparison);
    };
    const again = opened(earlier);
    const comparison: Comparison = { desk, earlier, session, again, settling, moved, timer: 0 };
    this.#open.set(desk, comparison);
    desk.hearers.add(moved);
    settling.look();
    this.#tell();
    this.#refresh(comparison);
  }

  stop(desk: JobDesk): void {
    const comparison = this.#open.get(desk);
    if (comparison === undefined) return;
    this.#open.delete(desk);
    desk.hearers.delete(comparison.moved);
    clearTimeout(comparison.timer);
    comparison.settling.dispose();
    this.#tell();
    for (const panel of desk.panels) panel.post({ type: 'compare', view: undefined });
  }

  /** A grid has opened: it is told at once. */
  greet(desk: JobDesk, panel: DeskPanel): void {
    const comparison = this.#open.get(desk);
    if (comparison !== undefined) panel.post({ type: 'compare', view: this.#view(comparison) });
  }

  dispose(): void {
    for (const desk of [...this.#open.keys()]) this.stop(desk);
  }

  #soon(comparison: Comparison): void {
    clearTimeout(comparison.timer);
    comparison.timer = setTimeout(() => {
      this.#refresh(comparison);
    }, pauseMs);
  }

  #refresh(comparison: Comparison): void {
    const { desk } = comparison;
    if (desk.panels.size === 0) {
      this.stop(desk);
      return;
    }
    const view = this.#view(comparison);
    for (const panel of desk.panels) if (panel.ready) panel.post({ type: 'compare', view });
  }

  #view(comparison: Comparison): CompareView {
    const { desk, earlier, session, again } = comparison;
    const { against } = earlier;
    const [before, after] = [session.snapshot(), desk.snapshot()];
    const quick = compareSnapshots(before, after);
    if (!quick.ok) {
      const note = quick.problem.message;
      return { against, note, figures: [], changes: [], followers: [] };
    }
    const few = changeCount(quick.value) <= mostTried;
    const tried = few ? compareSnapshots(before, after, again) : quick;
    const found = tried.ok ? tried.value : quick.value;
    return compareView(found, { against, note: noteOf(comparison, after) }, after.settings);
  }

  #tell(): void {
    const any = this.#open.size > 0;
    void vscode.commands.executeCommand('setContext', 'panelwright.comparing', any);
  }
}

function isSettling({ session, desk }: Comparison): boolean {
  return session.snapshot().heavy.length > 0 || desk.snapshot().heavy.length > 0;
}

function noteOf(comparison: Comparison, after: Snapshot): string {
  if (isSettling(comparison))
    return 'Layouts and skins are still being worked out; figures may move.';
  const states = [comparison.session.snapshot().price.state, after.price.state];
  return states.includes('incomplete')
    ? 'A version lacks figures, so what the change came to is not the whole.'
    : '';
}
