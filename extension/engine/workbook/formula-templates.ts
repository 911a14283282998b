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

/** Sets a cell of the evaluator. */
export type SetCell = (at: SimpleCellAddress, content: RawCellContent) => void;

/**
 * The evaluator's own way of setting a cell, which is no part of its interface: the public one keeps
 * account of each cell for undoing it, which is never asked for.
 */
export function cellSetter(hf: HyperFormula): SetCell {
  const { operations } = (
    hf as unknown as { _crudOperations: { operations: { setCellContent: SetCell } } }
  )._crudOperations;
  return (at, content) => {
    operations.setCellContent(at, content);
  };
}

/** Takes formulas into the evaluator; those alike but for their gaps are parsed once. */
export interface FormulaTemplates {
  readonly write: (at: SimpleCellAddress, formula: GappedFormula) => void;
  /** Texts that the evaluator has parsed and keeps. */
  readonly parsed: () => number;
}

/**
 * The evaluator's parser takes a third of the time of opening a large job, and its cache knows a
 * formula again only where all that it reads lies as far from it as before. So its `parse`, which is
 * no part of its interface, is stood in for while a cell is written whose formula was parsed before;
 * the version of the library is fixed. A formula without a template is parsed like any other.
 *
 * @param written the text of a formula with its gaps filled
 */
export function formulaTemplates(
  hf: HyperFormula,
  set: SetCell,
  written: (formula: GappedFormula) => string,
): FormulaTemplates {
  const parser = (hf as unknown as { readonly _parser: { parse: Parse } })._parser;
  const parse = parser.parse.bind(parser);
  const templates = new Map<string, Template | undefined>();
  let ready: Parsed | undefined;
  let parsed = 0;
  parser.parse = (text, at) => {
    const given = ready;
    ready = undefined;
    return given ?? parse(text, at);
  };

  function template({ text, fillings }: GappedFormula, first: Parsed): void {
    parsed += 1;
    const sound = first.errors.length === 0;
    templates.set(text, sound ? templateOf(first, fillings.length) : undefined);
  }

  function put(at: SimpleCellAddress, text: string, formula: Parsed): void {
    ready = formula;
    try {
      set(at, text);
    } finally {
      ready = undefined;
    }
  }

  return {
    write: (at, formula) => {
      const known = templates.get(formula.text);
      if (known !== undefined) {
        put(at, '=', known(formula.fillings));
        return;
      }
      const text = `=${written(formula)}`;
      const first = parse(text, at);
      template(formula, first);
      put(at, text, first);
    },
    parsed: () => parsed,
  };
}
