import type { PanelChoice } from '../extension/protocol/panel-view.ts';
import { element, keyedChildren, setText } from './dom.ts';

/** A list to choose from, above a picture. */
export function choiceList(label: string, name: string): HTMLSelectElement {
  return element('select', {
    class: 'input panel-choice',
    data: { choice: name },
    attributes: { 'aria-label': label },
  });
}

/** Fills a list; one with nothing to choose between is not shown. */
export function fillChoices(
  list: HTMLSelectElement,
  choices: readonly PanelChoice[],
  chosen: string,
): void {
  keyedChildren(list, choices, {
    key: ({ value }) => value,
    make: ({ value }) => element('option', { attributes: { value } }),
    paint: (option, { label }) => {
      setText(option, label);
    },
  });
  if (list.value !== chosen) list.value = chosen;
  list.hidden = choices.length < 2;
}
