import type { RowAddress } from '../../extension/protocol/messages.ts';
import { MixPane } from './mix.ts';
import type { PanelHooks } from './panel.ts';
import { SchedulePane } from './schedule.ts';

/** Mix plan and schedule: what the bench goes by. */
export class Plans {
  readonly #mix: MixPane;
  readonly #schedule: SchedulePane;

  constructor(hooks: PanelHooks) {
    this.#mix = new MixPane(hooks.ask);
    this.#schedule = new SchedulePane(hooks);
  }

  get roots(): { readonly mix: HTMLElement; readonly schedule: HTMLElement } {
    return { mix: this.#mix.root, schedule: this.#schedule.root };
  }

  /** Something in the job changed. */
  stale(): void {
    for (const one of [this.#mix, this.#schedule]) one.stale();
  }

  /** The pane that is looked at; empty where none is. */
  seen(shown: string): void {
    this.#mix.seen(shown === 'mix');
    this.#schedule.seen(shown === 'schedule');
  }

  /** The cursor of the grid is on this row. */
  select(row: RowAddress | undefined): void {
    this.#schedule.select(row);
  }
}
