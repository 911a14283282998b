import type { SimpleCellAddress } from 'hyperformula';
import type { Parameter } from '../formula/catalogue.ts';
import type { Checked } from '../formula/checked.ts';
import { parameterOf } from '../formula/parameters.ts';
import type { CellRef } from '../formula/scope.ts';
import type { CellValue } from '../formula/value.ts';
import type { ColumnTypes } from './column-types.ts';
import type { ArgumentPlan, CallSites, SeenRow } from './call-sites.ts';
import { gap, type Filling } from './formula-templates.ts';
import type { Register } from './register-values.ts';
import { seenBy } from './row-functions.ts';
import type { RowStore } from './row-store.ts';
import { rowKeyOf, type Cell, type Row } from './row.ts';

type Call = Extract<Checked, { kind: 'call' }>;
type List = Extract<Checked, { kind: 'list' }>;

/** Where things stand in the evaluator, and the tables its texts point into. */
export interface Target {
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  readonly sites: CallSites;
  /** Number of a constant that cannot be written out. */
  readonly constant: (value: Register) => number;
  readonly register: (value: CellValue) => Register;
  /** Where a cell stands; its content follows if it is not there yet. */
  readonly address: (cell: Cell) => SimpleCellAddress;
  readonly written: (address: SimpleCellAddress) => string;
  /** A place where nothing ever stands. */
  readonly nothing: SimpleCellAddress;
  readonly revision: (row: Row) => SimpleCellAddress;
}

/** A formula on its way into the evaluator: the row it stands in, none for one that stands nowhere. */
export interface Translation {
  readonly target: Target;
  readonly row: Row | undefined;
  readonly bound: ReadonlyMap<CellRef, Cell>;
  /** Gets what goes into the gaps, in their order. */
  readonly fillings: Filling[];
  /** Takes references instead, for a tree that many rows share. */
  readonly open?: (ref: CellRef) => void;
}

const needed: ReadonlySet<Parameter['type']['kind']> = new Set([
  'quantity',
  'same',
  'any-quantity',
  'choice',
  'shape',
  'shape-or-length',
]);

function mayNotBeBlank(parameter: Parameter | undefined): boolean {
  if (parameter === undefined || parameter.optional === true || parameter.list === true)
    return false;
  return needed.has(parameter.type.kind);
}

/** The cell that a reference means in the row of the formula. */
export function cellAt(
  ref: CellRef,
  { bound, target }: Pick<Translation, 'bound' | 'target'>,
): Cell | undefined {
  const cell = bound.get(ref);
  if (cell !== undefined) return cell;
  const row = target.store.byKey(rowKeyOf(ref.table, ref.id, ref.occurrence));
  return row === undefined ? undefined : target.store.cell(row, ref.column);
}

function reference(cell: Cell, { target, fillings }: Translation): string {
  fillings.push(target.address(cell));
  return gap;
}

/** A reference of a checked formula as the evaluator writes it. */
function referenceTo(ref: CellRef, into: Translation): string {
  if (into.open !== undefined) {
    into.open(ref);
    return gap;
  }
  const cell = cellAt(ref, into);
  return cell === undefined ? 'PW.BLANK()' : reference(cell, into);
}

function isBelow(upper: SimpleCellAddress, lower: SimpleCellAddress): boolean {
  return upper.sheet === lower.sheet && upper.col === lower.col && lower.row === upper.row + 1;
}

/** References to many cells, neighbours below each other joined to ranges. */
function references(cells: readonly (Cell | undefined)[], into: Translation): readonly string[] {
  const texts: string[] = [];
  const { written } = into.target;
  let open: { first: SimpleCellAddress; last: SimpleCellAddress } | undefined;
  const close = (): void => {
    if (open === undefined) return;
    const { first, last } = open;
    if (first === last) into.fillings.push(first);
    texts.push(first === last ? gap : `${written(first)}:${written(last)}`);
    open = undefined;
  };
  for (const cell of cells) {
    const at = cell === undefined ? undefined : into.target.address(cell);
    if (open !== undefined && at !== undefined && isBelow(open.last, at))
      open = { ...open, last: at };
    else {
      close();
      if (at === undefined) texts.push('PW.BLANK()');
      else open = { first: at, last: at };
    }
  }
  close();
  return texts;
}

function constantText(value: CellValue, target: Target): string {
  const raw = target.register(value);
  if (typeof raw === 'boolean') return raw ? 'TRUE()' : 'FALSE()';
  if (raw === '') return 'PW.BLANK()';
  const text = String(raw);
  if (typeof raw === 'string' || text.includes('e')) return `PW.CONSTANT(${target.constant(raw)})`;
  return raw < 0 ? `(${text})` : text;
}

function listTexts(list: List, weighted: boolean, into: Translation): readonly string[] {
  const values = list.cells.map(({ cell }) => cellAt(cell, into));
  const texts = references(values, into);
  if (!weighted) return texts;
  const pieces = list.cells.map((one) =>
    one.pieces === undefined ? undefined : cellAt(one.pieces, into),
  );
  return [...texts, ...references(pieces, into)];
}

interface Planned {
  readonly plan: ArgumentPlan;
  readonly texts: readonly string[];
}

function planned(call: Call, index: number, into: Translation): Planned {
  const arg = call.args[index];
  const parameter = parameterOf(call.entry, index);
  if (arg === undefined || arg.kind === 'row') return { plan: { kind: 'absent' }, texts: [] };
  if (arg.kind === 'constant') {
    const { value } = arg;
    const nothing = arg.type.kind === 'blank' && parameter?.type.kind !== 'text';
    return { plan: nothing ? { kind: 'absent' } : { kind: 'constant', value }, texts: [] };
  }
  if (arg.kind === 'list') {
    // A total counts each row as often as it has pieces; everything else counts rows.
    const weighted = parameter?.weighted === true;
    const plan: ArgumentPlan = { kind: 'list', type: arg.type, count: arg.cells.length, weighted };
    return { plan, texts: listTexts(arg, weighted, into) };
  }
  const plan: ArgumentPlan = { kind: 'one', type: arg.type, needed: mayNotBeBlank(parameter) };
  return { plan, texts: [translated(arg, into)] };
}

function rowsOfCall(
  call: Call,
  into: Translation,
): { seen: readonly SeenRow[]; texts: readonly string[]; revision: SimpleCellAddress } | undefined {
  const { store } = into.target;
  const found = seenBy(call, into.row, into.target);
  if (found === undefined) return undefined;
  const { given, rows } = found;
  const standingOn = (row: Row): readonly number[] => {
    const standing = store.allStandingOn(row);
    return standing.size === 0
      ? []
      : rows.flatMap((one, at) => (standing.has(one.row) ? [at] : []));
  };
  return {
    seen: rows.map(({ row, cells }) => ({
      id: row.id,
      kind: row.kind,
      cells: cells.map(({ column, type }) => ({ column, type })),
      standing: standingOn(row),
    })),
    texts: rows.flatMap(({ cells }) => cells.map((cell) => reference(cell, into))),
    revision: into.target.revision(given),
  };
}

function ownCall(call: Call, into: Translation): string {
  const { fillings, target } = into;
  const site = fillings.push(0) - 1;
  const rows = rowsOfCall(call, into);
  const args = call.args.map((_, index) => planned(call, index, into));
  fillings[site] = target.sites.numberOf({
    entry: call.entry,
    plans: args.map(({ plan }) => plan),
    rows: rows?.seen,
  });
  const texts = [gap, ...(rows?.texts ?? []), ...args.flatMap((one) => one.texts)];
  if (rows !== undefined) {
    texts.push(gap);
    fillings.push(rows.revision);
  }
  return `PW.CALL(${texts.join(',')})`;
}

function nativeArgument(call: Call, index: number, into: Translation): readonly string[] {
  const arg = call.args[index];
  if (arg === undefined) return ['PW.BLANK()'];
  if (arg.kind === 'list') {
    const texts = listTexts(arg, false, into);
    return texts.length === 0 ? ['PW.BLANK()'] : texts;
  }
  const text = translated(arg, into);
  const guard = arg.kind === 'cell' && mayNotBeBlank(parameterOf(call.entry, index));
  return [guard ? `PW.NEED(${text})` : text];
}

function nativeCall(call: Call, into: Translation): string {
  const args = call.args.flatMap((_, index) => nativeArgument(call, index, into));
  // Where a condition fails and nothing else is said, the cell stays blank.
  if (call.entry.name === 'IF' && args.length === 2) args.push('PW.BLANK()');
  return `${call.entry.name}(${args.join(',')})`;
}

function factor(checked: Checked, into: Translation): string {
  const text = translated(checked, into);
  const mayBeBlank = checked.kind === 'cell' || checked.kind === 'call';
  return mayBeBlank ? `PW.NEED(${text})` : text;
}

function binary(checked: Extract<Checked, { kind: 'binary' }>, into: Translation): string {
  const { operator, left, right } = checked;
  switch (operator) {
    case '*':
    case '/':
    case '^':
      return `(${factor(left, into)}${operator}${factor(right, into)})`;
    case '+':
    case '-':
    case '&':
      return `(${translated(left, into)}${operator}${translated(right, into)})`;
    default: {
      const sides = `${translated(left, into)},${translated(right, into)}`;
      return `PW.COMPARE("${operator}",${sides})`;
    }
  }
}

/** A checked formula in the evaluator's own notation, without its `=`, with gaps that are filled. */
export function translated(checked: Checked, into: Translation): string {
  switch (checked.kind) {
    case 'constant':
      return constantText(checked.value, into.target);
    case 'cell':
      return referenceTo(checked.cell, into);
    case 'call':
      return checked.entry.run === undefined && checked.entry.rows === undefined
        ? nativeCall(checked, into)
        : ownCall(checked, into);
    case 'negative':
      return `(-${translated(checked.operand, into)})`;
    case 'binary':
      return binary(checked, into);
    case 'list':
    case 'row':
      return 'PW.BLANK()';
  }
}
