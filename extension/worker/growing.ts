/** Shares are told only when they have grown by this much: a bar shows no finer. */
const step = 0.02;

/** Passes shares on as they grow, none twice and none above the whole, however often a search tells. */
export function growing(tell: (share: number) => void): (share: number) => void {
  let told = 0;
  return (share) => {
    const whole = Math.min(1, share);
    if (whole < told + step) return;
    told = whole;
    tell(whole);
  };
}
