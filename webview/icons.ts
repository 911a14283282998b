/** Small pictures drawn as strokes in a 16 × 16 box; they take the colour of the text around them. */
const paths = {
  add: 'M8 3v10M3 8h10',
  kit: 'M3 6l5-3 5 3-5 3zM3 6v5l5 3 5-3V6M8 9v5',
  close: 'M4 4l8 8M12 4l-8 8',
  pin: 'M6 3h4l-.5 4 2.5 2.5H4L6.5 7zM8 9.5V14',
  error: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM6 6l4 4M10 6l-4 4',
  warning: 'M8 2.5l6 11H2zM8 6.5v3.5M8 11.5v.5',
  pass: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM5.5 8.2l1.8 1.8 3.3-3.8',
  near: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM5 8h6',
  open: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM8 8v.1',
  note: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM8 7v4M8 5v.5',
  why: 'M3 4h10M3 8h6M3 12h8',
  text: 'M4 2.5h5l3 3v8H4zM9 2.5v3h3M6 8.5h4M6 11h4',
  export: 'M8 10V3M5 6l3-3 3 3M3 10v3h10v-3',
  units: 'M2 6h12v4H2zM5 6v2M8 6v2.5M11 6v2',
  pane: 'M2.5 3.5h11v9h-11zM10 3.5v9',
  larger: 'M9.5 3h3.5v3.5M13 3L9 7M6.5 13H3V9.5M3 13l4-4',
  keys: 'M2 4.5h12v7H2zM4.5 7h.5M7 7h.5M9.5 7h.5M12 7h.1M5 9.5h6',
  remove: 'M3 8h10',
  back: 'M10 3.5L5.5 8l4.5 4.5',
  on: 'M6 3.5L10.5 8L6 12.5',
  up: 'M3.5 10L8 5.5l4.5 4.5',
  down: 'M3.5 6L8 10.5L12.5 6',
  lock: 'M4 7.5h8v6H4zM5.5 7.5v-2a2.5 2.5 0 0 1 5 0v2M8 10v1.5',
  unlock: 'M4 7.5h8v6H4zM5.5 7.5v-3a2.5 2.5 0 0 1 5 0M8 10v1.5',
  find: 'M7 2.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9zM10.3 10.3l3.4 3.4',
} as const;

export type IconName = keyof typeof paths;

const svg = 'http://www.w3.org/2000/svg';

/** A picture for people who see; the words beside it or its label say the same. */
export function icon(name: IconName): Element {
  const root = document.createElementNS(svg, 'svg');
  root.setAttribute('viewBox', '0 0 16 16');
  root.setAttribute('class', `icon icon-${name}`);
  root.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(svg, 'path');
  path.setAttribute('d', paths[name]);
  root.append(path);
  return root;
}
