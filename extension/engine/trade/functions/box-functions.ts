import type { FunctionEntry } from '../../formula/catalogue.ts';
import { frequency, plain, volume } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { needed } from '../arguments.ts';
import { boxF3, boxQtc, boxResonance, boxVolume } from '../box.ts';
import { quantityFunction } from '../quantity-function.ts';
import { tradeProblem } from '../trade-problems.ts';

const vas = needed('vas', volume, 'Volume of air as stiff as the driver’s suspension.');
const qts = needed('qts', plain, 'Total Q of the driver.');
const fs = needed('fs', frequency, 'Resonance of the driver in free air.');
const box = needed('volume', volume, 'Net volume of the box.');
const positive = { vas: 'positive', qts: 'positive', volume: 'positive' } as const;
const source = 'diysubwoofers.org, sealed systems (R. Small’s closed-box analysis)';

/** Closed box behind a ring. */
export const boxFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'BOX.VOLUME',
    group: 'box',
    help: 'Net volume of a closed box that gives a total Q.',
    parameters: [vas, qts, needed('qtc', plain, 'Total Q that is wanted, 0.707 for the flattest.')],
    dimension: volume,
    example: { formula: '=SHOW(BOX.VOLUME(45l, 0.65, 0.707), l)', shows: '245.8 l' },
    source,
    ranges: { vas: 'positive', qts: 'positive', qtc: 'positive' },
    answer: ({ vas: air, qts: own, qtc }, _, show) =>
      comparedValues(qtc, own) <= 0
        ? tradeProblem('box-below-driver', {
            function: 'BOX.VOLUME',
            qtc: show(qtc, plain),
            qts: show(own, plain),
          })
        : boxVolume(air, own, qtc),
  }),
  quantityFunction({
    name: 'BOX.QTC',
    group: 'box',
    help: 'Total Q of a driver in a closed box.',
    parameters: [vas, qts, box],
    dimension: plain,
    example: { formula: '=BOX.QTC(45l, 0.65, 30l)', shows: '1.02774' },
    source,
    ranges: positive,
    answer: ({ vas: air, qts: own, volume: net }) => boxQtc(air, own, net),
  }),
  quantityFunction({
    name: 'BOX.RESONANCE',
    group: 'box',
    help: 'Resonance of a driver in a closed box.',
    parameters: [fs, vas, box],
    dimension: frequency,
    example: { formula: '=BOX.RESONANCE(35Hz, 45l, 30l)', shows: '55.34 Hz' },
    source,
    ranges: { fs: 'positive', vas: 'positive', volume: 'positive' },
    answer: ({ fs: own, vas: air, volume: net }) => boxResonance(own, air, net),
  }),
  quantityFunction({
    name: 'BOX.F3',
    group: 'box',
    help: 'Frequency at which a closed box is 3 dB down.',
    parameters: [fs, vas, qts, box],
    dimension: frequency,
    example: { formula: '=BOX.F3(35Hz, 45l, 0.65, 30l)', shows: '42.99 Hz' },
    source,
    ranges: { ...positive, fs: 'positive' },
    answer: ({ fs: own, vas: air, qts: q, volume: net }) => boxF3(own, { vas: air, qts: q }, net),
  }),
];
