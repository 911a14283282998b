import type { FunctionEntry } from '../../formula/catalogue.ts';
import { area, arealWeight, density, length, mass, plain } from '../../units/dimension.ts';
import { needed } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import { tradeProblem } from '../trade-problems.ts';
import {
  boardMass,
  glueCoverage,
  glueNeed,
  repeatLength,
  stapleCount,
  wrapSize,
} from '../upholstery.ts';
import { buildUp } from './build-up.ts';

const dryCoat = needed('dry_coat', arealWeight, 'Weight of the coat when dry, by area.');
const solids = needed('solids', plain, 'Share of solids in the wet adhesive.');

/** Covering, gluing and stapling; boards by weight. */
export const upholsteryFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'WRAP.SIZE',
    group: 'cloth',
    help: 'Size of a blank that wraps a board: on both sides the edge, the return behind it, and grip.',
    parameters: [
      needed('size', length, 'Size of the board.'),
      needed('edge', length, 'Thickness of its edge.'),
      needed('turn', length, 'Return behind the board.'),
      needed('grip', length, 'What the hands need to hold.'),
    ],
    dimension: length,
    example: { formula: '=WRAP.SIZE(24in, 1/4in, 1in, 1in)', shows: '28 1/2 in' },
    source: 'common practice, no source',
    ranges: { size: 'positive' },
    answer: ({ size, edge, turn, grip }) => wrapSize(size, { edge, turn, grip }),
  }),
  quantityFunction({
    name: 'CLOTH.REPEAT',
    group: 'cloth',
    help: 'Length of patterned cloth to buy for a length worked from plain cloth.',
    parameters: [
      needed('length', length, 'Length of plain cloth.'),
      needed('across', length, 'Repeat of the pattern across the bolt.'),
      needed('along', length, 'Repeat of the pattern along the bolt.'),
      needed('width', length, 'Width of the bolt.'),
    ],
    dimension: length,
    example: { formula: '=CLOTH.REPEAT(8yd, 10in, 17in, 54in)', shows: '≈ 345 5/8 in' },
    source: 'carrscorner.com, pattern repeat chart for 54 in goods',
    ranges: { width: 'positive' },
    answer: ({ length: of, across, along, width }, _, show) =>
      repeatLength(of, { across, along }, width) ??
      tradeProblem('repeat-outside-chart', {
        function: 'CLOTH.REPEAT',
        repeat: show(across + along, length),
        width: show(width, length),
      }),
  }),
  quantityFunction({
    name: 'GLUE.COVERAGE',
    group: 'cloth',
    help: 'Area that an adhesive coats. A contact bond coats both faces, so it bonds half of that.',
    parameters: [needed('net', mass, 'Net mass of wet adhesive.'), solids, dryCoat],
    dimension: area,
    example: { formula: '=GLUE.COVERAGE(500g, 13%, 0.5g/sqft)', shows: '130 sqft' },
    source: '3M data sheets of Hi-Strength 90 and 1357, whose printed coverage this reproduces',
    ranges: { solids: 'share', dry_coat: 'positive' },
    answer: ({ net, solids: share, dry_coat }) => glueCoverage(net, share, dry_coat),
  }),
  quantityFunction({
    name: 'GLUE.NEED',
    group: 'cloth',
    help: 'Wet adhesive for a bond.',
    parameters: [
      needed('area', area, 'Area that is bonded.'),
      needed('faces', plain, 'Faces that are coated: 2 for contact adhesive, else 1.'),
      dryCoat,
      solids,
    ],
    dimension: mass,
    example: { formula: '=GLUE.NEED(10sqft, 2, 2.5g/sqft, 25%)', shows: '200 g' },
    source: 'the coverage identity of 3M’s data sheets, turned round',
    ranges: { faces: 'faces', solids: 'share' },
    answer: ({ area: of, faces, dry_coat, solids: share }) =>
      glueNeed({ area: of, faces }, dry_coat, share),
  }),
  quantityFunction({
    name: 'STAPLE.COUNT',
    group: 'cloth',
    help: 'Staples round an outline; the last gap is never wider than the spacing.',
    parameters: [
      needed('perimeter', length, 'Length of the outline.'),
      needed('spacing', length, 'From staple to staple.'),
    ],
    dimension: plain,
    example: { formula: '=STAPLE.COUNT(78 1/2in, 1in)', shows: '79' },
    source: 'common practice, no source',
    ranges: { spacing: 'positive' },
    answer: ({ perimeter, spacing }) => stapleCount(perimeter, spacing),
  }),
  quantityFunction({
    name: 'BOARD.MASS',
    group: 'cloth',
    help: 'Mass of a board.',
    parameters: [
      needed('area', area, 'Area of the board.'),
      needed('thickness', length, 'Thickness of the board, measured.'),
      needed('density', density, 'Density of the board.'),
    ],
    dimension: mass,
    example: { formula: '=SHOW(BOARD.MASS(32sqft, 1/2in, 43.5lb/cuft), lb)', shows: '58 lb' },
    source:
      'definition; agrees with the MDF weights of toolcrowd.com (a 4 × 8 ft sheet of 1/2 in is 58 lb)',
    ranges: { density: 'positive' },
    answer: ({ area: of, thickness, density: dense }) => boardMass(of, thickness, dense),
  }),
  buildUp,
];
