import type { FunctionEntry } from '../../formula/catalogue.ts';
import {
  arealWeight,
  area,
  density,
  length,
  mass,
  plain,
  temperature,
  time,
  volume,
} from '../../units/dimension.ts';
import { needed, optional } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import {
  filmMass,
  laminateThickness,
  mixShare,
  potLife,
  resinForGlass,
  resinSoak,
} from '../resin.ts';
import { mixBorder, mixChart } from './mix-chart.ts';
import { mixQuantity } from './mix-quantity.ts';
import { mixBatches, resinVolume } from './resin-amounts.ts';

const surface = needed('area', area, 'Area of surface.');
const percentHelp = 'Share of catalyst, such as 2 %.';

const resinNeeds: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'RESIN.SOAK',
    group: 'resin',
    help: 'Resin that soaks into cloth.',
    parameters: [
      surface,
      needed('uptake', arealWeight, 'Resin that one layer takes up, by area; weigh a test piece.'),
      optional({ name: 'layers', dimension: plain, help: 'Layers; 1 when left out.' }, 1),
    ],
    dimension: mass,
    example: { formula: '=RESIN.SOAK(4sqft, 2000g/m2)', shows: '743.2 g' },
    source: 'definition; uptakes are shop figures',
    answer: ({ area: of, uptake, layers }) => resinSoak(of, uptake, layers),
  }),
  quantityFunction({
    name: 'RESIN.GLASS',
    group: 'resin',
    help: 'Resin for layers of glass mat or cloth.',
    parameters: [
      surface,
      needed(
        'glass_weight',
        arealWeight,
        'Weight of one layer: mat is sold by oz/sqft, cloth by oz/sqyd.',
      ),
      needed('layers', plain, 'Layers.'),
      needed('ratio', plain, 'Resin to glass, by mass: 2.5 for mat laid by hand.'),
    ],
    dimension: mass,
    example: { formula: '=RESIN.GLASS(1m2, 600g/m2, 3, 2.5)', shows: '4.5 kg' },
    source: 'UK fibreglass guide (3 layers of 600 g mat on 1 m² take 4.5 kg)',
    ranges: { glass_weight: 'positive', ratio: 'positive' },
    answer: ({ area: of, glass_weight, layers, ratio }) =>
      resinForGlass(of, { weight: glass_weight, layers }, ratio),
  }),
  quantityFunction({
    name: 'RESIN.FILM',
    group: 'resin',
    help: 'Mass of a film of resin, filler or paint.',
    parameters: [
      surface,
      needed('thickness', length, 'Thickness of the film.'),
      needed('density', density, 'Density of the material.'),
    ],
    dimension: mass,
    example: { formula: '=RESIN.FILM(1m2, 1mm, 1.2g/cm3)', shows: '1.2 kg' },
    source: 'definition',
    ranges: { density: 'positive' },
    answer: ({ area: of, thickness, density: dense }) => filmMass(of, thickness, dense),
  }),
  resinVolume,
  quantityFunction({
    name: 'LAMINATE.THICKNESS',
    group: 'resin',
    help: 'Thickness of one layer of laminate.',
    parameters: [
      needed('glass_weight', arealWeight, 'Weight of the glass.'),
      needed('glass_fraction', plain, 'Share of glass by mass: 30 % for mat laid by hand.'),
      needed('glass_density', density, 'Density of the glass, 2.56 g/cm3 for E glass.'),
      needed('resin_density', density, 'Density of the cured resin.'),
    ],
    dimension: length,
    example: {
      formula: '=LAMINATE.THICKNESS(450g/m2, 30%, 2.56g/cm3, 1.2g/cm3)',
      shows: '≈ 1/16 in',
    },
    source: 'Epoxyworks, “Calculating laminate thickness”',
    ranges: {
      glass_fraction: 'glass-share',
      glass_density: 'positive',
      resin_density: 'positive',
    },
    answer: ({ glass_weight, glass_fraction, glass_density, resin_density }) =>
      laminateThickness(glass_weight, glass_fraction, {
        glass: glass_density,
        resin: resin_density,
      }),
  }),
];

const mixes: readonly FunctionEntry[] = [
  mixQuantity,
  mixChart,
  mixBorder,
  quantityFunction({
    name: 'MIX.PERCENT',
    group: 'resin',
    help: 'Share of catalyst in what was mixed, by mass.',
    parameters: [
      needed('resin_mass', mass, 'Resin that was weighed.'),
      needed('catalyst_mass', mass, 'Catalyst that was weighed.'),
    ],
    dimension: plain,
    example: { formula: '=MIX.PERCENT(5lb, 40g)', shows: '0.017637' },
    source: 'Valspar Composites, mould-making guide',
    ranges: { resin_mass: 'positive' },
    answer: ({ resin_mass, catalyst_mass }) => mixShare(resin_mass, catalyst_mass),
  }),
  quantityFunction({
    name: 'MIX.DROPS',
    group: 'resin',
    help: 'Drops in a volume, for a dropper whose drop was measured.',
    parameters: [
      needed('volume', volume, 'Volume to count out.'),
      needed('drop', volume, 'Volume of one drop: count the drops in a measured volume.'),
    ],
    dimension: plain,
    example: { formula: '=MIX.DROPS(2ml, 0.05ml)', shows: '40' },
    source: 'University of Houston, calibrating a dropper (35 drops fill 2 mL)',
    ranges: { drop: 'positive' },
    answer: ({ volume: of, drop }) => of / drop,
  }),
  quantityFunction({
    name: 'MIX.POTLIFE',
    group: 'resin',
    help: 'Time until a mix gels, worked from a gel test of the shop; for planning only.',
    parameters: [
      needed('percent', plain, percentHelp),
      needed('temperature', temperature, 'Temperature of shop and resin.'),
      needed('test_minutes', time, 'Gel time of the test.'),
      needed('test_percent', plain, 'Share of catalyst in the test.'),
      needed('test_temperature', temperature, 'Temperature of the test.'),
    ],
    dimension: time,
    example: { formula: '=MIX.POTLIFE(2%, 60degF, 18min, 2%, 78degF)', shows: '36 min' },
    source: 'gel time halves every 18 °F (System Three, for epoxy); for polyester from memory',
    ranges: {
      percent: 'share',
      test_percent: 'share',
      test_minutes: 'positive',
      temperature: 'shop',
      test_temperature: 'shop',
    },
    answer: ({ percent, temperature: now, test_minutes, test_percent, test_temperature }) =>
      potLife(
        { share: percent, celsius: now },
        { minutes: test_minutes, share: test_percent, celsius: test_temperature },
      ),
  }),
];

/** Resin by area, and what is mixed into it. */
export const resinFunctions: readonly FunctionEntry[] = [...resinNeeds, ...mixes, mixBatches];
