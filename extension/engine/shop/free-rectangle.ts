/** A box on a sheet, mm from its corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

interface Edges {
  readonly left: number;
  readonly low: number;
  readonly right: number;
  readonly high: number;
}

function edgesOf({ x, y, length, width }: Box, gap: number): Edges {
  return { left: x - gap, low: y - gap, right: x + length + gap, high: y + width + gap };
}

function isTouched(free: Edges, { left, low, right, high }: Edges): boolean {
  return left < free.right && right > free.left && low < free.high && high > free.low;
}

/** What is left of a free rectangle where a box lies in it: up to four that overlap. */
function without(free: Edges, box: Edges): readonly Edges[] {
  return [
    { ...free, right: box.left },
    { ...free, left: box.right },
    { ...free, high: box.low },
    { ...free, low: box.high },
  ].filter(({ left, low, right, high }) => right > left && high > low);
}

function holds(outer: Edges, inner: Edges): boolean {
  return (
    outer.left <= inner.left &&
    outer.low <= inner.low &&
    outer.right >= inner.right &&
    outer.high >= inner.high
  );
}

function areaOf({ left, low, right, high }: Edges): number {
  return (right - left) * (high - low);
}

/** The largest rectangle of a sheet that no part lies in, a saw cut away from each. */
export function largestFree(
  sheet: { readonly length: number; readonly width: number },
  parts: readonly Box[],
  kerf: number,
): Box | undefined {
  let free: readonly Edges[] = [{ left: 0, low: 0, right: sheet.length, high: sheet.width }];
  for (const part of parts) {
    const box = edgesOf(part, kerf);
    const cut = free.flatMap((one) => (isTouched(one, box) ? without(one, box) : [one]));
    // Every largest rectangle is kept; what lies within another one is not needed.
    free = cut.filter(
      (one, index) =>
        !cut.some(
          (other, at) => at !== index && holds(other, one) && (at < index || !holds(one, other)),
        ),
    );
  }
  const [first, ...more] = free;
  if (first === undefined) return undefined;
  const best = more.reduce((most, one) => (areaOf(one) > areaOf(most) ? one : most), first);
  const { left, low, right, high } = best;
  return { x: left, y: low, length: right - left, width: high - low };
}
