import type { Corner, Loops } from './shape-rows.ts';

type Loop = readonly Corner[];

function side([ax, ay]: Corner, [bx, by]: Corner, [px, py]: Corner): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}

function cross(a: Loop, b: Loop): boolean {
  return a.some((from, at) => {
    const to = a[(at + 1) % a.length] ?? from;
    return b.some((start, other) => {
      const end = b[(other + 1) % b.length] ?? start;
      return (
        side(from, to, start) * side(from, to, end) < 0 &&
        side(start, end, from) * side(start, end, to) < 0
      );
    });
  });
}

function inside(loops: readonly Loop[], [px, py]: Corner): boolean {
  let is = false;
  for (const loop of loops) {
    loop.forEach(([ax, ay], at) => {
      const [bx, by] = loop[(at + 1) % loop.length] ?? [ax, ay];
      if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) is = !is;
    });
  }
  return is;
}

/** Whether two parts lie on each other's material: their edges cross, or one lies on the other. */
export function loopsMeet(a: Loops, b: Loops): boolean {
  const [own, other] = [
    [a.outer, ...a.holes],
    [b.outer, ...b.holes],
  ];
  if (own.some((one) => other.some((two) => cross(one, two)))) return true;
  // Without a crossing each loop lies wholly on one side of the other part's edges.
  const middle = (loop: Loop): Corner => {
    const [first = [0, 0], second = first] = loop;
    return [(first[0] + second[0]) / 2, (first[1] + second[1]) / 2];
  };
  return inside(own, middle(b.outer)) || inside(other, middle(a.outer));
}
