import type { CheckOutcome } from '../formula/checked.ts';
import { checkFormula } from '../formula/check.ts';
import { parseFormula, type Parsed } from '../formula/parse.ts';
import type { CellRef } from '../formula/scope.ts';
import type { ValueType } from '../formula/value.ts';
import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { wantedType } from './column-types.ts';
import { readLiteral, type LiteralContext } from './literals.ts';
import { readsOfRowFunctions } from './row-functions.ts';
import { noFindings, scopeOf, type Surroundings } from './scope.ts';
import { suggestion } from '../formula/near-name.ts';
import { hasKinds } from './row-texts.ts';
import { blankType, cellName, placeOfCell, rowKeyOf, type Cell, type Meaning } from './row.ts';
import { workbookProblem } from './workbook-problems.ts';

/** What a cell's text means, and what that hangs on. */
export interface Understood {
  readonly meaning: Meaning;
  readonly type: ValueType;
  readonly problems: readonly Problem[];
  readonly reads: readonly Cell[];
  readonly watches: readonly string[];
}

/** Columns whose figure may be so many of a material: `25 each`. */
const countable: ReadonlySet<string> = new Set(['use', 'qty', 'holds', 'step', 'least']);

/** The word in which a material is counted that does not say one. */
const countWords: Readonly<Record<string, string>> = {
  sheet: 'sheet',
  piece: 'each',
  aerosol: 'can',
};

const nothing: Understood = {
  meaning: { kind: 'blank' },
  type: blankType,
  problems: [],
  reads: [],
  watches: [],
};

/** Texts are shared by many rows of a kind; more than this at once means a job of another kind. */
const mostTexts = 5000;

/** Parses formulas, each text once. */
export function formulaReader(settings: UnitSettings): (text: string) => Parsed {
  const known = new Map<string, Parsed>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    if (known.size > mostTexts) known.clear();
    const parsed = parseFormula(text, settings);
    known.set(text, parsed);
    return parsed;
  };
}

function faulty(cell: Cell, problem: Problem, more: Partial<Understood> = {}): Understood {
  const placed: Problem = { ...problem, place: placeOfCell(cell) };
  const meaning: Meaning = { kind: 'fault', problem: placed, cause: undefined };
  return { ...nothing, meaning, problems: [placed], ...more };
}

function waiting(cell: Cell, on: Cell, more: Partial<Understood>): Understood {
  const cause = on.meaning.kind === 'fault' ? (on.meaning.cause ?? on) : on;
  const reason = cause.meaning.kind === 'fault' ? cause.meaning.problem.message : '';
  const details = { name: cellName(cause), reason };
  const problem = workbookProblem('cell-waits', details, { place: placeOfCell(cell) });
  return { ...nothing, meaning: { kind: 'fault', problem, cause }, ...more, problems: [] };
}

function cellsOf(refs: readonly CellRef[], { store }: Surroundings): readonly Cell[] {
  return refs.flatMap((ref) => {
    const row = store.byKey(rowKeyOf(ref.table, ref.id, ref.occurrence));
    return row === undefined ? [] : [store.cell(row, ref.column)];
  });
}

function isError(problem: Problem): boolean {
  return problem.severity === 'error';
}

/** Reads the texts of cells: what each means, and which others that hangs on. */
/** Word that a material is counted by, of the cells its unit and form stand in (last of those read). */
function countWordOf(reads: readonly Cell[]): string | undefined {
  if (reads.length < 2) return undefined;
  const [unit, form] = reads.slice(-2);
  return unit?.text?.text ?? countWords[form?.text?.text ?? ''];
}

export function openUnderstanding(around: Surroundings): (cell: Cell) => Understood {
  const parse = formulaReader(around.settings);

  function wanted(cell: Cell): ValueType | 'any' {
    if (cell.column.startsWith('rule.')) return { kind: 'yes-no' };
    return wantedType(around.columns.declared(cell.row.table, cell.column));
  }

  function formula(cell: Cell, text: string): Understood {
    const declared = around.columns.declared(cell.row.table, cell.column);
    if (declared?.kind === 'link' || cell.column === 'kind') {
      return faulty(cell, workbookProblem('link-formula', { column: cell.column }));
    }
    const parsed = parse(text);
    const fault = parsed.problems.find(isError);
    if (parsed.expression === undefined) {
      return fault === undefined ? nothing : faulty(cell, fault);
    }
    const findings = noFindings();
    const scope = scopeOf(cell.row, around, findings);
    const outcome = checkFormula(parsed.expression, scope, wanted(cell));
    return formulaMeaning(cell, outcome, findings);
  }

  function formulaMeaning(
    cell: Cell,
    outcome: CheckOutcome,
    findings: ReturnType<typeof noFindings>,
  ): Understood {
    const { checked } = outcome;
    const seen = readsOfRowFunctions(checked, cell.row, around.store);
    const reads = [
      ...new Set([...cellsOf(outcome.reads, around), ...findings.links, ...seen.cells]),
    ];
    const watches = [...new Set([...findings.watches, ...outcome.watches, ...seen.watches])];
    const hangs = { reads, watches };
    const problems = outcome.problems.map((one) => ({ ...one, place: placeOfCell(cell) }));
    const error = problems.find(isError);
    if (checked === undefined || error !== undefined) {
      const cause = reads.find((read) => read !== cell && read.meaning.kind === 'fault');
      if (cause !== undefined) return waiting(cell, cause, hangs);
      const fault = error ?? workbookProblem('not-calculated', { reason: 'no sentence' });
      return faulty(cell, fault, { ...hangs, problems });
    }
    return { meaning: { kind: 'formula', checked }, type: checked.type, problems, ...hangs };
  }

  /** Cells that say in which word a material is counted where this cell stands. */
  function countedBy(cell: Cell, watches: string[]): readonly Cell[] {
    const { store } = around;
    const last = cell.column.slice(cell.column.lastIndexOf('.') + 1);
    if (!countable.has(last)) return [];
    if (cell.row.table === 'material') {
      return [store.cell(cell.row, 'unit'), store.cell(cell.row, 'form')];
    }
    const link = store.cell(cell.row, `${cell.column.slice(0, -last.length)}material`);
    const id = link.text?.text ?? '';
    watches.push(`name:${id}`);
    const [material] = store.named('material', id);
    if (material === undefined) return [link];
    return [link, store.cell(material, 'unit'), store.cell(material, 'form')];
  }

  function literals(countWord: string | undefined): LiteralContext {
    const { store, settings } = around;
    return {
      settings,
      countWord,
      linkable: (tables, id) =>
        tables.reduce((count, table) => count + store.named(table, id).length, 0),
      ids: (tables) => tables.flatMap((table) => store.rows(table).map((row) => row.id)),
    };
  }

  function literal(cell: Cell, text: string): Understood {
    if (cell.column === 'kind' && hasKinds(cell.row.table)) return kind(cell, text);
    const declared = around.columns.declared(cell.row.table, cell.column);
    const watches = declared?.kind === 'link' ? [`name:${text}`] : [];
    const plainly = readLiteral(cell, text, declared, literals(undefined));
    // A text that is no value may be a count, in the word its material is counted by.
    const reads = plainly.ok ? [] : countedBy(cell, watches);
    const word = plainly.ok ? undefined : countWordOf(reads);
    const read = word === undefined ? plainly : readLiteral(cell, text, declared, literals(word));
    if (!read.ok) return faulty(cell, read.problem, { watches, reads });
    const { value, type } = read.value;
    return { ...nothing, meaning: { kind: 'literal', value }, type, watches, reads };
  }

  function kind(cell: Cell, text: string): Understood {
    const { table } = cell.row;
    const found = around.book.kinds.get(text);
    if (found?.table === table && text !== table) {
      const value = { kind: 'text', text } as const;
      return { ...nothing, meaning: { kind: 'literal', value }, type: { kind: 'text' } };
    }
    const known = [...around.book.kinds.values()].filter((one) => one.table === table);
    const ids = known.map((one) => one.id).filter((id) => id !== table);
    const details = { table, kind: text, suggestion: suggestion(text, ids) };
    return faulty(cell, workbookProblem('kind-unknown', details));
  }

  return (cell) => {
    const text = cell.text?.text;
    if (text === undefined) return nothing;
    return text.startsWith('=') ? formula(cell, text) : literal(cell, text);
  };
}
