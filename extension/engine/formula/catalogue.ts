import type { OutlineSource } from '../geometry/outline-files.ts';
import type { Result } from '../result.ts';
import type { Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { CellValue } from './value.ts';

/** What an argument of a function may be. */
export type ParameterType =
  /** A quantity of one of these dimensions. */
  | { readonly kind: 'quantity'; readonly dimensions: readonly Dimension[] }
  /**
   * A quantity of any dimension; all parameters with the same letter must share one. A temperature on a
   * scale only where `points` says that the function has a meaning for it (MAX has, SUM has none).
   */
  | { readonly kind: 'same'; readonly letter: string; readonly points?: boolean }
  /** A quantity of any dimension, on its own. */
  | { readonly kind: 'any-quantity' }
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | { readonly kind: 'shape' }
  /** A quantity or a shape (RING functions take a shape in place of a size). */
  | { readonly kind: 'shape-or-length' }
  /** A row id or a path of links. */
  | { readonly kind: 'row' }
  /** A unit word, bare. */
  | { readonly kind: 'unit' }
  /** A criterion such as `">2in"`, checked against the letter, or the parameter, that `of` names. */
  | { readonly kind: 'criterion'; readonly of: string }
  /** Anything. */
  | { readonly kind: 'value' };

/** The values that a parameter takes, in base units; the function refuses others with a reason. */
export interface ValueRange {
  /** At least this. */
  readonly least?: number;
  /** More than this. */
  readonly above?: number;
  /** At most this. */
  readonly most?: number;
  /** Less than this. */
  readonly below?: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
  /** A share, which people write as a percentage. */
  readonly share?: boolean;
}

export interface Parameter {
  readonly name: string;
  readonly help: string;
  readonly type: ParameterType;
  /** Absent where every value of its type is taken. */
  readonly range?: ValueRange;
  readonly optional?: boolean;
  /**
   * A list (`all(ring).wall`) may stand here as well as a single value; `run` then gets an array,
   * values of rows with qty n as they are (SUM's weighting is the workbook's work).
   */
  readonly list?: boolean;
  /** Each value of a list counts as often as its row has pieces (qty). */
  readonly weighted?: boolean;
  /** This and the parameters after it repeat. */
  readonly repeats?: boolean;
}

/** How a function's result follows from its arguments. */
export type ResultRule =
  | { readonly kind: 'quantity'; readonly dimension: Dimension }
  /** The dimension of the parameters with this letter. */
  | { readonly kind: 'same'; readonly letter: string }
  /** Of the type of the argument at this index (IF: its branches, joined). */
  | { readonly kind: 'branches'; readonly arguments: readonly number[] }
  | { readonly kind: 'product' }
  | { readonly kind: 'ratio' }
  | { readonly kind: 'power' }
  | { readonly kind: 'square' }
  | { readonly kind: 'root' }
  | { readonly kind: 'text' | 'yes-no' | 'shape' };

/**
 * A question too heavy to be answered while somebody types. What asks it goes on with an estimate until
 * it has been worked out; equal keys are equal questions.
 */
export interface HeavyQuestion {
  readonly kind: 'skin' | 'layout';
  readonly key: string;
  /** What it is about; a later question about the same is likely to have a similar answer. */
  readonly about: string;
  /** Takes a moment only, so it goes before what takes longer. */
  readonly soon?: boolean;
  readonly body: unknown;
}

/** Answers to heavy questions, as far as they have been worked out. */
export interface HeavyAnswers {
  /** The answer; undefined while it is not there, and then the question is noted and will be worked out. */
  readonly answer: (question: HeavyQuestion) => unknown;
  /** Says that the answer being given is an estimate which no question will better. */
  readonly rough?: () => void;
  /** The last question about the same that was answered, with its answer. */
  readonly before: (
    question: HeavyQuestion,
  ) => { readonly question: HeavyQuestion; readonly answer: unknown } | undefined;
}

/** What a function may ask of the job besides its arguments. */
export interface FunctionContext {
  readonly settings: UnitSettings;
  /** Finds outlines in the drawing files of the job; absent where there is no job. */
  readonly outlines?: OutlineSource;
  /** Absent where nobody works heavy questions out. */
  readonly heavy?: HeavyAnswers;
  /** Bands of a chart of the shop book, in base units, ordered. */
  readonly chart: (
    name: string,
  ) => readonly { readonly from: number; readonly to: number; readonly value: number }[];
}

/** An argument as a function's own code receives it: undefined where it was left out or blank. */
export type Argument = CellValue | undefined | readonly (CellValue | undefined)[];

/** A row as a row-taking function sees it. */
export interface RowView {
  readonly id: string;
  readonly kind: string;
  readonly value: (column: string) => CellValue | undefined;
  /** Rows that stand on this one, directly or through others. */
  readonly standing: readonly RowView[];
}

/**
 * One function of the formula language. This list drives checker, evaluator, completion, signature
 * help, `panelwright functions` and docs/functions.md.
 */
export interface FunctionEntry {
  readonly name: string;
  /** `standard` follow OpenFormula; the others are Panelwright's. */
  readonly group:
    | 'standard'
    | 'rings'
    | 'aim'
    | 'router'
    | 'shapes'
    | 'resin'
    | 'cloth'
    | 'skin'
    | 'box'
    | 'price'
    | 'units';
  readonly help: string;
  readonly parameters: readonly Parameter[];
  readonly result: ResultRule;
  /** A formula and the text `panelwright calc` prints for it. */
  readonly example: { readonly formula: string; readonly shows: string };
  /** Where the rule is from: a standard, a handbook, "geometry", or "common practice, no source". */
  readonly source: string;
  /**
   * The answer for arguments in base units, or a sentence why there is none. Absent where the
   * evaluator's own function of this name is used as it is.
   */
  readonly run?: (args: readonly Argument[], context: FunctionContext) => Result<CellValue>;
  /** Row-taking functions instead: columns they read of the row and of what stands on it. */
  readonly rows?: {
    readonly reads: readonly string[];
    /**
     * Columns it reads of a row of this kind that stands on the one given, where they are others; a
     * row of which it reads none is not shown to it.
     */
    readonly standing?: (kind: string) => readonly string[];
    readonly run: (
      row: RowView,
      args: readonly Argument[],
      context: FunctionContext,
    ) => Result<CellValue>;
  };
}

export type Catalogue = ReadonlyMap<string, FunctionEntry>;
