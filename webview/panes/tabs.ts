import { element, keyedChildren, setAttribute, setText } from '../dom.ts';

export interface Tab {
  readonly key: string;
  readonly label: string;
  /** Small text after the label: how many rows or problems; empty for none. */
  readonly count: string;
  readonly tone: 'plain' | 'error' | 'warning';
}

export interface TabsProps {
  readonly label: string;
  /** Name of the data attribute that holds a tab's key: `sheet`, `pane`. */
  readonly data: string;
  readonly panel: string;
  readonly choose: (key: string) => void;
}

/** A tab list after the ARIA pattern: one tab stop, arrows move along it and choose. */
export class Tabs {
  readonly root: HTMLElement;
  readonly #props: TabsProps;

  constructor(props: TabsProps) {
    this.#props = props;
    this.root = element('div', {
      class: 'tabs',
      attributes: { role: 'tablist', 'aria-label': props.label },
    });
    this.root.addEventListener('click', (event) => {
      const tab = event.target instanceof Element && event.target.closest('[role="tab"]');
      if (tab instanceof HTMLElement) props.choose(tab.dataset[props.data] ?? '');
    });
    this.root.addEventListener('keydown', (event) => {
      this.#key(event);
    });
  }

  paint(tabs: readonly Tab[], chosen: string): void {
    const { data, panel } = this.#props;
    keyedChildren(this.root, tabs, {
      key: (tab) => tab.key,
      make: (tab) =>
        element(
          'button',
          {
            class: 'tab',
            data: { [data]: tab.key },
            attributes: {
              type: 'button',
              role: 'tab',
              id: `${data}-tab-${tab.key}`,
              'aria-controls': panel,
            },
          },
          element('span', { class: 'tab-label' }),
          element('span', { class: 'tab-count' }),
        ),
      paint: (child, tab) => {
        const [label, count] = child.children;
        if (label !== undefined) setText(label, tab.label);
        if (count !== undefined) setText(count, tab.count);
        if (count instanceof HTMLElement) count.dataset['tone'] = tab.tone;
        const isChosen = tab.key === chosen;
        if (isChosen && child.getAttribute('aria-selected') === 'false')
          child.scrollIntoView({ block: 'nearest', inline: 'nearest' });
        setAttribute(child, 'aria-selected', String(isChosen));
        child.tabIndex = tab.key === chosen ? 0 : -1;
      },
    });
  }

  #key(event: KeyboardEvent): void {
    const tabs = [...this.root.querySelectorAll<HTMLElement>('[role="tab"]')];
    const at = tabs.findIndex((tab) => tab === document.activeElement);
    const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined || at < 0) return;
    event.preventDefault();
    event.stopPropagation();
    const tab = tabs[(to + tabs.length) % tabs.length];
    this.#props.choose(tab?.dataset[this.#props.data] ?? '');
    tab?.focus();
  }
}
