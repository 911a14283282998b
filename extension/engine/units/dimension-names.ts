import {
  angle,
  area,
  divided,
  frequency,
  length,
  mass,
  money,
  multiplied,
  plain,
  raised,
  sameDimension,
  temperature,
  temperatureDifference,
  time,
  volume,
  type Dimension,
} from './dimension.ts';

const named: readonly (readonly [string, Dimension])[] = [
  ['number', plain],
  ['angle', angle],
  ['length', length],
  ['area', area],
  ['volume', volume],
  ['mass', mass],
  ['time', time],
  ['frequency', frequency],
  ['temperature', temperature],
  ['temperature difference', temperatureDifference],
  ['money', money],
];

const alsoNamed: readonly (readonly [string, Dimension])[] = [
  ['plain', plain],
  ['density', divided(mass, volume)],
  ['areal weight', divided(mass, area)],
];

const lengthPowers = new Map([
  [1, 'length'],
  [2, 'area'],
  [3, 'volume'],
]);

function factorNames(of: Dimension, sign: 1 | -1): string[] {
  const parts = [
    ['money', of.money],
    ['mass', of.mass],
    ['length', of.length],
    ['time', of.time],
    ['temperature difference', of.temperature],
  ] as const;
  return parts
    .filter(([, exponent]) => exponent * sign > 0)
    .map(([name, exponent]) => {
      const power = exponent * sign;
      if (name === 'length') return lengthPowers.get(power) ?? `length^${String(power)}`;
      return power === 1 ? name : `${name}^${String(power)}`;
    });
}

/** What people call a dimension: `length`, `mass per area`, `money per time`, `number`. */
export function dimensionName(of: Dimension): string {
  const known = named.find(([, dimension]) => sameDimension(dimension, of));
  if (known !== undefined) return known[0];
  const above = factorNames(of, 1);
  const below = factorNames(of, -1);
  const top = above.length === 0 ? 'number' : above.join(' × ');
  return below.length === 0 ? top : `${top} per ${below.join(' and ')}`;
}

function dimensionFactor(text: string): Dimension | undefined {
  const [name = '', power] = text.trim().split('^');
  const found = [...named, ...alsoNamed].find(([known]) => known === name.trim());
  if (found === undefined || power === undefined) return found?.[1];
  const exponent = Number(power);
  return Number.isFinite(exponent) ? raised(found[1], exponent) : undefined;
}

/**
 * The dimension a table of columns or functions names: `length`, `mass/area`, `money/time`,
 * `mass per volume`, `length^4`, `any`. Undefined where a word in it is not a dimension.
 */
export function dimensionFrom(text: string): Dimension | 'any' | undefined {
  if (text.trim() === 'any') return 'any';
  const [first = '', ...rest] = text.split(/\/| per /);
  const factors = first.split(/[*×]/).map(dimensionFactor);
  const start = factors.reduce((whole, factor, index) => {
    if (whole === undefined || factor === undefined) return undefined;
    return index === 0 ? factor : multiplied(whole, factor);
  }, factors[0]);
  return rest.reduce<Dimension | undefined>((whole, word) => {
    const below = dimensionFactor(word);
    return whole === undefined || below === undefined ? undefined : divided(whole, below);
  }, start);
}
