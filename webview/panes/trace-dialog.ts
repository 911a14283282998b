import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { TraceView, TraceWish } from '../../extension/protocol/trace-view.ts';
import { openDialog, type Dialog } from '../dialogs.ts';
import { element } from '../dom.ts';
import { choiceField, fieldValue, setDisabled, textField } from '../form.ts';
import { fitted } from '../pictures/fit.ts';
import { drawn, drawnGroups } from '../pictures/marks.ts';
import type { Ask } from '../suggest/suggester.ts';

const previewDelayMs = 120;

/** Size of the preview in pixels. */
const previewSize = { width: 420, height: 260 };
const previewMargins = { left: 10, right: 10, top: 10, bottom: 10 };

const modes = [
  { value: 'points', label: 'x and y of points, round the outline', detail: '' },
  { value: 'stations', label: 'offsets from a straight edge, at stations along it', detail: '' },
];

const lines = [
  { value: 'corners', label: 'straight from point to point', detail: '' },
  { value: 'smooth', label: 'smooth, but for lines that end in “corner”', detail: '' },
];

/** An outline that a person agreed to. */
export interface TraceAgreed {
  readonly wish: TraceWish;
  readonly name: string;
}

/** Asks for measured points and shows the outline they make; undefined if put off. */
export async function askTrace(ask: Ask, cell: CellAddress): Promise<TraceAgreed | undefined> {
  return new TraceForm(ask, cell).agreed();
}

class TraceForm {
  readonly #ask: Ask;
  readonly #list = element('textarea', {
    class: 'input trace-list',
    attributes: {
      'aria-label': 'Measured points, a line each',
      rows: '10',
      spellcheck: 'false',
      placeholder: '0, 0, corner\n24, 0, corner\n26, 9\n12, 15\n0, 11',
    },
  });
  readonly #mode = choiceField({ name: 'mode', label: 'The lines are', value: 'points' }, modes);
  readonly #line = choiceField({ name: 'line', label: 'Drawn', value: 'corners' }, lines);
  readonly #name: HTMLInputElement;
  readonly #picture = drawn('svg', {
    class: 'picture trace-picture',
    role: 'img',
    width: String(previewSize.width),
    height: String(previewSize.height),
  });
  readonly #told = element('p', { class: 'small', attributes: { role: 'status' } });
  readonly #dialog: Dialog;
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(ask: Ask, cell: CellAddress) {
    this.#ask = ask;
    this.#name = textField({ name: 'name', label: 'Name of the file', value: cell.id });
    this.#dialog = openDialog({
      title: `Trace outline of ${cell.id}`,
      name: 'trace',
      agree: 'Write outline',
      body: [
        element('p', {
          class: 'card-help',
          text: 'Paste measured points from a sheet, a line each. Bare numbers are in the job’s unit. The outline is written beside the job and named in the cell.',
        }),
        this.#list,
        this.#question('The lines are', this.#mode),
        this.#question('Drawn', this.#line),
        this.#question('File', this.#name),
        this.#picture,
        this.#told,
      ],
    });
    for (const name of ['input', 'change'])
      this.#dialog.root.addEventListener(name, () => {
        clearTimeout(this.#timer);
        this.#timer = setTimeout(() => void this.#show(), previewDelayMs);
      });
    this.#paint({ message: 'Paste or type the points.', sentence: '', picture: undefined });
  }

  async agreed(): Promise<TraceAgreed | undefined> {
    this.#list.focus();
    const agreed = await this.#dialog.closed;
    clearTimeout(this.#timer);
    return agreed ? { wish: this.#wish(), name: fieldValue(this.#name).trim() } : undefined;
  }

  #question(label: string, field: Element): HTMLElement {
    return element(
      'div',
      { class: 'question' },
      element('span', { class: 'question-label', text: label }),
      field,
    );
  }

  #wish(): TraceWish {
    return {
      list: this.#list.value,
      mode: fieldValue(this.#mode) === 'stations' ? 'stations' : 'points',
      smooth: fieldValue(this.#line) === 'smooth',
    };
  }

  async #show(): Promise<void> {
    const asked = (this.#asked += 1);
    const view = await this.#ask({ ask: 'trace', wish: this.#wish() });
    if (asked === this.#asked && view !== undefined) this.#paint(view);
  }

  #paint({ message, sentence, picture }: TraceView): void {
    setDisabled(this.#dialog.root.querySelector('[data-action="dialog-agree"]'), message !== '');
    this.#told.textContent = message === '' ? sentence : message;
    this.#picture.setAttribute('aria-label', message === '' ? sentence : message);
    const groups =
      picture === undefined
        ? []
        : drawnGroups(picture, fitted(picture.box, previewSize, previewMargins));
    this.#picture.replaceChildren(...groups.flatMap(({ parts }) => parts));
  }
}
