/**
 * Closed box behind a driver; volumes in one unit, frequencies in one unit.
 *
 * @source diysubwoofers.org, sealed systems (R. Small's closed-box analysis)
 */
function compliance(vas: number, boxVolume: number): number {
  return Math.sqrt(1 + vas / boxVolume);
}

/**
 * Volume of a closed box that gives a total Q; only above the driver's own.
 *
 * @source diysubwoofers.org, sealed systems
 * @example Vas 45 l, Qts 0.65, Qtc 0.707: 245.8 l
 */
export function boxVolume(vas: number, qts: number, qtc: number): number {
  return vas / ((qtc / qts) ** 2 - 1);
}

/** Total Q of a driver in a closed box. @source diysubwoofers.org, sealed systems */
export function boxQtc(vas: number, qts: number, volume: number): number {
  return qts * compliance(vas, volume);
}

/** Resonance of a driver in a closed box. @source diysubwoofers.org, sealed systems */
export function boxResonance(fs: number, vas: number, volume: number): number {
  return fs * compliance(vas, volume);
}

/**
 * Frequency at which a closed box is 3 dB down.
 *
 * @source diysubwoofers.org, sealed systems
 * @example Fs 35 Hz, Vas 45 l, Qts 0.65 in 30 l: 42.99 Hz
 */
export function boxF3(fs: number, driver: { vas: number; qts: number }, volume: number): number {
  const q = 1 / boxQtc(driver.vas, driver.qts, volume) ** 2 - 2;
  return boxResonance(fs, driver.vas, volume) * Math.sqrt((q + Math.sqrt(q * q + 4)) / 2);
}
