import type { ChoiceOption } from '../extension/protocol/views.ts';
import { element } from './dom.ts';
import { icon, type IconName } from './icons.ts';

/**
 * Buttons and fields of the page around the grid. They are native until the UI kit has loaded;
 * then buttons are dressed in place and new fields are made of the kit's elements.
 */
export interface ButtonProps {
  /** What it does: the page listens for clicks on `[data-action]`. */
  readonly action: string;
  readonly text: string;
  readonly argument?: string;
  readonly icon?: IconName;
  readonly look?: 'primary' | 'secondary' | 'icon';
  readonly title?: string;
}

function hasKit(tag: string): boolean {
  return customElements.get(tag) !== undefined;
}

export function button(props: ButtonProps): HTMLElement {
  const look = props.look ?? 'secondary';
  const data: Record<string, string> = { action: props.action, look };
  if (props.argument !== undefined) data['argument'] = props.argument;
  const made = element('button', {
    class: `button ${look}`,
    data,
    title: props.title ?? (look === 'icon' ? props.text : ''),
    attributes: { type: 'button', ...(look === 'icon' && { 'aria-label': props.text }) },
  });
  if (props.icon !== undefined) made.append(icon(props.icon));
  // Plain text: the kit takes a span within a button for a picture.
  if (look !== 'icon') made.append(props.text);
  return hasKit('vscode-button') ? dressed(made) : made;
}

/** A button that one part of the page listens to itself, however it is dressed meanwhile. */
export function ownButton(text: string, run: () => void): HTMLElement {
  const native = element('button', {
    class: 'button secondary',
    data: { look: 'secondary' },
    attributes: { type: 'button' },
  });
  native.append(text);
  // Dressing puts another element in the button's place, so what stays is listened to.
  const holder = element('span', {}, hasKit('vscode-button') ? dressed(native) : native);
  holder.addEventListener('click', run);
  return holder;
}

// The kit's button takes over everything that the page looks at: data, label, title, content.
function dressed(native: HTMLElement): HTMLElement {
  const look = native.dataset['look'] ?? 'secondary';
  const made = document.createElement('vscode-button');
  for (const { name, value } of native.attributes)
    if (name !== 'type') made.setAttribute(name, value);
  made.setAttribute('appearance', look);
  made.classList.replace('button', 'dressed');
  made.append(...native.childNodes);
  if (look !== 'icon') made.querySelector('svg')?.setAttribute('slot', 'start');
  return made;
}

/** Dresses the buttons that are on the page already; one that has the focus keeps it and waits. */
export function dressButtons(root: ParentNode): void {
  if (!hasKit('vscode-button')) return;
  for (const native of root.querySelectorAll<HTMLElement>('button.button'))
    if (native !== document.activeElement) native.replaceWith(dressed(native));
}

/** Disables a button, native or dressed. */
export function setDisabled(control: Element | null, disabled: boolean): void {
  control?.toggleAttribute('disabled', disabled);
}

export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
}

/** The current value of a field made here; yes-no fields give `yes` or `no`. */
export function fieldValue(field: Element): string {
  const type = field.getAttribute('data-type');
  const { checked, value } = field as HTMLInputElement;
  if (type === 'yes-no') return checked ? 'yes' : 'no';
  // The kit's list has no value until it has been drawn once.
  if (type === 'choice' && value === '')
    return field.querySelector('[selected]')?.getAttribute('value') ?? '';
  return value;
}

/** Always native: the kit's own field calls itself “Text field” to a screen reader, whatever its label. */
export function textField(props: FieldProps): HTMLInputElement {
  const made = element('input', {
    class: 'input',
    data: { type: 'text' },
    attributes: { name: props.name, 'aria-label': props.label },
  });
  made.value = props.value;
  return made;
}

export function choiceField(props: FieldProps, options: readonly ChoiceOption[]): HTMLElement {
  const kit = hasKit('vscode-dropdown');
  const made = document.createElement(kit ? 'vscode-dropdown' : 'select');
  if (!kit) made.className = 'input';
  made.setAttribute('name', props.name);
  made.setAttribute('aria-label', props.label);
  made.setAttribute('data-type', 'choice');
  for (const option of options) {
    const line = document.createElement(kit ? 'vscode-option' : 'option');
    line.textContent = option.label === '' ? option.value : option.label;
    line.setAttribute('value', option.value);
    if (option.detail !== '') line.title = option.detail;
    if (option.value === props.value) line.setAttribute('selected', '');
    made.append(line);
  }
  return made;
}

export function yesNoField(props: FieldProps): HTMLElement {
  const kit = hasKit('vscode-checkbox');
  const made = document.createElement(kit ? 'vscode-checkbox' : 'input');
  if (!kit) {
    made.setAttribute('type', 'checkbox');
    made.className = 'check';
  }
  made.setAttribute('name', props.name);
  made.setAttribute('aria-label', props.label);
  made.setAttribute('data-type', 'yes-no');
  made.toggleAttribute('checked', props.value === 'yes');
  return made;
}
