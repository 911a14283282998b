import type { Problem } from '../../problems.ts';
import { length } from '../../units/dimension.ts';
import { readQuantity } from '../../units/read-quantity.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf, wordIn } from '../cells.ts';
import { shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

function fallsThrough(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  const [frame, cutout] = [baseIn(row, 'frame', length), baseIn(row, 'cutout', length)];
  if (frame === undefined || cutout === undefined || cutout < frame) return [];
  const details = {
    row: nameOf(row),
    cutout: shown(cutout, length, { settings }),
    frame: shown(frame, length, { settings }),
  };
  return [trapProblem('cutout-not-below-frame', details, { place: placeOf(row, 'cutout') })];
}

const sizes = /(\d+(?:[ -]\d+\/\d+|\.\d+|[½¼¾])?)\s*(?:-\s*)?(in\b|inch\b|"|″|mm\b|cm\b)/gi;

/** Sizes that a name tells, in mm: “6 1/2 in”, “6.5"”, “165 mm”. */
export function sizesNamed(name: string, settings: TrapView['settings']): readonly number[] {
  return [...name.matchAll(sizes)].flatMap(([, number = '', unit = '']) => {
    const word = /^(mm|cm)$/i.test(unit) ? unit.toLowerCase() : 'in';
    const read = readQuantity(`${number.replace('-', ' ')} ${word}`, { settings, wanted: length });
    return read.ok ? [read.value.value.base] : [];
  });
}

function isNominal(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  const cutout = baseIn(row, 'cutout', length);
  if (cutout === undefined) return [];
  const named = sizesNamed(nameOf(row), settings).some((size) => Math.abs(size - cutout) < 0.5);
  if (!named) return [];
  const details = { row: nameOf(row), cutout: shown(cutout, length, { settings }) };
  const place = placeOf(row, 'cutout');
  return [trapProblem('driver-size-nominal', details, { severity: 'warning', place })];
}

const sureWords: Readonly<Record<string, string>> = {
  guess: 'a guess',
  from_maker: 'the maker’s',
};

function notMeasured(row: AnsweredRow): readonly Problem[] {
  const word = wordIn(row, 'sure');
  const sure = sureWords[word];
  if (sure === undefined) return [];
  const severity = word === 'guess' ? 'warning' : 'note';
  const place = placeOf(row, 'sure');
  return [trapProblem('driver-not-measured', { row: nameOf(row), sure }, { severity, place })];
}

/** Nominal against measured sizes of drivers. */
export const driverTraps: readonly Trap[] = [
  { tables: ['driver'], find: fallsThrough },
  { tables: ['driver'], find: isNominal },
  { tables: ['driver'], find: notMeasured },
];
