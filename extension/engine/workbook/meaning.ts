import type { CheckOutcome } from '../formula/checked.ts';
import { checkFormula } from '../formula/check.ts';
import { parseFormula, type Parsed } from '../formula/parse.ts';
import type { CellRef } from '../formula/scope.ts';
import type { ValueType } from '../formula/value.ts';
import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { openLiterals } from './literal-meaning.ts';
import { wantedType } from './column-types.ts';
import { readsOfRowFunctions } from './row-functions.ts';
import { followed, openPatterns, type Pattern } from './patterns.ts';
import { verbatimTables } from './row-inputs.ts';
import { noFindings, scopeOf, type Findings, type Surroundings } from './scope.ts';
import { cellName, placeOfCell, rowKeyOf, type Cell } from './row.ts';
import { faulty, nothing, verbatim, type Understood } from './understood.ts';
import { workbookProblem } from './workbook-problems.ts';

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

/** Cells that a formula's paths lead to or through, each once: they are few. */
function distinct(bound: Iterable<Cell>, links: ReadonlySet<Cell>): readonly Cell[] {
  const found: Cell[] = [];
  for (const cell of bound) if (!found.includes(cell)) found.push(cell);
  for (const cell of links) if (!found.includes(cell)) found.push(cell);
  return found;
}

function isError(problem: Problem): boolean {
  return problem.severity === 'error';
}

/** Reads the texts of cells: what each means, and which others that hangs on. */
export function openUnderstanding(around: Surroundings): (cell: Cell) => Understood {
  const parse = formulaReader(around.settings);
  const patterns = openPatterns();
  const literal = openLiterals(around);

  function wanted(cell: Cell): ValueType | 'any' {
    if (cell.column.startsWith('rule.')) return { kind: 'yes-no' };
    return wantedType(around.columns.declared(cell.row.table, cell.column));
  }

  function formula(cell: Cell, text: string): Understood {
    const declared = around.columns.declared(cell.row.table, cell.column);
    if (declared?.kind === 'link' || cell.column === 'kind') {
      return faulty(cell, workbookProblem('link-formula', { column: cell.column }));
    }
    const pattern = patterns.known(cell, text);
    const findings = pattern && followed(cell.row, pattern, around);
    return pattern === undefined || findings === undefined
      ? checkedFormula(cell, text)
      : patterned(pattern, findings);
  }

  function patterned({ checked }: Pattern, findings: Findings): Understood {
    const { bound, links, watches } = findings;
    return {
      meaning: { kind: 'formula', checked, bound, shared: true },
      type: checked.type,
      problems: [],
      reads: distinct(bound.values(), links),
      watches: [...watches],
    };
  }

  function checkedFormula(cell: Cell, text: string): Understood {
    const parsed = parse(text);
    const fault = parsed.problems.find(isError);
    if (parsed.expression === undefined) {
      return fault === undefined ? nothing : faulty(cell, fault);
    }
    const findings = noFindings();
    const scope = scopeOf(cell.row, around, findings);
    const outcome = checkFormula(parsed.expression, scope, wanted(cell));
    const { checked, problems } = outcome;
    if (checked === undefined || problems.length > 0 || findings.more) {
      return formulaMeaning(cell, outcome, findings);
    }
    const pattern = { checked, asked: findings.asked };
    patterns.keep(cell, text, pattern);
    return patterned(pattern, findings);
  }

  function formulaMeaning(cell: Cell, outcome: CheckOutcome, findings: Findings): Understood {
    const { checked } = outcome;
    const seen = readsOfRowFunctions(checked, cell.row, around);
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
    const meaning = { kind: 'formula', checked, bound: findings.bound, shared: false } as const;
    return { meaning, type: checked.type, problems, ...hangs };
  }

  return (cell) => {
    const text = cell.text?.text;
    if (text === undefined) return nothing;
    if (verbatimTables.includes(cell.row.table)) return verbatim(text);
    return text.startsWith('=') ? formula(cell, text) : literal(cell, text);
  };
}
