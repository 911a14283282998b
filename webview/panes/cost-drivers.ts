import type { CostDriversView, CostDriverView } from '../../extension/protocol/drivers-view.ts';
import type { CellAddress } from '../../extension/protocol/messages.ts';
import { rowAddress } from '../addresses.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { ownButton } from '../form.ts';
import { StillPicture } from '../pictures/still-picture.ts';
import type { Ask } from '../suggest/suggester.ts';

/** A cell of `charge/hours/rate`. */
function cellOf(name: string): CellAddress {
  const [table = '', key = '', column = ''] = name.split('/');
  return { ...rowAddress(table, key), column };
}

/** What moves the price most, worked out when it is asked for and marked when the job has changed since. */
export class CostDrivers {
  readonly root: HTMLElement;
  readonly #ask: Ask;
  readonly #state = element('p', { class: 'small', attributes: { role: 'status' } });
  readonly #picture: StillPicture;
  readonly #list = element('ol', { class: 'panel-words' });
  readonly #told: HTMLElement;
  #asked = 0;
  #shown = false;

  constructor(ask: Ask, goTo: (cell: CellAddress) => void) {
    this.#ask = ask;
    this.#picture = new StillPicture((name) => {
      goTo(cellOf(name));
    });
    this.#told = element(
      'details',
      { class: 'panel-told', attributes: { hidden: '' } },
      element('summary', { text: 'In words' }),
      this.#list,
    );
    this.root = element(
      'section',
      { class: 'cost-drivers', attributes: { 'aria-label': 'What moves the price most' } },
      ownButton('What moves the price most?', () => void this.#work()),
      this.#state,
      this.#picture.root,
      this.#told,
    );
    this.#picture.root.hidden = true;
  }

  /** The price changed: what is shown is of an earlier one. */
  stale(): void {
    if (!this.#shown) return;
    this.root.classList.add('stale');
    setText(this.#state, 'The job has changed since: ask again.');
  }

  async #work(): Promise<void> {
    const asked = (this.#asked += 1);
    setText(this.#state, 'Trying each figure a tenth lower and a tenth higher…');
    const view = await this.#ask({ ask: 'cost-drivers' });
    if (asked !== this.#asked || view === undefined) return;
    this.#paint(view);
  }

  #paint(view: CostDriversView): void {
    this.#shown = true;
    this.root.classList.remove('stale');
    setText(this.#state, view.message === '' ? view.title : view.message);
    this.#picture.paint(view);
    this.#told.hidden = view.drivers.length === 0;
    keyedChildren(this.#list, view.drivers, {
      key: ({ table, id, occurrence, column }) => `${table}/${id}#${String(occurrence)}/${column}`,
      make: () => element('li'),
      paint: (line, driver) => {
        setText(line, words(driver));
      },
    });
  }
}

function words({ name, says, less, more }: CostDriverView): string {
  return `${name}, ${says}: 10 % less is ${less}, 10 % more is ${more}.`;
}
