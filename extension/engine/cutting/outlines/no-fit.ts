import { intAt } from './cells.ts';
import { finePitch, type Form } from './forms.ts';

/**
 * Where one form may not lie from another: for each step of cells from the first's corner to the
 * second's, how deep they overlap (0: not at all), in fifths of a cell.
 */
export interface NoFit {
  readonly minX: number;
  readonly minY: number;
  readonly nx: number;
  readonly ny: number;
  /** By column: the step (dx, dy) stands at (dx − minX) × ny + dy − minY. */
  readonly depth: Uint16Array;
}

function blockedSteps(a: Form, b: Form): NoFit {
  const minX = -Math.floor((b.fineColumns - 1) / finePitch);
  const minY = -Math.floor((b.fineRows - 1) / finePitch);
  const nx = Math.floor((a.fineColumns - 1) / finePitch) - minX + 1;
  const ny = Math.floor((a.fineRows - 1) / finePitch) - minY + 1;
  const depth = new Uint16Array(nx * ny);
  const change = new Int32Array(nx + 1);
  for (let dy = minY; dy < minY + ny; dy++) {
    change.fill(0);
    markRow(a, b, { dy, minX, change });
    let open = 0;
    for (let at = 0; at < nx; at++) {
      open += change[at] ?? 0;
      if (open > 0) depth[at * ny + dy - minY] = 1;
    }
  }
  return { minX, minY, nx, ny, depth };
}

interface Row {
  readonly dy: number;
  readonly minX: number;
  readonly change: Int32Array;
}

function markRow(a: Form, b: Form, { dy, minX, change }: Row): void {
  const shift = dy * finePitch;
  const end = Math.min(a.fineRows, shift + b.fineRows);
  for (let row = Math.max(0, shift); row < end; row++) {
    const aEnd = intAt(a.first, row + 1);
    for (let at = intAt(a.first, row); at < aEnd; at += 2) {
      markSpan([intAt(a.spans, at), intAt(a.spans, at + 1)], b, row - shift, { minX, change });
    }
  }
}

function markSpan(
  [a1, a2]: readonly [number, number],
  b: Form,
  row: number,
  { minX, change }: Omit<Row, 'dy'>,
): void {
  const end = intAt(b.first, row + 1);
  for (let at = intAt(b.first, row); at < end; at += 2) {
    const low = Math.ceil((a1 - intAt(b.spans, at + 1)) / finePitch) - minX;
    const high = Math.floor((a2 - intAt(b.spans, at)) / finePitch) - minX;
    if (high < low) continue;
    change[low] = intAt(change, low) + 1;
    change[high + 1] = intAt(change, high + 1) - 1;
  }
}

// Steps of a chamfer distance: straight ones count 5, slanting ones 7.
const straight = 5;
const slanting = 7;
const far = 60_000;

function deepened({ nx, ny, depth }: NoFit): void {
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= nx || y >= ny ? 0 : (depth[x * ny + y] ?? 0);
  for (let x = 0; x < nx; x++) {
    for (let y = 0; y < ny; y++) {
      if ((depth[x * ny + y] ?? 0) === 0) continue;
      depth[x * ny + y] = Math.min(
        far,
        at(x - 1, y) + straight,
        at(x, y - 1) + straight,
        at(x - 1, y - 1) + slanting,
        at(x - 1, y + 1) + slanting,
      );
    }
  }
  for (let x = nx - 1; x >= 0; x--) {
    for (let y = ny - 1; y >= 0; y--) {
      const own = depth[x * ny + y] ?? 0;
      if (own === 0) continue;
      depth[x * ny + y] = Math.min(
        own,
        at(x + 1, y) + straight,
        at(x, y + 1) + straight,
        at(x + 1, y + 1) + slanting,
        at(x + 1, y - 1) + slanting,
      );
    }
  }
}

/** No-fit maps of all pairs of forms, each made when it is asked for first. */
export function openNoFits(forms: readonly Form[]): (a: number, b: number) => NoFit {
  const known: (NoFit | undefined)[] = [];
  return (a, b) => {
    const key = a * forms.length + b;
    const found = known[key];
    if (found !== undefined) return found;
    const [one, other] = [forms[a], forms[b]];
    if (one === undefined || other === undefined) throw new Error('no such form');
    const map = blockedSteps(one, other);
    deepened(map);
    known[key] = map;
    return map;
  };
}
