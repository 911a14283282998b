import type { LaidTaskView, ScheduleView } from '../../extension/protocol/schedule-view.ts';
import type { RowAddress } from '../../extension/protocol/messages.ts';
import { rowKey, rowNamed } from '../addresses.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { button } from '../form.ts';
import { StillPicture } from '../pictures/still-picture.ts';
import { Asking } from './asking.ts';
import { goButton, paintCells, paintFacts, paintNotes, twoCells } from './lines.ts';
import type { PanelHooks } from './panel.ts';

function makeTask({ id, occurrence }: LaidTaskView): HTMLElement {
  return twoCells(goButton('task', id, occurrence));
}

/** The job laid over the shop's hours: first and last day, bars, and when each task begins and ends. */
export class SchedulePane {
  readonly root: HTMLElement;
  readonly #asking: Asking<ScheduleView>;
  readonly #facts = element('dl', { class: 'price-facts' });
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #picture: StillPicture;
  readonly #tasks = element('ul', { class: 'price-list', attributes: { 'aria-label': 'Tasks' } });
  readonly #notes = element('ul', { class: 'pane-notes' });

  constructor({ ask, choose }: Pick<PanelHooks, 'ask' | 'choose'>) {
    this.#picture = new StillPicture((row) => {
      choose(rowNamed(row));
    });
    this.root = element(
      'div',
      { class: 'price-pane schedule-pane' },
      element(
        'div',
        { class: 'pane-buttons' },
        button({ action: 'set-start', text: 'Set first day…' }),
        button({
          action: 'insert-kit',
          argument: 'shop_hours',
          text: 'Enter shop hours…',
          title: 'Writes when this shop works into the job’s constants',
        }),
      ),
      this.#facts,
      this.#message,
      this.#picture.root,
      this.#notes,
      this.#tasks,
    );
    this.#asking = new Asking({
      root: this.root,
      ask: () => ask({ ask: 'schedule' }),
      paint: (view) => {
        this.#paint(view);
      },
    });
  }

  seen(seen: boolean): void {
    this.#asking.seen(seen);
  }

  stale(): void {
    this.#asking.stale();
  }

  /** The cursor of the grid is on this row: its bars stand out. */
  select(row: RowAddress | undefined): void {
    this.#picture.select(row === undefined ? '' : `${row.table}/${rowKey(row)}`);
  }

  #paint(view: ScheduleView): void {
    paintFacts(this.#facts, view.facts);
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    this.#picture.paint(view);
    paintNotes(this.#notes, view.notes);
    keyedChildren(this.#tasks, view.tasks, {
      key: ({ id, occurrence }) => `${id}#${String(occurrence)}`,
      make: makeTask,
      paint: (line, { name, when, takes, note }) => {
        paintCells(line, [name, note === '' ? when : `${when}. ${note}`, takes]);
        line.classList.toggle('price-open', note !== '');
      },
    });
  }
}
