import { plain, type Dimension } from '../units/dimension.ts';
import { showQuantity } from '../units/show.ts';
import type { Parameter } from './catalogue.ts';

const settings = { units: 'in', currency: 'USD' } as const;

function dimensionOf({ type }: Parameter): Dimension {
  return type.kind === 'quantity' && type.dimensions.length === 1
    ? (type.dimensions[0] ?? plain)
    : plain;
}

/** The values that a parameter takes, in words: `more than 0 %, at most 100 %`; empty where all will do. */
export function rangeText(parameter: Parameter): string {
  const { range } = parameter;
  if (range === undefined) return '';
  const dimension = dimensionOf(parameter);
  const shown = (base: number): string => {
    // Nothing is nothing in every unit of length or mass; not so on a scale, and a tilt has a most.
    if (base === 0 && range.most === undefined && range.below === undefined) return '0';
    return showQuantity({ base, dimension }, settings, range.share === true ? '%' : undefined).text;
  };
  const { least, above, most, below, whole } = range;
  return [
    whole === true ? 'whole' : '',
    least === undefined ? '' : `at least ${shown(least)}`,
    above === undefined ? '' : `more than ${shown(above)}`,
    most === undefined ? '' : `at most ${shown(most)}`,
    below === undefined ? '' : `less than ${shown(below)}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}
