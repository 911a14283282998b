import type { PanelWish } from '../extension/protocol/panel-view.ts';

/** What one person sees the job with: kept by VS Code for this editor, never written to the file. */
export interface ViewState {
  readonly table: string;
  /** Column widths in px by table and column. */
  readonly widths: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Active cell of each table: row key and column key. */
  readonly cursors: Readonly<Record<string, readonly [row: string, column: string]>>;
  /** Groups of each table of which only the heading is shown. */
  readonly collapsed: Readonly<Record<string, readonly string[]>>;
  readonly pane: string;
  readonly asideWidth: number;
  readonly asideShown: boolean;
  /** The list of cautions is open; it begins closed. */
  readonly cautionsOpen: boolean;
  /** Which picture of a panel is shown. */
  readonly panel: PanelWish;
  /** The picture takes the place of the grid. */
  readonly panelLarge: boolean;
}

const start: ViewState = {
  table: '',
  widths: {},
  cursors: {},
  collapsed: {},
  pane: 'bill',
  asideWidth: 340,
  asideShown: true,
  cautionsOpen: false,
  panel: { base: '', hand: 'drawn', picture: 'plan', ring: '' },
  panelLarge: false,
};

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** Reads a kept state; whatever is missing or of another make begins afresh. */
export function readViewState(kept: unknown): ViewState {
  if (!isRecord(kept)) return start;
  const text = (key: 'table' | 'pane'): string => {
    const value = kept[key];
    return typeof value === 'string' ? value : start[key];
  };
  const width = kept['asideWidth'];
  return {
    table: text('table'),
    widths: widthsOf(kept['widths']),
    cursors: cursorsOf(kept['cursors']),
    collapsed: collapsedOf(kept['collapsed']),
    pane: text('pane'),
    asideWidth: typeof width === 'number' ? width : start.asideWidth,
    asideShown: kept['asideShown'] !== false,
    cautionsOpen: kept['cautionsOpen'] === true,
    panel: panelOf(kept['panel']),
    panelLarge: kept['panelLarge'] === true,
  };
}

function panelOf(value: unknown): PanelWish {
  if (!isRecord(value)) return start.panel;
  const { base, hand, picture, ring } = value;
  return {
    base: typeof base === 'string' ? base : '',
    hand: hand === 'left' || hand === 'right' ? hand : 'drawn',
    picture: picture === 'section' || picture === 'skin' || picture === 'strip' ? picture : 'plan',
    ring: typeof ring === 'string' ? ring : '',
  };
}

function widthsOf(value: unknown): ViewState['widths'] {
  if (!isRecord(value)) return {};
  const tables: Record<string, Record<string, number>> = {};
  for (const [table, columns] of Object.entries(value)) {
    if (!isRecord(columns)) continue;
    const widths: Record<string, number> = {};
    for (const [column, width] of Object.entries(columns))
      if (typeof width === 'number' && width > 0) widths[column] = width;
    tables[table] = widths;
  }
  return tables;
}

function cursorsOf(value: unknown): ViewState['cursors'] {
  if (!isRecord(value)) return {};
  const cursors: Record<string, readonly [string, string]> = {};
  for (const [table, cursor] of Object.entries(value)) {
    if (!Array.isArray(cursor)) continue;
    const [row, column] = cursor as readonly unknown[];
    if (typeof row === 'string' && typeof column === 'string') cursors[table] = [row, column];
  }
  return cursors;
}

function collapsedOf(value: unknown): ViewState['collapsed'] {
  if (!isRecord(value)) return {};
  const tables: Record<string, readonly string[]> = {};
  for (const [table, groups] of Object.entries(value))
    if (Array.isArray(groups)) tables[table] = groups.filter((one) => typeof one === 'string');
  return tables;
}

/** Keeps the view state and hands each change to VS Code. */
export class ViewMemory {
  #now: ViewState;
  readonly #keep: (state: ViewState) => void;

  constructor(kept: unknown, keep: (state: ViewState) => void) {
    this.#now = readViewState(kept);
    this.#keep = keep;
  }

  get now(): ViewState {
    return this.#now;
  }

  change(some: Partial<ViewState>): void {
    this.#now = { ...this.#now, ...some };
    this.#keep(this.#now);
  }

  setWidth(table: string, column: string, width: number): void {
    const widths = { ...this.#now.widths[table], [column]: width };
    this.change({ widths: { ...this.#now.widths, [table]: widths } });
  }

  setCollapsed(table: string, groups: readonly string[]): void {
    this.change({ collapsed: { ...this.#now.collapsed, [table]: groups } });
  }

  setCursor(table: string, row: string, column: string): void {
    this.change({ cursors: { ...this.#now.cursors, [table]: [row, column] } });
  }
}
