import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recalculation } from '../../../extension/engine/workbook/recalculation-order.ts';

interface Node {
  readonly idInGraph: number;
}

interface Drawn {
  readonly nodesSparseArray: Node[];
  readonly edgesSparseArray: number[][];
}

function graphOf(count: number, edges: readonly (readonly [number, number])[]): Drawn {
  const nodesSparseArray = Array.from({ length: count }, (_, idInGraph) => ({ idInGraph }));
  const edgesSparseArray: number[][] = nodesSparseArray.map(() => []);
  for (const [from, to] of edges) edgesSparseArray[from]?.push(to);
  return { nodesSparseArray, edgesSparseArray };
}

/** For each node those that can be reached from it by one step or more. */
function reached({ nodesSparseArray, edgesSparseArray }: Drawn): boolean[][] {
  return nodesSparseArray.map((_, from) => {
    const found = new Set<number>();
    const next = [...(edgesSparseArray[from] ?? [])];
    for (let node = next.pop(); node !== undefined; node = next.pop()) {
      if (!found.has(node)) next.push(...(edgesSparseArray[node] ?? []));
      found.add(node);
    }
    return nodesSparseArray.map(({ idInGraph }) => found.has(idInGraph));
  });
}

interface Seen {
  readonly worked: number[];
  readonly looping: number[];
}

function recalculated(
  graph: Drawn,
  moved: readonly number[],
  stays: ReadonlySet<number> = new Set(),
): Seen {
  const seen: Seen = { worked: [], looping: [] };
  recalculation<Node>(graph)(
    moved.map((idInGraph) => ({ idInGraph })),
    ({ idInGraph }) => {
      seen.worked.push(idInGraph);
      return !stays.has(idInGraph);
    },
    ({ idInGraph }) => seen.looping.push(idInGraph),
  );
  return seen;
}

const anyGraph = fc.integer({ min: 1, max: 12 }).chain((count) => {
  const node = fc.nat(count - 1);
  return fc.record({
    graph: fc.array(fc.tuple(node, node), { maxLength: 30 }).map((edges) => graphOf(count, edges)),
    moved: fc.uniqueArray(node, { minLength: 1 }),
    stays: fc.uniqueArray(node).map((nodes) => new Set(nodes)),
  });
});

describe('recalculation', () => {
  test('works out what follows from what moved, each behind all that it reads, and nothing else', () => {
    fc.assert(
      fc.property(anyGraph, ({ graph, moved }) => {
        const { worked, looping } = recalculated(graph, moved);
        const way = reached(graph);
        const following = graph.nodesSparseArray.filter(({ idInGraph: id }) =>
          moved.some((start) => start === id || way[start]?.[id] === true),
        );
        const ids = following.map(({ idInGraph }) => idInGraph);
        const loops = ids.filter((id) => way[id]?.[id] === true);
        expect([...looping].sort()).toEqual([...loops].sort());
        expect([...worked].sort()).toEqual(ids.filter((id) => !loops.includes(id)).sort());
        for (const [place, id] of worked.entries())
          for (const later of worked.slice(place + 1)) expect(way[later]?.[id]).toBe(false);
      }),
    );
  });

  test('what reads only nodes that came to the same is not worked out', () => {
    fc.assert(
      fc.property(anyGraph, ({ graph, moved, stays }) => {
        const { worked, looping } = recalculated(graph, moved, stays);
        const changed = [...looping, ...worked.filter((id) => !stays.has(id))];
        const read = new Set(changed.flatMap((id) => graph.edgesSparseArray[id] ?? []));
        for (const id of worked) expect(moved.includes(id) || read.has(id)).toBe(true);
        for (const id of read) expect([...worked, ...looping]).toContain(id);
      }),
    );
  });

  test('one walk leaves nothing behind for the next', () => {
    const graph = graphOf(4, [
      [0, 1],
      [1, 2],
      [2, 1],
      [2, 3],
    ]);
    const recalculate = recalculation<Node>(graph);
    const walk = (): Seen => {
      const seen: Seen = { worked: [], looping: [] };
      recalculate(
        [{ idInGraph: 0 }],
        ({ idInGraph }) => seen.worked.push(idInGraph) > 0,
        ({ idInGraph }) => seen.looping.push(idInGraph),
      );
      return seen;
    };
    expect(walk()).toEqual({ worked: [0, 3], looping: [1, 2] });
    expect(walk()).toEqual(walk());
  });

  test('a chain of a hundred thousand cells is no matter of depth', () => {
    const count = 100_000;
    const edges = Array.from({ length: count - 1 }, (_, from) => [from, from + 1] as const);
    expect(recalculated(graphOf(count, edges), [0]).worked).toHaveLength(count);
  });

  test('nodes that were taken out, and those that read them, are passed over', () => {
    const graph = graphOf(3, [
      [0, 1],
      [1, 2],
    ]);
    // As the evaluator leaves a node that it has removed.
    Reflect.deleteProperty(graph.nodesSparseArray, 1);
    Reflect.deleteProperty(graph.edgesSparseArray, 1);
    expect(recalculated(graph, [0]).worked).toEqual([0]);
  });
});
