import { CellError, EmptyValue, FunctionPlugin, SimpleRangeValue } from 'hyperformula';
import type { FunctionContext, HeavyQuestion } from '../formula/catalogue.ts';
import { comparedValues } from '../units/same-value.ts';
import { answered, type CallSite } from './call-sites.ts';
import { faultValue } from './evaluator-faults.ts';
import { toRegister, type Register, type Shapes } from './register-values.ts';
import type { WorkbookProblemCode } from './workbook-problems.ts';

interface Address {
  readonly sheet: number;
  readonly col: number;
  readonly row: number;
}

/** What our functions in the evaluator know of the workbook they calculate. */
export interface EvaluatorContext {
  readonly site: (number: number) => CallSite | undefined;
  readonly constant: (number: number) => Register | undefined;
  readonly functions: FunctionContext;
  readonly shapes: Shapes;
  /** Number of the cell that stands at an address, and its name. */
  readonly numberAt: (address: Address) => number;
  readonly nameAt: (address: Address) => string;
  /** Told, whenever a call is answered, of the heavy questions that it had to do without; undefined for none. */
  readonly asked: (
    cell: number,
    site: CallSite,
    open: readonly HeavyQuestion[] | undefined,
  ) => void;
}

/** The parts of the evaluator's own trees and states that our functions look at. */
interface CallTree {
  readonly args: readonly unknown[];
}

interface CallState {
  readonly formulaAddress: Address;
}

interface ReferenceTree {
  readonly type?: string;
  readonly reference?: { readonly toSimpleCellAddress: (from: Address) => Address };
}

interface ValueTree extends ReferenceTree {
  readonly value?: unknown;
}

type Evaluated = Register | CellError | symbol;

const isBlank = (value: unknown): boolean =>
  value === EmptyValue || value === '' || value === undefined;

function numberOf(value: unknown): number | undefined {
  if (typeof value === 'number') return value;
  if (typeof value === 'object' && value !== null && 'val' in value) return Number(value.val);
  return undefined;
}

/** Order of two values: numbers within tolerance, texts without regard to capitals; blank is 0, "" and no. */
function order(left: unknown, right: unknown): number {
  if (typeof left === 'string' || typeof right === 'string') {
    const a = isBlank(left) ? '' : String(left).toLowerCase();
    const b = isBlank(right) ? '' : String(right).toLowerCase();
    return a === b ? 0 : a < b ? -1 : 1;
  }
  if (typeof left === 'boolean' || typeof right === 'boolean') {
    return Number(left === true) - Number(right === true);
  }
  return comparedValues(numberOf(left) ?? 0, numberOf(right) ?? 0);
}

const comparisons: Readonly<Record<string, (order: number) => boolean>> = {
  '=': (is) => is === 0,
  '<>': (is) => is !== 0,
  '<': (is) => is < 0,
  '<=': (is) => is <= 0,
  '>': (is) => is > 0,
  '>=': (is) => is >= 0,
};

/**
 * The functions that our formulas are translated into, beside the evaluator's own. None of them ever
 * throws: an exception inside the evaluator would leave its cell without any state.
 */
export class EvaluatorFunctions extends FunctionPlugin {
  static override implementedFunctions = {
    'PW.CALL': {
      method: 'call',
      parameters: [{ argumentType: 'ANY' as never }],
      repeatLastArgs: 1,
    },
    'PW.NEED': { method: 'need', parameters: [{ argumentType: 'ANY' as never }] },
    'PW.COMPARE': {
      method: 'compare',
      parameters: [{ argumentType: 'ANY' as never }],
      repeatLastArgs: 1,
    },
    'PW.BLANK': { method: 'blank', parameters: [] },
    'PW.CONSTANT': { method: 'constant', parameters: [{ argumentType: 'ANY' as never }] },
    'PW.FAULT': { method: 'fault', parameters: [{ argumentType: 'ANY' as never }] },
  };

  /** The answer of a function of the catalogue: call site, then its values. */
  call(tree: CallTree, state: CallState): Evaluated {
    return this.guarded(state, () => {
      const site = this.workbook().site(Number(this.value(tree.args[0], state)));
      const values = this.flat(tree.args, 1, state);
      if (values instanceof CellError) return values;
      return site === undefined ? this.blank() : this.answer(site, values, tree, state);
    });
  }

  /** The value, which may not be blank. */
  need(tree: CallTree, state: CallState): Evaluated {
    return this.guarded(state, () => {
      const value = this.value(tree.args[0], state);
      return isBlank(value) ? this.blankFault(tree.args[0], state) : (value as Evaluated);
    });
  }

  /** Two values compared: operator, left, right. */
  compare(tree: CallTree, state: CallState): Evaluated {
    return this.guarded(state, () => {
      const [operator, left, right] = tree.args.map((arg) => this.value(arg, state));
      if (left instanceof CellError) return left;
      if (right instanceof CellError) return right;
      return comparisons[String(operator)]?.(order(left, right)) ?? false;
    });
  }

  blank(): symbol {
    return EmptyValue;
  }

  /** A constant that the evaluator's own notation could not write. */
  constant(tree: CallTree, state: CallState): Evaluated {
    return this.guarded(state, () => {
      return this.workbook().constant(Number(this.value(tree.args[0], state))) ?? EmptyValue;
    });
  }

  /** The fault of the cell with this number. */
  fault(tree: CallTree, state: CallState): Evaluated {
    return this.guarded(state, () => {
      const cell = Number(this.value(tree.args[0], state));
      return faultValue({ code: 'not-calculated', cell, reason: 'its cell is at fault' });
    });
  }

  private workbook(): EvaluatorContext {
    return this.config.context as EvaluatorContext;
  }

  private value(tree: unknown, state: CallState): unknown {
    const { type, reference, value } = (tree ?? {}) as ValueTree;
    // Most arguments by far are cells that hold a plain value: what the evaluator would do besides
    // reading it, to each of tens of thousands, changes nothing.
    if (type === 'CELL_REFERENCE' && reference !== undefined) {
      const there = this.dependencyGraph.getCellValue(
        reference.toSimpleCellAddress(state.formulaAddress),
      );
      // As the evaluator does, a zero is given without its sign.
      if (typeof there === 'number' && Number.isFinite(there)) return there + 0;
      if (typeof there !== 'number' && typeof there !== 'object') return there;
    } else if (type === 'NUMBER' && typeof value === 'number') return value;
    return this.evaluateAst(tree as never, state as never);
  }

  /** Values of the arguments from this one on, ranges laid out; a fault among them instead. */
  private flat(
    trees: readonly unknown[],
    from: number,
    state: CallState,
  ): readonly unknown[] | CellError {
    const values: unknown[] = [];
    for (let at = from; at < trees.length; at++) {
      const value = this.value(trees[at], state);
      if (value instanceof CellError) return value;
      if (!(value instanceof SimpleRangeValue)) values.push(value);
      else {
        const found = value.data.flat();
        const fault = found.find((one) => one instanceof CellError);
        if (fault !== undefined) return fault;
        values.push(...found);
      }
    }
    return values;
  }

  private answer(
    site: CallSite,
    values: readonly unknown[],
    tree: CallTree,
    state: CallState,
  ): Evaluated {
    const { shapes } = this.workbook();
    const result = answered(site, { values, shapes }, this.listening(site, state));
    if (result === undefined) return EmptyValue;
    if (result.ok) return this.finite(toRegister(result.value, shapes), state);
    if ('blank' in result) {
      const before = site.plans.slice(0, result.blank);
      // Lists stand behind all needed arguments that a blank can be told of by name.
      const at = before.filter((plan) => plan.kind === 'one').length;
      const simple = before.every((plan) => plan.kind !== 'list') && site.rows === undefined;
      return this.blankFault(simple ? tree.args[at + 1] : undefined, state);
    }
    return this.failed('function-refuses', result.problem.message, state);
  }

  /** What the function may ask; heavy questions without an answer are told of. */
  private listening(site: CallSite, state: CallState): FunctionContext {
    const { functions, asked, numberAt } = this.workbook();
    const { heavy } = functions;
    if (site.rows === undefined || heavy === undefined) return functions;
    const cell = numberAt(state.formulaAddress);
    const open: HeavyQuestion[] = [];
    asked(cell, site, undefined);
    return {
      ...functions,
      heavy: {
        ...heavy,
        rough: () => {
          asked(cell, site, open);
        },
        answer: (question) => {
          const answer = heavy.answer(question);
          if (answer === undefined) {
            open.push(question);
            asked(cell, site, open);
          }
          return answer;
        },
      },
    };
  }

  private finite(value: Register, state: CallState): Evaluated {
    return typeof value === 'number' && !Number.isFinite(value)
      ? this.failed('no-number', '', state)
      : value;
  }

  private blankFault(tree: unknown, state: CallState): CellError {
    const { type, reference } = (tree ?? {}) as ReferenceTree;
    const name =
      type === 'CELL_REFERENCE' && reference !== undefined
        ? this.workbook().nameAt(reference.toSimpleCellAddress(state.formulaAddress))
        : 'A value in this formula';
    return this.failed('cell-blank', name, state);
  }

  private failed(code: WorkbookProblemCode, reason: string, state: CallState): CellError {
    return faultValue({ code, cell: this.workbook().numberAt(state.formulaAddress), reason });
  }

  private guarded(state: CallState, work: () => Evaluated): Evaluated {
    try {
      return work();
    } catch (error) {
      // Whatever is thrown here, thrown further it would leave the evaluator without a state.
      const reason = error instanceof Error ? error.message : 'unknown';
      return this.failed('not-calculated', reason, state);
    }
  }
}
