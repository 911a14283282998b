import type { CardField } from '../../extension/protocol/views.ts';
import { element, setAttribute, setHidden, setText } from '../dom.ts';
import { icon } from '../icons.ts';
import { TextEntry, type EntryEnd } from '../text-entry.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Ask, EntryTarget } from '../suggest/suggester.ts';

// Letters that a label and an entry have room for on the narrowest card.
const roomOfLabel = 11;
const roomOfEntry = 14;

export interface FieldHooks {
  /** The cell of a field of the row on the card; `undefined` while it takes no typing. */
  readonly target: (field: CardField) => EntryTarget | undefined;
  readonly commit: (target: EntryTarget, text: string, end: EntryEnd) => void;
  readonly cancelled: () => void;
}

/** One line of the card: label, value (or its default, lighter), unit, pin, and what is wrong. */
export class CardLine {
  readonly root: HTMLElement;
  readonly #label: HTMLLabelElement;
  readonly #entry: TextEntry;
  readonly #unit = element('span', { class: 'unit' });
  readonly #pin: HTMLButtonElement;
  readonly #note = element('p', { class: 'field-note' });
  readonly #hooks: FieldHooks;
  #field: CardField;

  constructor(
    field: CardField,
    hooks: FieldHooks,
    parts: { readonly popup: Popup; readonly ask: Ask; readonly prefix: string },
  ) {
    this.#field = field;
    this.#hooks = hooks;
    const id = `${parts.prefix}-${field.key.replaceAll('.', '-')}`;
    const area = element('textarea', {
      class: 'field-entry',
      attributes: { id, rows: '1', spellcheck: 'false', autocomplete: 'off', wrap: 'off' },
    });
    this.#entry = new TextEntry(area, this.#entryHooks(), parts);
    this.#label = element('label', { class: 'field-label', attributes: { for: id } });
    this.#pin = element(
      'button',
      {
        class: 'bare pin',
        data: { action: 'pin', argument: field.key },
        attributes: { type: 'button' },
      },
      icon('pin'),
    );
    const picker = field.editor === 'choice' || field.editor === 'link' ? ' pickable' : '';
    this.root = element(
      'div',
      { class: `field${picker}`, data: { field: field.key } },
      this.#label,
      element('div', { class: 'field-value' }, area, this.#unit, this.#pin),
      this.#note,
    );
    this.paint(field);
  }

  get entry(): HTMLTextAreaElement {
    return this.#entry.entry;
  }

  paint(field: CardField): void {
    this.#field = field;
    const { cell } = field;
    paintLabel(this.#label, field);
    this.#label.title = field.help;
    this.root.classList.toggle('long', cell.shown.length > roomOfEntry);
    this.root.dataset['look'] = cell.look;
    this.root.dataset['shown'] = cell.shown;
    this.root.dataset['severity'] = cell.severity;
    // A default is the entry's placeholder: lighter, and gone as soon as something is typed.
    this.entry.placeholder = cell.look === 'default' ? cell.shown : '';
    this.entry.readOnly = this.#hooks.target(field) === undefined;
    const help = field.fallback === '' ? field.help : `Default: ${field.fallback}`;
    this.entry.title = [cell.shown, help].filter((text) => text !== '').join('\n');
    setAttribute(this.entry, 'aria-invalid', cell.severity === 'error' ? 'true' : undefined);
    setText(this.#unit, unitWord(field));
    this.#unit.title = field.unit === '' ? '' : `A bare number is taken in ${field.unit}`;
    this.#paintPin(field);
    const note = cell.severity === '' && cell.look !== 'error' ? '' : cell.message;
    setText(this.#note, note);
    setHidden(this.#note, note === '');
    this.#entry.refresh();
  }

  #paintPin(field: CardField): void {
    const pin = this.#pin;
    setHidden(pin, field.editor !== 'text');
    setAttribute(pin, 'aria-pressed', String(field.pinned));
    const words = field.pinned ? `Unpin ${field.label}` : `Pin ${field.label} as a knob`;
    setAttribute(pin, 'aria-label', words);
    pin.title = words;
  }

  #entryHooks(): ConstructorParameters<typeof TextEntry>[1] {
    return {
      target: () => this.#hooks.target(this.#field),
      typed: () => this.#field.cell.typed,
      shown: () => (this.#field.cell.look === 'default' ? '' : this.#field.cell.shown),
      commit: this.#hooks.commit,
      cancelled: this.#hooks.cancelled,
    };
  }
}

function paintLabel(label: Element, field: CardField): void {
  setText(label, field.label);
  label.classList.toggle('long', field.label.length > roomOfLabel);
}

// The unit stands beside a blank field only: values carry theirs.
function unitWord(field: CardField): string {
  return field.cell.shown === '' ? field.unit : '';
}

/** A read-only line: a result and how it is labelled. */
export function resultLine(): HTMLElement {
  return element(
    'div',
    { class: 'field result' },
    element('dt', { class: 'field-label' }),
    element('dd', { class: 'field-value' }),
  );
}

export function paintResult(line: HTMLElement, field: CardField): void {
  const [label, value] = line.children;
  line.dataset['field'] = field.key;
  line.dataset['shown'] = field.cell.shown;
  line.dataset['look'] = field.cell.look;
  line.title = field.cell.message === '' ? field.help : field.cell.message;
  if (label !== undefined) paintLabel(label, field);
  if (value !== undefined) setText(value, field.cell.shown);
}
