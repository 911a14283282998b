import type { FunctionEntry } from '../../formula/catalogue.ts';
import { length, plain } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { needed, optional } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import { bushingTemplate, grilleSize, holeSawSize, jigRadius } from '../router.ts';
import { tradeProblem } from '../trade-problems.ts';

const bit = needed('bit', length, 'Diameter of the bit.');

/** Templates, circle jigs, hole saws and grilles. */
export const jigFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'BUSHING.TEMPLATE',
    group: 'router',
    help: 'Size of the template for a guide bushing: for an opening cut inside it, or a part cut outside it.',
    parameters: [
      needed('size', length, 'Size of the opening or part.'),
      needed('bushing', length, 'Outside diameter of the guide bushing.'),
      bit,
    ],
    choice: {
      name: 'side',
      help: 'inside for an opening, outside for a part.',
      choices: ['inside', 'outside'],
    },
    dimension: length,
    example: { formula: '=BUSHING.TEMPLATE(6in, 3/4in, 1/2in, inside)', shows: '6 1/4 in' },
    source: 'router manuals: hole = template − bushing + bit',
    ranges: { size: 'positive', bushing: 'positive', bit: 'positive' },
    answer: ({ size, bushing, bit: tool }, side, show) => {
      if (comparedValues(tool, bushing) >= 0) {
        return tradeProblem('tool-bit-larger', {
          function: 'BUSHING.TEMPLATE',
          bit: show(tool, length),
          other: 'the bushing',
          value: show(bushing, length),
        });
      }
      const template = bushingTemplate(size, { bushing, bit: tool }, side);
      if (template > 0) return template;
      return tradeProblem('size-used-up', {
        function: 'BUSHING.TEMPLATE',
        whole: show(size, length),
        taken: show((bushing - tool) / 2, length),
        least: show(bushing - tool, length),
      });
    },
  }),
  quantityFunction({
    name: 'JIG.RADIUS',
    group: 'router',
    help: 'Distance from the pivot of a circle jig to the centre of the bit: half a bit inside the line of a hole, half a bit outside that of a disc. The edge of the bit that cuts the line is then half the diameter from the pivot.',
    parameters: [needed('diameter', length, 'Diameter of the hole or disc.'), bit],
    choice: {
      name: 'side',
      help: 'hole when the inside is cut away, disc when it is kept.',
      choices: ['hole', 'disc'],
    },
    dimension: length,
    example: { formula: '=JIG.RADIUS(11in, 1/2in, hole)', shows: '5 1/4 in' },
    source:
      'geometry; goreading.org, mounting rings for a 12 in speaker, sets the cutting edge: 6 1/2 in for a 13 in ring, 5 1/2 in for an 11 in hole',
    ranges: { diameter: 'positive', bit: 'positive' },
    answer: ({ diameter, bit: tool }, side, show) =>
      side === 'hole' && comparedValues(tool, diameter) > 0
        ? tradeProblem('tool-bit-larger', {
            function: 'JIG.RADIUS',
            bit: show(tool, length),
            other: 'the hole',
            value: show(diameter, length),
          })
        : jigRadius(diameter, tool, side),
  }),
  quantityFunction({
    name: 'HOLESAW.SIZE',
    group: 'router',
    help: 'Smallest stock hole saw that cuts a hole of at least this diameter; no published series was found, so look in the drawer too.',
    parameters: [needed('diameter', length, 'Diameter of the hole.')],
    dimension: length,
    example: { formula: '=HOLESAW.SIZE(54mm)', shows: '2 1/4 in' },
    source:
      'series from memory, no published list: 1/16 in steps to 1 3/4 in, 1/8 in to 3 in, 1/4 in to 6 in',
    ranges: { diameter: 'positive' },
    answer: ({ diameter }, _, show) =>
      holeSawSize(diameter) ??
      tradeProblem('hole-saw-too-large', {
        function: 'HOLESAW.SIZE',
        diameter: show(diameter, length),
        most: show(6 * 25.4, length),
      }),
  }),
  quantityFunction({
    name: 'GRILLE.SIZE',
    group: 'router',
    help: 'Size of a grille frame for an opening: covering and clearance take their room on each side.',
    parameters: [
      needed('opening', length, 'Size of the opening, before it is covered.'),
      needed('covering', length, 'Thickness of one layer of covering.'),
      needed('clearance', length, 'Room to keep on each side.'),
      optional(
        {
          name: 'layers',
          dimension: plain,
          help: 'Layers of covering on each side; 2 when left out: on the opening’s edge and on the frame.',
        },
        2,
      ),
    ],
    dimension: length,
    example: { formula: '=GRILLE.SIZE(8in, 1/16in, 1/32in)', shows: '7 11/16 in' },
    source: 'common practice, no source',
    ranges: { opening: 'positive', layers: 'count-or-none' },
    answer: ({ opening, covering, clearance, layers }, _, show) => {
      const size = grilleSize(opening, { thickness: covering, layers }, clearance);
      if (size > 0) return size;
      return tradeProblem('size-used-up', {
        function: 'GRILLE.SIZE',
        whole: show(opening, length),
        taken: show(covering * layers + clearance, length),
        least: show(2 * (covering * layers + clearance), length),
      });
    },
  }),
];
