import type { FunctionEntry } from '../../formula/catalogue.ts';
import { length } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { needed } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import { jigFunctions } from './jig-functions.ts';
import { bearingOffset, bearingSize, bushingOffset } from '../router.ts';
import { tradeProblem } from '../trade-problems.ts';

const rabbets = '“Cut perfect rabbets”, WOOD magazine';
const bushings = 'router manuals: hole = template − bushing + bit';

/** Router bearings, guide bushings, jigs and hole saws. */
export const routerFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'BEARING.OFFSET',
    group: 'router',
    help: 'Width of the rebate that a cutter leaves over a bearing of another diameter.',
    parameters: [
      needed('cutter', length, 'Diameter of the cutter.'),
      needed('bearing', length, 'Diameter of the bearing.'),
    ],
    dimension: length,
    example: { formula: '=BEARING.OFFSET(1 3/8in, 1 1/8in)', shows: '1/8 in' },
    source: rabbets,
    ranges: { cutter: 'positive', bearing: 'positive' },
    refuse: ({ cutter, bearing }, show) =>
      comparedValues(bearing, cutter) > 0
        ? tradeProblem('bearing-larger-than-cutter', {
            function: 'BEARING.OFFSET',
            bearing: show(bearing, length),
            cutter: show(cutter, length),
          })
        : undefined,
    answer: ({ cutter, bearing }) => Math.max(0, bearingOffset(cutter, bearing)),
  }),
  quantityFunction({
    name: 'BEARING.SIZE',
    group: 'router',
    help: 'Diameter of the bearing with which a cutter leaves a rebate of this width.',
    parameters: [
      needed('cutter', length, 'Diameter of the cutter.'),
      needed('offset', length, 'Width of the rebate.'),
    ],
    dimension: length,
    example: { formula: '=BEARING.SIZE(1 3/8in, 1/8in)', shows: '1 1/8 in' },
    source: rabbets,
    ranges: { cutter: 'positive' },
    refuse: ({ cutter, offset }, show) =>
      comparedValues(2 * offset, cutter) >= 0
        ? tradeProblem('bearing-none-small-enough', {
            function: 'BEARING.SIZE',
            offset: show(offset, length),
            cutter: show(cutter, length),
          })
        : undefined,
    answer: ({ cutter, offset }) => bearingSize(cutter, offset),
  }),
  quantityFunction({
    name: 'BUSHING.OFFSET',
    group: 'router',
    help: 'Distance from the edge of a template to the cut when a guide bushing follows it.',
    parameters: [
      needed('bushing', length, 'Outside diameter of the guide bushing.'),
      needed('bit', length, 'Diameter of the bit.'),
    ],
    dimension: length,
    example: { formula: '=BUSHING.OFFSET(3/4in, 1/2in)', shows: '1/8 in' },
    source: bushings,
    ranges: { bushing: 'positive', bit: 'positive' },
    refuse: ({ bushing, bit }, show) =>
      comparedValues(bit, bushing) >= 0
        ? tradeProblem('tool-bit-larger', {
            function: 'BUSHING.OFFSET',
            bit: show(bit, length),
            other: 'the bushing',
            value: show(bushing, length),
          })
        : undefined,
    answer: ({ bushing, bit }) => bushingOffset(bushing, bit),
  }),
  ...jigFunctions,
];
