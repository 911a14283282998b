import type { ColumnView } from '../../extension/protocol/views.ts';
import { element } from '../dom.ts';
import { leastColumnWidth } from './geometry.ts';
import { widthProperty } from './row-element.ts';

export interface HeaderHooks {
  readonly width: (column: number) => number;
  readonly resize: (column: number, width: number, done: boolean) => void;
  readonly fit: (column: number) => void;
}

/** The titles of a sheet's columns, the row header's first, each with a handle to drag. */
export function makeHeader(columns: readonly ColumnView[], hooks: HeaderHooks): HTMLElement {
  const titles = [undefined, ...columns].map((column, index) => {
    const title = element(
      'div',
      {
        class: column === undefined ? 'title id' : `title ${column.align}`,
        title: column?.help ?? 'Name of the row in formulas. Typing renames it everywhere.',
        data: { column: column?.key ?? 'id', columnIndex: String(index) },
        attributes: { role: 'columnheader', 'aria-colindex': String(index + 1) },
      },
      element('span', { class: 'title-text', text: column?.label ?? 'Id' }),
      element('span', { class: 'resize', attributes: { 'aria-hidden': 'true' } }),
    );
    title.style.setProperty('width', `var(${widthProperty(index)})`);
    return title;
  });
  const header = element(
    'div',
    { class: 'row header', attributes: { role: 'row', 'aria-rowindex': '1' } },
    ...titles,
  );
  header.addEventListener('pointerdown', (event) => {
    startResize(event, hooks);
  });
  header.addEventListener('dblclick', (event) => {
    const column = handleColumn(event);
    if (column !== undefined) hooks.fit(column);
  });
  return header;
}

function handleColumn(event: Event): number | undefined {
  const { target } = event;
  if (!(target instanceof Element) || !target.classList.contains('resize')) return undefined;
  const title = target.closest<HTMLElement>('[data-column-index]');
  return title === null ? undefined : Number(title.dataset['columnIndex']);
}

function startResize(event: PointerEvent, hooks: HeaderHooks): void {
  const column = handleColumn(event);
  const handle = event.target;
  if (column === undefined || !(handle instanceof HTMLElement) || event.button !== 0) return;
  event.preventDefault();
  event.stopPropagation();
  handle.setPointerCapture(event.pointerId);
  const start = event.clientX;
  const width = hooks.width(column);
  let latest = width;
  const move = (moved: PointerEvent): void => {
    latest = Math.max(leastColumnWidth, Math.round(width + moved.clientX - start));
    hooks.resize(column, latest, false);
  };
  const stop = (): void => {
    handle.removeEventListener('pointermove', move);
    hooks.resize(column, latest, true);
  };
  handle.addEventListener('pointermove', move);
  handle.addEventListener('lostpointercapture', stop, { once: true });
}
