import type { HyperFormula } from 'hyperformula';

/** The evaluator's graph of what reads what. Nodes are named by their places in its lists. */
export interface Graph<Node> {
  readonly nodesSparseArray: readonly (Node | undefined)[];
  /** The readers of each node. */
  readonly edgesSparseArray: readonly (readonly (number | undefined)[] | undefined)[];
}

/** Works the nodes out that read what moved, each behind all that it reads. */
type Recalculate<Node> = (
  moved: readonly Node[],
  work: (node: Node) => boolean,
  loops: (node: Node) => void,
) => { readonly sorted: readonly Node[]; readonly cycled: readonly Node[] };

/** Room for a number a node, kept from one recalculation to the next; what an earlier one left counts for none. */
class Room {
  private numbers = new Float64Array(1024);

  of(nodes: number): Float64Array {
    if (this.numbers.length < nodes) this.numbers = new Float64Array(nodes * 2);
    return this.numbers;
  }
}

interface Named {
  readonly idInGraph?: number;
}

const noReaders: readonly number[] = [];

/** One way through a graph, by Tarjan's algorithm for strongly connected components, without recursion. */
class Walk {
  /** Nodes in the order in which they were left: each behind all that read it. */
  readonly left: number[] = [];
  readonly looping = new Set<number>();
  /** The nodes from the start to where it stands, with how many readers of each were looked at. */
  private readonly path: number[] = [];
  private readonly steps: number[] = [];
  /** Nodes whose loop, if they are of one, is not all found. */
  private readonly open: number[] = [];

  private readonly graph: Graph<Named>;
  private readonly entered: Float64Array;
  private readonly low: Float64Array;
  /** Numbers of nodes that were entered in this walk are above those of the walks before. */
  private readonly begun: number;
  private count = 0;

  constructor(
    graph: Graph<Named>,
    numbers: { readonly entered: Float64Array; readonly low: Float64Array; readonly begun: number },
  ) {
    this.graph = graph;
    ({ entered: this.entered, low: this.low, begun: this.begun } = numbers);
  }

  /** How far the numbers have come. */
  get clock(): number {
    return this.begun + this.count;
  }

  from(start: number): void {
    if (this.isEntered(start)) return;
    this.enter(start);
    for (let node = this.path.at(-1); node !== undefined; node = this.path.at(-1)) {
      const at = this.steps.at(-1) ?? 0;
      const readers = this.graph.edgesSparseArray[node] ?? noReaders;
      if (at < readers.length) this.step(node, readers[at]);
      else this.leave(node);
    }
  }

  private isEntered(node: number): boolean {
    return (this.entered[node] ?? 0) > this.begun;
  }

  private enter(node: number): void {
    this.count += 1;
    this.entered[node] = this.low[node] = this.clock;
    this.path.push(node);
    this.steps.push(0);
    this.open.push(node);
  }

  private lower(node: number, to: number | undefined): void {
    this.low[node] = Math.min(this.low[node] ?? Infinity, to ?? Infinity);
  }

  private step(node: number, reader: number | undefined): void {
    this.steps[this.steps.length - 1] = (this.steps.at(-1) ?? 0) + 1;
    if (reader === undefined || this.graph.nodesSparseArray[reader] === undefined) return;
    if (reader === node) this.looping.add(node);
    else if (!this.isEntered(reader)) this.enter(reader);
    else if (this.low[reader] !== Infinity) this.lower(node, this.entered[reader]);
  }

  /** A loop ends at the node of it that was entered first. */
  private leave(node: number): void {
    this.path.pop();
    this.steps.pop();
    const before = this.path.at(-1);
    if (this.low[node] === this.entered[node]) this.close(node);
    else if (before !== undefined) this.lower(before, this.low[node]);
  }

  private close(node: number): void {
    const alone = this.open.at(-1) === node;
    for (let last = this.open.pop(); last !== undefined; last = this.open.pop()) {
      this.low[last] = Infinity;
      this.left.push(last);
      if (!alone) this.looping.add(last);
      if (last === node) break;
    }
  }
}

/**
 * Goes through a graph from the nodes that moved. A `work` tells whether a node came to something else:
 * what reads only nodes that did not is not worked out. Nodes that read themselves, by whatever way, go
 * to `loops` instead.
 *
 * The evaluator's own walk makes lists as long as its whole graph each time, which for the 60 cells that
 * an edit moves cost more than the walk.
 *
 * @source R. Tarjan, "Depth-first search and linear graph algorithms", SIAM J. Comput. 1(2), 1972
 */
export function recalculation<Node extends Named>(graph: Graph<Node>): Recalculate<Node> {
  const rooms = { entered: new Room(), low: new Room(), stale: new Room() };
  let clock = 0;
  return (moved, work, loops) => {
    const size = graph.nodesSparseArray.length;
    const walk = new Walk(graph, {
      entered: rooms.entered.of(size),
      low: rooms.low.of(size),
      begun: clock,
    });
    const from = moved.map((node) => node.idInGraph).filter((id) => id !== undefined);
    for (const start of from.reverse()) walk.from(start);
    clock = walk.clock + 1;
    const stale = rooms.stale.of(size);
    const now = clock;
    for (const node of from) stale[node] = now;
    const [sorted, cycled]: [Node[], Node[]] = [[], []];
    for (const id of walk.left.reverse()) {
      const node = graph.nodesSparseArray[id];
      if (node === undefined) continue;
      const loop = walk.looping.has(id);
      (loop ? cycled : sorted).push(node);
      if (loop) loops(node);
      else if (stale[id] !== now || !work(node)) continue;
      for (const reader of graph.edgesSparseArray[id] ?? noReaders)
        if (reader !== undefined) stale[reader] = now;
    }
    return { sorted, cycled };
  };
}

/** The part of the evaluator that is no part of its interface; its version is fixed. */
interface Inside {
  readonly dependencyGraph: {
    readonly graph: Graph<Named> & {
      getTopSortedWithSccSubgraphFrom: Recalculate<Named>;
    };
  };
}

/** Has an evaluator recalculate in the order that is found here. */
export function orderHere(hf: HyperFormula): void {
  const { graph } = (hf as unknown as Inside).dependencyGraph;
  graph.getTopSortedWithSccSubgraphFrom = recalculation(graph);
}
