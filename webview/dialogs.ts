import type { ChoiceOption } from '../extension/protocol/views.ts';
import { element } from './dom.ts';
import { button, fieldValue, textField } from './form.ts';
import { matchingChoices } from './suggest/options.ts';

export interface DialogParts {
  readonly title: string;
  readonly name: string;
  readonly body: readonly Node[];
  /** Text of the button that agrees; without it there is only Close. */
  readonly agree?: string;
}

/** A dialog on screen. */
export interface Dialog {
  readonly root: HTMLDialogElement;
  /** Resolves to true when the person agreed. */
  readonly closed: Promise<boolean>;
  readonly close: (agreed: boolean) => void;
}

let counted = 0;

/** Opens a modal dialog; Escape and Cancel close it, Enter in a field agrees. */
export function openDialog(parts: DialogParts): Dialog {
  counted += 1;
  const titleId = `dialog-title-${String(counted)}`;
  const root = element(
    'dialog',
    { class: 'dialog', data: { dialog: parts.name }, attributes: { 'aria-labelledby': titleId } },
    element('h2', { text: parts.title, attributes: { id: titleId } }),
    element('div', { class: 'dialog-body' }, ...parts.body),
    element(
      'div',
      { class: 'dialog-buttons' },
      parts.agree === undefined
        ? undefined
        : button({ action: 'dialog-agree', text: parts.agree, look: 'primary' }),
      button({ action: 'dialog-close', text: parts.agree === undefined ? 'Close' : 'Cancel' }),
    ),
  );
  const back = document.activeElement;
  let close: (agreed: boolean) => void = () => undefined;
  const closed = new Promise<boolean>((resolve) => {
    close = (agreed) => {
      root.close();
      root.remove();
      if (back instanceof HTMLElement) back.focus({ preventScroll: true });
      resolve(agreed);
    };
  });
  listen(root, close, parts.agree !== undefined);
  document.body.append(root);
  root.showModal();
  return { root, closed, close };
}

function listen(root: HTMLDialogElement, close: (agreed: boolean) => void, agrees: boolean): void {
  root.addEventListener('cancel', (event) => {
    event.preventDefault();
    close(false);
  });
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target.closest('[data-action]') : null;
    const action = target instanceof HTMLElement ? target.dataset['action'] : undefined;
    if (target?.hasAttribute('disabled') === true) return;
    if (action === 'dialog-agree') close(true);
    if (action === 'dialog-close') close(false);
  });
  root.addEventListener('keydown', (event) => {
    // Keys of a dialog are its own: VS Code would undo the document or open a palette behind it, and
    // would select all only after further keys have been typed.
    if (!event.ctrlKey || 'azy'.includes(event.key.toLowerCase())) event.stopPropagation();
    const field =
      event.target instanceof Element && event.target.matches('input, vscode-text-field');
    if (event.key === 'Escape') {
      event.preventDefault();
      close(false);
    } else if (event.key === 'Enter' && field && agrees && !event.isComposing) {
      event.preventDefault();
      root.querySelector<HTMLElement>('[data-action="dialog-agree"]')?.click();
    }
  });
}

/** Asks for one line of text; `undefined` when the person thought better of it. */
export async function askText(props: {
  readonly title: string;
  readonly label: string;
  readonly value: string;
  readonly agree: string;
}): Promise<string | undefined> {
  const field = textField({ name: 'text', label: props.label, value: props.value });
  const dialog = openDialog({
    title: props.title,
    name: 'text',
    agree: props.agree,
    body: [element('label', { class: 'question' }, element('span', { text: props.label }), field)],
  });
  field.focus();
  return (await dialog.closed) ? fieldValue(field) : undefined;
}

/** Lets the person pick one of many, typing to narrow them. */
export async function pickOne(
  title: string,
  options: readonly ChoiceOption[],
): Promise<string | undefined> {
  const filter = element('input', {
    class: 'input',
    attributes: {
      type: 'text',
      role: 'combobox',
      'aria-label': title,
      'aria-expanded': 'true',
      'aria-controls': 'pick-list',
      'aria-autocomplete': 'list',
      placeholder: 'Type to narrow the list',
    },
  });
  const list = element('div', {
    class: 'pick-list',
    attributes: { id: 'pick-list', role: 'listbox', 'aria-label': title },
  });
  const dialog = openDialog({ title, name: 'pick', body: [filter, list] });
  const picked = pickFrom(dialog, { filter, list, options });
  filter.focus();
  return (await dialog.closed) ? picked() : undefined;
}

function pickFrom(
  dialog: Dialog,
  parts: {
    readonly filter: HTMLInputElement;
    readonly list: HTMLElement;
    readonly options: readonly ChoiceOption[];
  },
): () => string | undefined {
  const { filter, list, options } = parts;
  let chosen = 0;
  const lines = (): HTMLElement[] => [...list.querySelectorAll<HTMLElement>('[role="option"]')];
  const mark = (index: number): void => {
    const all = lines();
    chosen = all.length === 0 ? 0 : (index + all.length) % all.length;
    all.forEach((line, at) => {
      line.setAttribute('aria-selected', String(at === chosen));
    });
    const line = all[chosen];
    filter.setAttribute('aria-activedescendant', line?.id ?? '');
    line?.scrollIntoView({ block: 'nearest' });
  };
  const fill = (): void => {
    list.replaceChildren(...matchingChoices(options, filter.value).map(pickLine));
    mark(0);
  };
  filter.addEventListener('input', fill);
  filter.addEventListener('keydown', (event) => {
    if (event.key === 'ArrowDown') mark(chosen + 1);
    else if (event.key === 'ArrowUp') mark(chosen - 1);
    else if (event.key === 'Enter' && lines().length > 0) dialog.close(true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  list.addEventListener('click', (event) => {
    const line = event.target instanceof Element && event.target.closest('[role="option"]');
    if (!(line instanceof HTMLElement)) return;
    mark(lines().indexOf(line));
    dialog.close(true);
  });
  fill();
  return () => lines()[chosen]?.dataset['value'];
}

function pickLine(
  item: { label: string; detail: string; insert: string },
  index: number,
): HTMLElement {
  return element(
    'div',
    {
      class: 'suggestion',
      data: { value: item.insert },
      attributes: { role: 'option', id: `pick-${String(index)}`, 'aria-selected': 'false' },
    },
    element('span', { class: 'label', text: item.label }),
    element('span', { class: 'detail', text: item.detail }),
  );
}
