// One reader for each kind of list: code that meets one kind only is compiled to a plain load.

/** A whole number of a list; 0 beyond its end. */
export function intAt(list: Int32Array, index: number): number {
  return list[index] ?? 0;
}

/** Whether a step of a map is blocked (1); 0 beyond its end. */
export function blockedAt(list: Uint8Array, index: number): number {
  return list[index] ?? 0;
}

/** A depth of a map; 0 beyond its end. */
export function depthAt(list: Uint16Array, index: number): number {
  return list[index] ?? 0;
}

/** A weight of a table; 0 beyond its end. */
export function weightAt(list: Float64Array, index: number): number {
  return list[index] ?? 0;
}
