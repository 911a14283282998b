/** What `element` gives a new element: texts only, never markup. */
export interface Props {
  readonly class?: string;
  readonly text?: string;
  readonly title?: string;
  readonly data?: Readonly<Record<string, string>>;
  readonly attributes?: Readonly<Record<string, string>>;
}

/** Makes an element with its classes, text, data and other attributes, and children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  props: Props = {},
  ...children: readonly (Node | undefined)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  if (props.class !== undefined) made.className = props.class;
  if (props.text !== undefined) made.textContent = props.text;
  if (props.title !== undefined && props.title !== '') made.title = props.title;
  for (const [key, value] of Object.entries(props.data ?? {})) made.dataset[key] = value;
  for (const [key, value] of Object.entries(props.attributes ?? {})) made.setAttribute(key, value);
  for (const child of children) if (child !== undefined) made.append(child);
  return made;
}

/** Sets a text only where it differs, so that untouched parts cost no layout. */
export function setText(node: Element, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

/** Sets an attribute only where it differs; `undefined` removes it. */
export function setAttribute(node: Element, name: string, value: string | undefined): void {
  if (value === undefined) {
    if (node.hasAttribute(name)) node.removeAttribute(name);
  } else if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

/** Hides an element or shows it, only where it is not so yet. */
export function setHidden(node: HTMLElement, hidden: boolean): void {
  if (node.hidden !== hidden) node.hidden = hidden;
}

/** The nearest ancestor (or the node itself) that matches, seen from an event. */
export function closest(event: Event, selector: string): HTMLElement | undefined {
  const { target } = event;
  if (!(target instanceof Element)) return undefined;
  return target.closest<HTMLElement>(selector) ?? undefined;
}

/**
 * Makes `parent` hold exactly one child per item in their order, reusing children by key, so that
 * focus, selection and running animations survive a repaint.
 */
export function keyedChildren<Item>(
  parent: HTMLElement,
  items: readonly Item[],
  how: {
    readonly key: (item: Item) => string;
    readonly make: (item: Item) => HTMLElement;
    readonly paint?: (child: HTMLElement, item: Item) => void;
  },
): void {
  const old = new Map<string, HTMLElement>();
  for (const child of parent.children)
    if (child instanceof HTMLElement) old.set(child.dataset['key'] ?? '', child);
  let at: Element | null = parent.firstElementChild;
  for (const item of items) {
    const key = how.key(item);
    let child = old.get(key);
    if (child === undefined) {
      child = how.make(item);
      child.dataset['key'] = key;
    }
    old.delete(key);
    how.paint?.(child, item);
    if (child === at) at = at.nextElementSibling;
    else parent.insertBefore(child, at);
  }
  for (const child of old.values()) child.remove();
}
