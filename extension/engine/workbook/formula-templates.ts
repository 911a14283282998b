import type { HyperFormula, RawCellContent, SimpleCellAddress } from 'hyperformula';

/** What goes into a gap of a formula: a number, or where it reads. */
export type Filling = number | SimpleCellAddress;

/** A formula for the evaluator, without its `=`: where a number or a reference goes, it has a gap. */
export interface GappedFormula {
  readonly text: string;
  /** In the order of the gaps. */
  readonly fillings: readonly Filling[];
}

/** Stands where something is to be filled in; no text of the evaluator holds it. */
export const gap = '\u0000';

/** Functions whose first argument is a gap for a number. */
const numbered: ReadonlySet<string> = new Set(['PW.CALL', 'PW.FAULT']);

interface Reference {
  readonly type: unknown;
  readonly constructor: unknown;
}

type ReferenceMaker = new (col: number, row: number, type: unknown, sheet: number) => Reference;

/** The parts of the evaluator's own formula trees that are looked at here. */
interface Tree {
  readonly type: string;
  readonly procedureName?: string;
  readonly reference?: Reference;
  readonly args?: readonly Tree[];
  readonly left?: Tree;
  readonly right?: Tree;
  readonly expression?: Tree;
  readonly value?: unknown;
}

/** What a formula reads, as the evaluator asks for it. */
interface Dependency {
  readonly absolutize: (from: SimpleCellAddress) => unknown;
}

/** What the evaluator's parser says of a formula. */
interface Parsed {
  readonly ast: Tree;
  readonly errors: readonly unknown[];
  readonly dependencies: readonly Dependency[];
}

type Parse = (text: string, at: SimpleCellAddress) => Parsed;

type Fill = (fillings: readonly Filling[]) => Tree;

/** A formula parsed once, whose gaps are filled without parsing again. */
type Template = (fillings: readonly Filling[]) => Parsed;

/** Numbers of the gaps met so far, those of references apart. */
interface Gaps {
  count: number;
  readonly references: number[];
}

class Place implements Dependency {
  private readonly at: unknown;

  constructor(at: unknown) {
    this.at = at;
  }

  absolutize(): unknown {
    return this.at;
  }
}

function ofReference(tree: Tree, reference: Reference, gaps: Gaps): Fill {
  const at = gaps.count++;
  gaps.references.push(at);
  const Maker = reference.constructor as ReferenceMaker;
  return (fillings) => {
    const place = fillings[at];
    if (typeof place !== 'object') return tree;
    const { col, row, sheet } = place;
    return { ...tree, reference: new Maker(col, row, reference.type, sheet) };
  };
}

function ofCall(tree: Tree, args: readonly Tree[], gaps: Gaps): Fill | undefined {
  const fills = args.map((arg, index): Fill | undefined => {
    if (index > 0 || !numbered.has(tree.procedureName ?? '')) return filler(arg, gaps);
    const at = gaps.count++;
    return (fillings) => ({ ...arg, value: fillings[at] });
  });
  if (fills.every((fill) => fill === undefined)) return undefined;
  return (fillings) => ({
    ...tree,
    args: args.map((arg, index) => fills[index]?.(fillings) ?? arg),
  });
}

/** Fills the gaps of a tree, which are met in the order of its text; undefined where it has none. */
function filler(tree: Tree, gaps: Gaps): Fill | undefined {
  const { reference, args, left, right, expression, value } = tree;
  if (reference !== undefined) return ofReference(tree, reference, gaps);
  if (args !== undefined) return ofCall(tree, args, gaps);
  if (left !== undefined && right !== undefined) {
    const [one, other] = [filler(left, gaps), filler(right, gaps)];
    if (one === undefined && other === undefined) return undefined;
    return (fillings) => ({
      ...tree,
      left: one?.(fillings) ?? left,
      right: other?.(fillings) ?? right,
    });
  }
  if (expression !== undefined) {
    const inner = filler(expression, gaps);
    return inner && ((fillings) => ({ ...tree, expression: inner(fillings) }));
  }
  if (typeof value !== 'object') return undefined;
  const operand = filler(value as Tree, gaps);
  return operand && ((fillings) => ({ ...tree, value: operand(fillings) }));
}

/** A template of a parsed formula; undefined where its gaps are not all found in its tree. */
function templateOf(parsed: Parsed, count: number): Template | undefined {
  const gaps: Gaps = { count: 0, references: [] };
  const fill = filler(parsed.ast, gaps);
  const lone = parsed.dependencies.filter((one) => 'dependency' in one);
  if (gaps.count !== count || lone.length !== gaps.references.length) return undefined;
  let met = 0;
  const dependencies = parsed.dependencies.map((one) => ({
    one,
    at: 'dependency' in one ? gaps.references[met++] : undefined,
  }));
  return (fillings) => ({
    ...parsed,
    ast: fill?.(fillings) ?? parsed.ast,
    dependencies: dependencies.map(({ one, at }) =>
      at === undefined ? one : new Place(fillings[at]),
    ),
  });
}

/** The parts of the evaluator that are no part of its interface; its version is fixed. */
interface Inside {
  readonly _parser: { readonly parse: Parse };
  readonly _crudOperations: {
    readonly operations: {
      readonly setCellContent: (at: SimpleCellAddress, content: RawCellContent) => void;
      readonly setFormulaToCell: (at: SimpleCellAddress, size: unknown, formula: Parsed) => void;
      readonly arraySizePredictor: {
        readonly checkArraySize: (tree: Tree, at: SimpleCellAddress) => unknown;
      };
    };
  };
}

/** Sets cells of the evaluator; formulas alike but for their gaps are parsed once. */
export interface CellWriter {
  readonly content: (at: SimpleCellAddress, content: RawCellContent) => void;
  readonly formula: (at: SimpleCellAddress, formula: GappedFormula) => void;
  /** Texts that the evaluator has parsed and keeps. */
  readonly parsed: () => number;
}

/** A template with the size of what its formulas come to, as the evaluator tells it. */
interface Sized {
  readonly fill: Template;
  readonly size: unknown;
}

/**
 * The evaluator's parser takes a third of the time of opening a large job, and its cache knows a
 * formula again only where all that it reads lies as far from it as before. So a formula of a form
 * that was parsed before is set as the tree it is; one without a template is parsed like any other.
 * The evaluator's public way of setting a cell would keep account of each for undoing it, besides.
 *
 * @param written the text of a formula with its gaps filled
 */
export function cellWriter(
  hf: HyperFormula,
  written: (formula: GappedFormula) => string,
): CellWriter {
  const { _parser: parser, _crudOperations } = hf as unknown as Inside;
  const { operations } = _crudOperations;
  const templates = new Map<string, Sized | undefined>();
  let parsed = 0;

  function sizedTemplate(
    first: Parsed,
    at: SimpleCellAddress,
    { fillings }: GappedFormula,
  ): Sized | undefined {
    const fill = first.errors.length === 0 ? templateOf(first, fillings.length) : undefined;
    return fill && { fill, size: operations.arraySizePredictor.checkArraySize(first.ast, at) };
  }

  return {
    content: (at, content) => {
      operations.setCellContent(at, content);
    },
    formula: (at, formula) => {
      const known = templates.get(formula.text);
      if (known !== undefined) {
        operations.setFormulaToCell(at, known.size, known.fill(formula.fillings));
        return;
      }
      const text = `=${written(formula)}`;
      parsed += 1;
      templates.set(formula.text, sizedTemplate(parser.parse(text, at), at, formula));
      operations.setCellContent(at, text);
    },
    parsed: () => parsed,
  };
}
