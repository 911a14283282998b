import type { RowAddress } from '../../extension/protocol/messages.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Whole } from '../whole.ts';
import { ActualsPane } from './actuals.ts';
import { MixPane } from './mix.ts';
import { OptionsPane } from './options.ts';
import type { PanelHooks } from './panel.ts';
import { PricePane } from './price.ts';
import { SchedulePane } from './schedule.ts';

/** Panes whose figures are asked for only while they are looked at: the price, what the bench goes by, and what else the job may be. */
export class Plans {
  readonly #panes: {
    readonly price: PricePane;
    readonly options: OptionsPane;
    readonly mix: MixPane;
    readonly schedule: SchedulePane;
    readonly actuals: ActualsPane;
  };

  constructor(hooks: PanelHooks, { app, popup }: { readonly app: Whole; readonly popup: Popup }) {
    const actualHooks = {
      ask: hooks.ask,
      popup,
      editable: () => app.state.editable,
      type: app.edits.type.bind(app.edits),
      backToGrid: app.focusGrid.bind(app),
    };
    this.#panes = {
      price: new PricePane(hooks.ask, app.goTo.bind(app)),
      options: new OptionsPane(hooks.ask),
      mix: new MixPane(hooks.ask),
      schedule: new SchedulePane(hooks),
      actuals: new ActualsPane(actualHooks),
    };
  }

  get roots(): Readonly<Record<'price' | 'options' | 'mix' | 'schedule' | 'actuals', HTMLElement>> {
    const { price, options, mix, schedule, actuals } = this.#panes;
    return {
      price: price.root,
      options: options.root,
      mix: mix.root,
      schedule: schedule.root,
      actuals: actuals.root,
    };
  }

  /** Something in the job changed. */
  stale(): void {
    for (const one of Object.values(this.#panes)) one.stale();
  }

  /** The pane that is looked at; empty where none is. */
  seen(shown: string): void {
    for (const [key, pane] of Object.entries(this.#panes)) pane.seen(shown === key);
  }

  /** The cursor of the grid is on this row. */
  select(row: RowAddress | undefined): void {
    this.#panes.schedule.select(row);
  }
}
