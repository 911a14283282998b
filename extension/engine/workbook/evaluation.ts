import { DetailedCellError } from 'hyperformula';
import { atOnce, type Steps } from '../steps.ts';
import type { FunctionContext, HeavyQuestion } from '../formula/catalogue.ts';
import type { CellValue, ValueType } from '../formula/value.ts';
import { openCallSites } from './call-sites.ts';
import { faultOf, type EvaluatorFault } from './evaluator-faults.ts';
import { gap, type Filling, type GappedFormula } from './formula-templates.ts';
import { formulaTexts } from './formula-texts.ts';
import { openQuestions, type OpenQuestions } from './open-questions.ts';
import { openRegisterFile, type Change, type Content, type RegisterFile } from './register-file.ts';
import { fromRegister, toRegister, type Register, type Shapes } from './register-values.ts';
import type { ColumnTypes } from './column-types.ts';
import type { Sight } from './row-functions.ts';
import type { RowStore } from './row-store.ts';
import { cellName, type Cell, type Meaning, type Row } from './row.ts';
import { translated, type Target } from './translate.ts';

type Formula = Extract<Meaning, { kind: 'formula' }>;

type Written = readonly [Cell, Content];

/** What the evaluator says of a formula. */
export type Outcome =
  | { readonly state: 'value'; readonly value: CellValue; readonly estimate?: true }
  | { readonly state: 'blank' }
  | { readonly state: 'fault'; readonly fault: EvaluatorFault };

/** A formula cell and what the evaluator now says of it. */
export type Answer = readonly [Cell, Outcome];

/** Carries the meanings of cells into the evaluator and its answers back. */
export interface Evaluation {
  /** Writes cells whose meaning changed; answers all formula cells whose value may have changed. */
  readonly write: (cells: ReadonlySet<Cell>) => Steps<readonly Answer[]>;
  /** Answers all cells whose value may be another now that heavy questions have been answered. */
  readonly settle: () => readonly Answer[];
  /** Heavy questions that have no answer yet. */
  readonly wants: () => readonly HeavyQuestion[];
  readonly release: (row: Row) => void;
  /** The answer of a formula that stands in no cell. */
  readonly tryFormula: (formula: Formula) => Outcome;
  readonly close: () => void;
}

/**
 * The evaluator keeps every distinct formula text it was ever given; after so many it is built anew.
 */
const mostTexts = 20_000;

interface State {
  file: RegisterFile;
  target: Target;
  readonly text: ReturnType<typeof formulaTexts>;
  /** Texts that it has been given when every cell had been written once. */
  texts: number;
}

function interned(): {
  number: (value: Register) => number;
  at: (n: number) => Register | undefined;
} {
  const numbers = new Map<Register, number>();
  const values: Register[] = [];
  return {
    number: (value) => {
      const known = numbers.get(value);
      if (known !== undefined) return known;
      numbers.set(value, values.length);
      return values.push(value) - 1;
    },
    at: (number) => values[number],
  };
}

const faulty = ({ number }: Cell): GappedFormula => ({
  text: `PW.FAULT(${gap})`,
  fillings: [number],
});

interface Workshop {
  readonly questions: OpenQuestions;
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  readonly functions: FunctionContext;
  readonly shapes: Shapes;
  /** Told of each cell that gets a place. */
  readonly placed: (cell: Cell) => void;
}

/** An evaluator in which nothing stands yet. */
function openState({ store, columns, functions, shapes, placed, questions }: Workshop): State {
  const sites = openCallSites();
  const constants = interned();
  const file: RegisterFile = openRegisterFile({
    site: sites.site,
    constant: constants.at,
    functions,
    shapes,
    asked: questions.note,
    numberAt: (address) => file.numberAt(address),
    nameAt: (address) => {
      const cell = file.cellAt(address);
      return cell === undefined ? 'A cell' : cellName(cell);
    },
  });
  const target: Target = {
    store,
    columns,
    sites,
    constant: constants.number,
    register: (value) => toRegister(value, shapes),
    address: (cell) => {
      if (cell.placed === undefined) placed(cell);
      return file.standing(cell);
    },
    revision: file.revision,
    written: file.written,
    nothing: file.nothing,
  };
  return { file, target, text: formulaTexts(target), texts: 0 };
}

interface Asked {
  readonly type: ValueType;
  /** Number of the cell; below nothing for a formula that stands in none. */
  readonly cell: number;
  readonly file: RegisterFile;
  readonly shapes: Shapes;
}

// A class for what each edit makes anew, as in answered-row.ts.
class Found {
  readonly state = 'value';
  readonly value: CellValue;

  constructor(value: CellValue) {
    this.value = value;
  }
}

function outcomeOf(raw: unknown, { type, cell, file, shapes }: Asked): Outcome {
  // The evaluator rounds what is next to nothing by dividing it by nothing.
  if (Number.isNaN(raw)) return { state: 'fault', fault: { code: 'no-number', cell, reason: '' } };
  if (raw instanceof DetailedCellError) {
    const numberOf = (address: string) => file.cellNamed(address)?.number;
    return { state: 'fault', fault: faultOf(raw, numberOf) };
  }
  const value = raw === '' ? undefined : fromRegister(raw, type, shapes);
  return value === undefined ? { state: 'blank' } : new Found(value);
}

export function openEvaluation({ store, columns }: Sight, functions: FunctionContext): Evaluation {
  const shapes: Shapes = new Map();
  const questions = openQuestions();
  /** Cells given a place by a translation, whose content is still to be written. */
  let fresh: Cell[] = [];
  const opened = (): State =>
    openState({ store, columns, functions, shapes, questions, placed: (cell) => fresh.push(cell) });
  let state = opened();
  let begun = false;

  function content(cell: Cell): Content {
    const { meaning } = cell;
    questions.forget(cell.number);
    if (cell.loop !== undefined || meaning.kind === 'fault') return faulty(cell);
    if (meaning.kind === 'blank') return null;
    if (meaning.kind === 'formula') return state.text(cell, meaning);
    const raw = toRegister(meaning.value, shapes);
    return typeof raw === 'string' ? `'${raw}` : raw;
  }

  const standsThere = (cell: Cell): boolean =>
    cell.placed !== undefined || cell.meaning.kind === 'formula';

  function contents(cells: Iterable<Cell>): ReadonlyMap<Cell, Content> {
    const found = new Map<Cell, Content>();
    fresh = [];
    for (const cell of cells) if (standsThere(cell)) found.set(cell, content(cell));
    for (let cell = fresh.pop(); cell !== undefined; cell = fresh.pop()) {
      if (!found.has(cell) && cell.meaning.kind !== 'blank') found.set(cell, content(cell));
    }
    return found;
  }

  /** A new evaluator, in which nothing stands yet; answers all cells with a formula. */
  function emptied(): readonly Cell[] {
    state.file.close();
    const rows = [...store.tables()].flatMap((table) => store.rows(table));
    const cells = rows.flatMap((row) => [...row.cells.values()]);
    for (const row of rows) row.slot = undefined;
    for (const cell of cells) cell.placed = undefined;
    state = opened();
    return cells.filter((cell) => cell.meaning.kind === 'formula');
  }

  function rebuilt(): readonly Change[] {
    try {
      return atOnce(first(emptied()));
    } catch {
      // One formula that the evaluator cannot take is no reason for the others to have no answer.
      return [...contents(emptied())].flatMap(writtenAlone);
    }
  }

  function writtenAlone([cell, content]: Written): readonly Change[] {
    try {
      return state.file.write([[cell, content]]);
    } catch {
      return state.file.write([[cell, faulty(cell)]]);
    }
  }

  /** Texts that every cell needs at least once are not counted. */
  function* first(cells: Iterable<Cell>): Steps<readonly Change[]> {
    const written = contents(cells);
    yield;
    const found = state.file.write(written);
    state.texts = state.file.texts();
    return found;
  }

  function* changes(cells: ReadonlySet<Cell>): Steps<readonly Change[]> {
    if (state.file.texts() - state.texts > mostTexts) return rebuilt();
    try {
      if (!begun) {
        begun = true;
        return yield* first(cells);
      }
      return state.file.write(contents(cells));
    } catch {
      // Whatever the evaluator threw, our own rows are untouched: it is built anew from them.
      return rebuilt();
    }
  }

  function outcome(raw: unknown, type: ValueType, cell = -1): Outcome {
    const found = outcomeOf(raw, { type, cell, file: state.file, shapes });
    return found.state === 'value' && questions.has(cell) ? { ...found, estimate: true } : found;
  }

  function answers(changed: readonly Change[]): readonly Answer[] {
    const found: Answer[] = [];
    for (const { cell, raw } of changed) {
      questions.worked(cell.number);
      if (cell.meaning.kind === 'formula' && cell.loop === undefined)
        found.push([cell, outcome(raw, cell.type, cell.number)]);
    }
    return found;
  }

  return {
    *write(cells) {
      questions.begin();
      return answers(yield* changes(cells));
    },
    settle: () => {
      questions.begin();
      return answers(state.file.revise());
    },
    wants: questions.all,
    release: (row) => {
      state.file.release(row);
      for (const { number } of row.cells.values()) questions.forget(number);
    },
    tryFormula: ({ checked, bound }) => {
      fresh = [];
      const fillings: Filling[] = [];
      const text = translated(checked, { target: state.target, row: undefined, bound, fillings });
      state.file.write(contents(fresh));
      const raw = state.file.calculate({ text, fillings });
      return outcome(Array.isArray(raw) ? undefined : raw, checked.type);
    },
    close: () => {
      state.file.close();
    },
  };
}
