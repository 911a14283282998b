import { add, dot, real, whole } from './numbers.ts';

/**
 * A symmetric matrix with few entries: its lower half row by row, columns rising, and its diagonal.
 * Entries stand in `values`, row after row as in `columns`.
 */
export interface SymmetricMatrix {
  readonly size: number;
  readonly starts: Uint32Array;
  readonly columns: Uint32Array;
  readonly values: Float64Array;
  readonly diagonal: Float64Array;
}

/** An empty matrix with room for the entries of these pairs of rows. */
export function matrixFor(
  size: number,
  pairs: Iterable<readonly [number, number]>,
): SymmetricMatrix {
  const rows = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of pairs) if (a !== b) rows[Math.max(a, b)]?.add(Math.min(a, b));
  const starts = new Uint32Array(size + 1);
  const columns: number[] = [];
  rows.forEach((row, index) => {
    columns.push(...[...row].sort((a, b) => a - b));
    starts[index + 1] = columns.length;
  });
  return {
    size,
    starts,
    columns: Uint32Array.from(columns),
    values: new Float64Array(columns.length),
    diagonal: new Float64Array(size),
  };
}

/** Where the entry of two different rows stands in `values`. */
export function entryOf({ starts, columns }: SymmetricMatrix, a: number, b: number): number {
  const row = Math.max(a, b);
  const column = Math.min(a, b);
  for (let at = whole(starts, row); at < whole(starts, row + 1); at++) {
    if (whole(columns, at) === column) return at;
  }
  return -1;
}

/** The matrix times a vector. */
function times(matrix: SymmetricMatrix, x: Float64Array, into: Float64Array): void {
  const { size, starts, columns, values, diagonal } = matrix;
  for (let row = 0; row < size; row++) into[row] = real(diagonal, row) * real(x, row);
  for (let row = 0; row < size; row++) {
    let sum = 0;
    for (let at = whole(starts, row); at < whole(starts, row + 1); at++) {
      const column = whole(columns, at);
      const value = real(values, at);
      sum += value * real(x, column);
      add(into, column, value * real(x, row));
    }
    add(into, row, sum);
  }
}

/** A triangle L with the matrix's own pattern whose square is near the matrix. */
export interface Factor {
  readonly values: Float64Array;
  readonly diagonal: Float64Array;
}

/** Sum of products of the entries that two rows have in common, left of column `before`. */
function common(matrix: SymmetricMatrix, values: Float64Array, rows: readonly [number, number]) {
  const { starts, columns } = matrix;
  const [row, before] = rows;
  let a = whole(starts, row);
  let b = whole(starts, before);
  const ends = [whole(starts, row + 1), whole(starts, before + 1)] as const;
  let sum = 0;
  while (a < ends[0] && b < ends[1]) {
    const [left, right] = [whole(columns, a), whole(columns, b)];
    if (left >= before) break;
    if (left === right) sum += real(values, a++) * real(values, b++);
    else if (left < right) a += 1;
    else b += 1;
  }
  return sum;
}

/**
 * Incomplete Cholesky factor without fill, for use as a preconditioner.
 *
 * @source Meijerink and van der Vorst, "An iterative solution method for linear systems of which the
 *   coefficient matrix is a symmetric M-matrix" (Mathematics of Computation 31, 1977)
 */
export function factored(matrix: SymmetricMatrix): Factor {
  const { size, starts, columns } = matrix;
  const values = new Float64Array(matrix.values.length);
  const diagonal = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    let pivot = real(matrix.diagonal, row);
    for (let at = whole(starts, row); at < whole(starts, row + 1); at++) {
      const column = whole(columns, at);
      const rest = real(matrix.values, at) - common(matrix, values, [row, column]);
      const value = rest / real(diagonal, column);
      values[at] = value;
      pivot -= value * value;
    }
    // Without fill a pivot may come out at nothing: the plain diagonal serves there.
    diagonal[row] = Math.sqrt(pivot > 0 ? pivot : real(matrix.diagonal, row));
  }
  return { values, diagonal };
}

function solveFactor(matrix: SymmetricMatrix, factor: Factor, b: Float64Array, x: Float64Array) {
  const { size, starts, columns } = matrix;
  for (let row = 0; row < size; row++) {
    let sum = real(b, row);
    for (let at = whole(starts, row); at < whole(starts, row + 1); at++) {
      sum -= real(factor.values, at) * real(x, whole(columns, at));
    }
    x[row] = sum / real(factor.diagonal, row);
  }
  for (let row = size - 1; row >= 0; row--) {
    const value = real(x, row) / real(factor.diagonal, row);
    x[row] = value;
    for (let at = whole(starts, row); at < whole(starts, row + 1); at++) {
      add(x, whole(columns, at), -real(factor.values, at) * value);
    }
  }
}

/** Steps after which a system of this kind has long been solved. */
const mostSteps = 2000;

/**
 * Solves the matrix times x = b by conjugate gradients until what is left is `tolerance` of b.
 *
 * @param x where to begin; it becomes the answer
 * @source Hestenes and Stiefel, "Methods of conjugate gradients for solving linear systems" (Journal of
 *   Research of the National Bureau of Standards 49, 1952)
 */
export function solveLinear(
  matrix: SymmetricMatrix,
  factor: Factor,
  system: { readonly b: Float64Array; readonly x: Float64Array; readonly tolerance: number },
): Float64Array {
  const { b, x, tolerance } = system;
  const { size } = matrix;
  const image = new Float64Array(size);
  times(matrix, x, image);
  const left = b.map((value, row) => value - real(image, row));
  const goal = tolerance * Math.sqrt(dot(b, b));
  const ready = new Float64Array(size);
  solveFactor(matrix, factor, left, ready);
  const way = ready.slice();
  let product = dot(left, ready);
  for (let step = 0; step < mostSteps && Math.sqrt(dot(left, left)) > goal; step++) {
    times(matrix, way, image);
    const far = product / dot(way, image);
    for (let row = 0; row < size; row++) {
      add(x, row, far * real(way, row));
      add(left, row, -far * real(image, row));
    }
    solveFactor(matrix, factor, left, ready);
    const next = dot(left, ready);
    const share = next / product;
    product = next;
    for (let row = 0; row < size; row++) way[row] = real(ready, row) + share * real(way, row);
  }
  return x;
}
