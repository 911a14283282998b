import type { CellValue, ValueType } from '../formula/value.ts';
import type { Argument, FunctionContext, FunctionEntry, RowView } from '../formula/catalogue.ts';
import type { Result } from '../result.ts';
import { fromRegister, type Shapes } from './register-values.ts';

/** How one argument of a call reaches the evaluator. */
export type ArgumentPlan =
  | { readonly kind: 'absent' }
  | { readonly kind: 'constant'; readonly value: CellValue }
  /** `needed`: a blank here is no answer. */
  | { readonly kind: 'one'; readonly type: ValueType; readonly needed: boolean }
  /** `weighted`: as many counts of pieces follow the values. */
  | {
      readonly kind: 'list';
      readonly type: ValueType;
      readonly count: number;
      readonly weighted: boolean;
    };

/** A row that a function looks at, with the cells of it that are passed, in this order. */
export interface SeenRow {
  readonly id: string;
  readonly kind: string;
  readonly cells: readonly { readonly column: string; readonly type: ValueType }[];
  /** Indexes of the rows that stand on it, directly or through others. */
  readonly standing: readonly number[];
}

/** What is fixed about one call before its values are known. */
export interface CallSite {
  readonly entry: FunctionEntry;
  readonly plans: readonly ArgumentPlan[];
  /** For a function of rows: the row given, then all that stands on it. */
  readonly rows: readonly SeenRow[] | undefined;
}

/** Values of the arguments, in the order the plans ask for them. */
export interface Passed {
  readonly values: readonly unknown[];
  readonly shapes: Shapes;
}

/** Call sites by number; equal ones share a number, so that equal formulas stay equal texts. */
export interface CallSites {
  readonly numberOf: (site: CallSite) => number;
  readonly site: (number: number) => CallSite | undefined;
}

/** Numbers types, equal ones alike: a site names the types of hundreds of cells. */
function typeNumbers(): (type: ValueType) => number {
  const known = new WeakMap<ValueType, number>();
  const numbers = new Map<string, number>();
  return (type) => {
    const found = known.get(type);
    if (found !== undefined) return found;
    const text = JSON.stringify(type);
    const number = numbers.get(text) ?? numbers.size;
    numbers.set(text, number);
    known.set(type, number);
    return number;
  };
}

function callKey({ entry, plans }: CallSite, number: (type: ValueType) => number): string {
  const args = plans.map((plan) => ('type' in plan ? { ...plan, type: number(plan.type) } : plan));
  return JSON.stringify([entry.name, args]);
}

function rowsKey(rows: readonly SeenRow[], number: (type: ValueType) => number): string {
  let key = '';
  for (const { id, kind, cells, standing } of rows) {
    key += JSON.stringify([id, kind, standing]);
    for (const { column, type } of cells) key += ` ${column} ${number(type)}`;
  }
  return key;
}

export function openCallSites(): CallSites {
  const numbers = new Map<string, number>();
  const seen = new Map<string, readonly SeenRow[]>();
  const typeNumber = typeNumbers();
  const sites: CallSite[] = [];
  return {
    numberOf: (site) => {
      const looked = rowsKey(site.rows ?? [], typeNumber);
      const key = `${callKey(site, typeNumber)}${looked}`;
      const known = numbers.get(key);
      if (known !== undefined) return known;
      // Functions that look at the same rows share the list of them, hence what was read of it last.
      const rows = site.rows && (seen.get(looked) ?? site.rows);
      if (rows !== undefined) seen.set(looked, rows);
      sites.push({ ...site, rows });
      numbers.set(key, sites.length - 1);
      return sites.length - 1;
    },
    site: (number) => sites[number],
  };
}

function weighted(value: CellValue | undefined, pieces: CellValue | undefined): typeof value {
  if (value?.kind !== 'quantity' || pieces?.kind !== 'quantity') return value;
  return { ...value, base: value.base * pieces.base };
}

/** A reader of passed values, one after the other. */
type Next = () => unknown;

function listFrom(
  plan: Extract<ArgumentPlan, { kind: 'list' }>,
  next: Next,
  shapes: Shapes,
): Argument {
  const values = Array.from({ length: plan.count }, () => fromRegister(next(), plan.type, shapes));
  if (!plan.weighted) return values;
  const plainType: ValueType = { kind: 'zero' };
  return values.map((value) => weighted(value, fromRegister(next(), plainType, shapes)));
}

/** Index of the first argument that is needed and blank; undefined where none is. */
export type Arranged = { readonly args: readonly Argument[] } | { readonly blank: number };

function arranged(plans: readonly ArgumentPlan[], next: Next, shapes: Shapes): Arranged {
  const args: Argument[] = [];
  let blank: number | undefined;
  for (const plan of plans) {
    if (plan.kind === 'absent') args.push(undefined);
    else if (plan.kind === 'constant') args.push(plan.value);
    else if (plan.kind === 'list') args.push(listFrom(plan, next, shapes));
    else {
      const value = fromRegister(next(), plan.type, shapes);
      if (value === undefined && plan.needed) blank ??= args.length;
      args.push(value);
    }
  }
  return blank === undefined ? { args } : { blank };
}

/** Where the values of a call's rows stand in what is passed; they come before its arguments. */
interface Layout {
  /** For each row, a column's place among the passed values. */
  readonly rows: readonly ReadonlyMap<string, { readonly at: number; readonly type: ValueType }>[];
  /** How many there are. */
  readonly count: number;
  /** What was made of them last: several functions ask the same of one panel. */
  last?: { readonly passed: Passed; readonly views: readonly RowView[] };
}

/** A call's rows are fixed. */
const layouts = new WeakMap<readonly SeenRow[], Layout>();

function layoutOf(rows: readonly SeenRow[]): Layout {
  const known = layouts.get(rows);
  if (known !== undefined) return known;
  let count = 0;
  const places = rows.map(
    ({ cells }) => new Map(cells.map(({ column, type }) => [column, { at: count++, type }])),
  );
  const fresh: Layout = { rows: places, count };
  layouts.set(rows, fresh);
  return fresh;
}

/** Whether the rows' values are those of another call. */
function passedTheSame(one: Passed, other: Passed, count: number): boolean {
  for (let at = 0; at < count; at++) if (one.values[at] !== other.values[at]) return false;
  return one.shapes === other.shapes;
}

/** Rows as a function sees them: the same objects as the last time where they say the same. */
function rowViews(rows: readonly SeenRow[], layout: Layout, passed: Passed): readonly RowView[] {
  const { last, count } = layout;
  if (last !== undefined && passedTheSame(last.passed, passed, count)) return last.views;
  const views = freshViews(rows, layout, passed);
  layout.last = { passed, views };
  return views;
}

/** Values are read when they are asked for, for few of them are. */
function freshViews(
  rows: readonly SeenRow[],
  layout: Layout,
  { values, shapes }: Passed,
): readonly RowView[] {
  const above = rows.map((): RowView[] => []);
  const views = rows.map(({ id, kind }, index): RowView => {
    const value: RowView['value'] = (column) => {
      const place = layout.rows[index]?.get(column);
      return place && fromRegister(values[place.at], place.type, shapes);
    };
    return { id, kind, value, standing: above[index] ?? [] };
  });
  rows.forEach(({ standing }, index) => {
    for (const one of standing) {
      const view = views[one];
      if (view !== undefined) above[index]?.push(view);
    }
  });
  return views;
}

/** The answer of a call, or the index of a needed argument that is blank. */
export function answered(
  site: CallSite,
  passed: Passed,
  context: FunctionContext,
): Result<CellValue> | { readonly ok: false; readonly blank: number } | undefined {
  const layout = site.rows && layoutOf(site.rows);
  let at = layout?.count ?? 0;
  const next = (): unknown => passed.values[at++];
  const row = site.rows && layout && rowViews(site.rows, layout, passed)[0];
  const ready = arranged(site.plans, next, passed.shapes);
  if ('blank' in ready) return { ok: false, blank: ready.blank };
  if (row !== undefined) return site.entry.rows?.run(row, ready.args, context);
  return site.entry.run?.(ready.args, context);
}
