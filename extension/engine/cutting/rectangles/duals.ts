/** Turns a length, as a share of the sheet, into one that no sheet can hold more than 1 of. */
export type Dual = (share: number) => number;

// Shares come from whole numbers; what differs by less is the same.
const near = 1e-9;

function wholeParts(k: number): Dual {
  return (x) => {
    const times = x * (k + 1);
    return Math.abs(times - Math.round(times)) < near ? x : Math.floor(times) / k;
  };
}

function largeAlone(eps: number): Dual {
  return (x) => (x > 1 - eps + near ? 1 : x < eps - near ? 0 : x);
}

function inHalves(eps: number): Dual {
  const most = Math.floor(1 / eps + near);
  return (x) => {
    if (x > 0.5 + near) return 1 - Math.floor((1 - x) / eps + near) / most;
    return x < eps - near ? 0 : 1 / most;
  };
}

/** Dual feasible functions that suit lengths of these shares of the stock. */
export function dualsFor(shares: readonly number[]): readonly Dual[] {
  const all = [...new Set(shares.flatMap((x) => (x <= 0.5 ? [x] : [1 - x])))].filter(
    (x) => x > near,
  );
  all.sort((a, b) => a - b);
  // Of very many sizes a sample does: every dual gives a true bound, only a weaker one.
  const every = Math.ceil(all.length / 60);
  const sampled = all.filter((_, index) => index % every === 0);
  return [
    (x) => x,
    ...Array.from({ length: 12 }, (_, index) => wholeParts(index + 1)),
    ...sampled.map(largeAlone),
    ...sampled.map(inHalves),
  ];
}
