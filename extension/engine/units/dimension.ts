/**
 * Dimension of a value: exponents over length, mass, time, temperature difference and money.
 * Halves are allowed (a square root of an area). Base units: mm, g, min, °C, the job's currency;
 * so areas are mm² and volumes mm³.
 */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly money: number;
  /**
   * `angle` marks a plain number in radians; `point` marks a temperature on a scale (in °C), as
   * against a temperature difference.
   */
  readonly tag?: 'angle' | 'point';
}

function dimension(part: Partial<Dimension>): Dimension {
  return { length: 0, mass: 0, time: 0, temperature: 0, money: 0, ...part };
}

export const plain = dimension({});
export const angle = dimension({ tag: 'angle' });
export const length = dimension({ length: 1 });
export const area = dimension({ length: 2 });
export const volume = dimension({ length: 3 });
export const mass = dimension({ mass: 1 });
export const time = dimension({ time: 1 });
export const frequency = dimension({ time: -1 });
export const temperature = dimension({ temperature: 1, tag: 'point' });
export const temperatureDifference = dimension({ temperature: 1 });
export const money = dimension({ money: 1 });
export const density = dimension({ mass: 1, length: -3 });
export const arealWeight = dimension({ mass: 1, length: -2 });
