import type { CompareView } from '../extension/protocol/compare-view.ts';
import type { FromWebview } from '../extension/protocol/messages.ts';
import type { JobView } from '../extension/protocol/views.ts';
import { rowKey, sameRow } from './addresses.ts';
import type { Actions } from './actions.ts';
import type { Whole } from './whole.ts';
import { element, setAttribute, setHidden } from './dom.ts';
import { button } from './form.ts';
import type { PageParts } from './page.ts';
import { Banner } from './panes/banner.ts';
import { BillPane } from './panes/bill.ts';
import { CardPane } from './panes/card.ts';
import { cautionsKept, type CautionsPane } from './panes/cautions.ts';
import { ChecksPane } from './panes/checks.ts';
import { ComparePane } from './panes/compare.ts';
import { CutPane } from './panes/cut.ts';
import { EmptyPage } from './panes/empty-page.ts';
import { FindBar } from './panes/find-bar.ts';
import { FormulaBar } from './panes/formula-bar.ts';
import { Headline } from './panes/headline.ts';
import { Knobs } from './panes/knobs.ts';
import { Notice } from './panes/notice.ts';
import { paneTabs, sheetTabs, shownPane, withCompare } from './panes/pane-tabs.ts';
import { PanelPane } from './panes/panel.ts';
import { pictureHooks } from './panes/picture-hooks.ts';
import { Plans } from './panes/plans.ts';
import { ProblemsPane } from './panes/problems.ts';
import { StatusLine } from './panes/status-line.ts';
import { Tabs } from './panes/tabs.ts';
import type { Changes } from './state.ts';
import type { Popup } from './suggest/popup.ts';
import type { Ask } from './suggest/suggester.ts';
import type { ViewMemory } from './view-state.ts';

// The card waits until the cursor rests: nobody reads it while moving.
const cardDelayMs = 40;

export interface PanesParts {
  readonly app: Whole;
  readonly popup: Popup;
  readonly ask: Ask;
  readonly memory: ViewMemory;
  readonly actions: Actions;
  readonly post: (message: FromWebview) => void;
}

/** Everything around the grid, painted from the same state. */
export class Panes {
  readonly notice = new Notice();
  readonly status = new StatusLine();
  readonly find: FindBar;
  readonly problems = new ProblemsPane();
  readonly #checks = new ChecksPane();
  readonly compare = new ComparePane();
  readonly panel: PanelPane;
  readonly cut: CutPane;
  readonly card: CardPane;
  readonly #parts: PanesParts;
  readonly #headline = new Headline();
  readonly #knobs = new Knobs();
  readonly #banner = new Banner();
  readonly #bill = new BillPane();
  readonly #plans: Plans;
  readonly #cautions: CautionsPane;
  readonly #emptyPage = new EmptyPage();
  readonly #emptySheet = element('div', { class: 'empty-sheet', attributes: { hidden: '' } });
  readonly #bar: FormulaBar;
  readonly #sheetTabs: Tabs;
  readonly #paneTabs: Tabs;
  #cardTimer: ReturnType<typeof setTimeout> | undefined;
  #cardAsked = 0;
  #blank = false;

  constructor(parts: PanesParts) {
    this.#parts = parts;
    const { app, popup, ask, actions } = parts;
    this.find = new FindBar(app);
    const hooks = pictureHooks(parts, this.status);
    this.panel = new PanelPane(hooks);
    this.cut = new CutPane(hooks);
    this.#plans = new Plans(hooks, parts);
    this.#cautions = cautionsKept(parts.memory);
    this.#bill.root.append(this.#cautions.root);
    this.#bar = new FormulaBar(
      {
        target: () => app.grid.target(),
        view: () => app.grid.activeView,
        begun: () => {
          app.grid.hint.hide();
        },
        commit: (cell, text, end) => {
          actions.commit(cell, text, app.typedText(cell));
          if (end === 'blur') return;
          app.focusGrid();
          app.grid.moveAfter(end === 'shift-enter' ? 'up' : 'down');
        },
        cancelled: app.focusGrid.bind(app),
      },
      { popup, ask },
    );
    this.card = new CardPane(
      {
        editable: () => app.state.editable,
        commit: ({ cell }, text) => {
          actions.commit(cell, text, '\u0000');
        },
        afterwards: app.afterwards.bind(app),
        backToGrid: app.focusGrid.bind(app),
      },
      { popup, ask },
    );
    this.#sheetTabs = new Tabs({
      label: 'Sheets',
      data: 'sheet',
      panel: 'sheet',
      choose: (table) => {
        app.showSheet(table, 'leave');
      },
    });
    this.#paneTabs = new Tabs({
      label: 'Bill, checks, pictures and problems',
      data: 'pane',
      panel: 'panes',
      choose: this.showPane.bind(this),
    });
  }

  pageParts(popup: HTMLElement): PageParts {
    return {
      headline: this.#headline.root,
      knobs: this.#knobs.root,
      banner: this.#banner.root,
      sheetTabs: this.#sheetTabs,
      formulaBar: this.#bar.root,
      notice: this.notice.root,
      find: this.find.root,
      grid: this.#parts.app.grid.root,
      emptyPage: this.#emptyPage.root,
      emptySheet: this.#emptySheet,
      card: this.card.root,
      paneTabs: this.#paneTabs,
      panes: {
        bill: this.#bill.root,
        checks: this.#checks.root,
        panel: this.panel.root,
        cut: this.cut.root,
        ...this.#plans.roots,
        problems: this.problems.root,
        compare: this.compare.root,
      },
      status: this.status.root,
      popup,
    };
  }

  /** The figures that a typed cell moves first; all else follows. */
  paintTotals(): void {
    const { job } = this.#parts.app.state;
    if (job !== undefined) this.#headline.paint(job.headline);
  }

  paint(changes: Changes): void {
    const { job } = this.#parts.app.state;
    if (job === undefined) return;
    if (changes.headline) this.#headline.paint(job.headline);
    if (changes.knobs) this.#knobs.paint(job.knobs);
    if (changes.bill) {
      this.#bill.paint(job.bill);
      this.#cautions.paint(job.bill.cautions);
    }
    this.#paintTold(changes, job);
    if (changes.job) {
      this.#banner.paint(job);
      this.#emptyPage.paint(job);
      if (job.state !== 'empty') this.#blank = false;
    }
    if (changes.job || changes.checks || changes.problems || changes.tables.size > 0)
      this.#paintTabs();
    this.#paintEmpty();
    this.#refreshCard();
  }

  #paintTold(changes: Changes, { checks, problems }: JobView): void {
    if (changes.checks) this.#checks.paint(checks);
    if (changes.problems) this.problems.paint(problems);
    if (changes.job || changes.tables.size > 0) this.panel.stale();
    if (changes.bill) this.cut.stale();
    if (changes.job || changes.tables.size > 0 || changes.bill) this.#plans.stale();
  }

  /** The job is held against another version: its pane comes forward the first time. */
  compared(view: CompareView | undefined): void {
    const isNew = this.compare.view === undefined && view !== undefined;
    this.compare.paint(view);
    if (isNew) this.showPane('compare');
    else this.#paintTabs();
    this.cursorChanged();
  }

  sheetChanged(): void {
    this.#paintTabs();
    this.#paintEmpty();
    this.find.refresh();
    this.cursorChanged();
  }

  /** The cursor moved, or what is under it changed. */
  cursorChanged(): void {
    const { grid } = this.#parts.app;
    this.#bar.paint(grid.activeCell);
    for (const one of [this.panel, this.cut, this.#plans]) one.select(grid.activeRow);
    if (!sameRow(this.card.view, grid.activeRow)) this.#refreshCard();
  }

  typing(text: string | undefined): void {
    if (text === undefined) this.#bar.paint(this.#parts.app.grid.activeCell);
    else this.#bar.mirror(text);
  }

  handOver(text: string): boolean {
    if (this.#parts.app.grid.target() === undefined) return false;
    this.#bar.takeOver(text);
    return true;
  }

  startBlank(): void {
    this.#blank = true;
    this.#paintEmpty();
    this.#parts.app.focusGrid();
  }

  /** The card has no place of its own: it shares one with the bill. */
  get narrow(): boolean {
    return window.matchMedia('(max-width: 760px)').matches;
  }

  showPane(pane: string): void {
    this.#parts.memory.change({ pane });
    this.#paintTabs();
  }

  #paintTabs(): void {
    const { app, memory } = this.#parts;
    const { job } = app.state;
    if (job === undefined) return;
    const wrong = new Set(
      job.problems.filter((one) => one.severity === 'error').map((one) => one.table),
    );
    this.#sheetTabs.paint(sheetTabs(job, wrong), app.grid.table);
    const { view } = this.compare;
    const shown = shownPane(memory.now.pane, job.form, view);
    const causes = job.problems.filter((one) => !one.follows);
    const tabs = paneTabs(job.checks, causes.length, wrong.size > 0, job.form);
    this.#paneTabs.paint(withCompare(tabs, view), shown);
    app.root.querySelector('.aside')?.setAttribute('data-shows', shown);
    app.root.dataset['form'] = job.form;
    app.root.classList.toggle('large-picture', shown === 'panel' && memory.now.panelLarge);
    const seen = memory.now.asideShown ? shown : '';
    this.panel.seen(seen === 'panel');
    this.cut.seen(seen === 'cut');
    this.#plans.seen(seen);
    const panel = app.root.querySelector('#sheet');
    if (panel !== null) setAttribute(panel, 'aria-labelledby', `sheet-tab-${app.grid.table}`);
  }

  #paintEmpty(): void {
    const { app } = this.#parts;
    const { job } = app.state;
    const offersKits = job?.state === 'empty' && !this.#blank;
    setHidden(this.#emptyPage.root, !offersKits);
    const sheet = app.state.sheet(app.grid.table);
    const bare = sheet?.order.length === 0;
    setHidden(app.grid.root, offersKits);
    setHidden(this.#emptySheet, offersKits || !bare);
    if (!bare || offersKits || this.#emptySheet.dataset['table'] === sheet.table) return;
    this.#emptySheet.dataset['table'] = sheet.table;
    this.#emptySheet.replaceChildren(
      element('p', { text: `No ${sheet.noun} yet.` }),
      button({ action: 'insert-row', text: `Insert ${sheet.noun}`, icon: 'add' }),
    );
  }

  #refreshCard(): void {
    clearTimeout(this.#cardTimer);
    this.#cardTimer = setTimeout(() => void this.#askCard(), cardDelayMs);
  }

  async #askCard(): Promise<void> {
    const { app, ask, memory } = this.#parts;
    if (!memory.now.asideShown) return;
    const row = app.grid.activeRow;
    const asked = (this.#cardAsked += 1);
    if (row === undefined || app.state.row(row.table, rowKey(row)) === undefined) {
      this.card.paint(undefined);
      return;
    }
    const view = await ask({ ask: 'card', row });
    if (asked === this.#cardAsked) this.card.paint(view);
  }
}
