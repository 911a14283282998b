import type { Problem } from '../../problems.ts';
import { density, volume } from '../../units/dimension.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf, wordIn } from '../cells.ts';
import { percentText } from '../../units/percent-text.ts';
import { callsOf, linked, shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

const basisWords: Readonly<Record<string, string>> = {
  by_mass: 'by mass',
  by_volume: 'by volume',
  ml_per_100g: 'in ml for 100 g',
};

interface Mixed {
  readonly resin: AnsweredRow;
  readonly catalyst: AnsweredRow;
  readonly resinDensity: number;
  readonly catalystDensity: number;
}

/** The resin and catalyst of a row that draws catalyst. */
function mixedIn(row: AnsweredRow, view: TrapView): Mixed | undefined {
  if (!row.draws.includes('catalyst')) return undefined;
  const from = row.draws.includes('resin') ? 'draw.resin.material' : 'material';
  const resin = linked(row, from, { table: 'material', view });
  const catalyst = linked(row, 'draw.catalyst.material', { table: 'material', view });
  if (resin === undefined || catalyst === undefined) return undefined;
  const resinDensity = baseIn(resin, 'density', density);
  const catalystDensity = baseIn(catalyst, 'density', density);
  if (resinDensity === undefined || catalystDensity === undefined) return undefined;
  return { resin, catalyst, resinDensity, catalystDensity };
}

function bookBasis(view: TrapView): string {
  const constant = view.row('constant', 'mix_basis');
  return constant === undefined ? 'by_mass' : wordIn(constant, 'value');
}

/** Volume of catalyst for 1 g of resin at 100 %, mm³, by each custom. */
function catalystPerGram(basis: string, mixed: Mixed): number {
  if (basis === 'by_volume') return 1 / mixed.resinDensity;
  return basis === 'ml_per_100g' ? 1000 : 1 / mixed.catalystDensity;
}

/** Apart by more than this the two are told (data sheets allow 1.0 to 2.5 %: a tenth is a step). */
const farApart = 0.1;

function customsApart(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const mixed = mixedIn(row, view);
  if (mixed === undefined) return [];
  const share = mixed.catalystDensity / mixed.resinDensity - 1;
  if (Math.abs(share) <= farApart) return [];
  const basis = bookBasis(view);
  const details = {
    row: nameOf(row),
    resin: nameOf(mixed.resin),
    catalyst: nameOf(mixed.catalyst),
    share: percentText(Math.abs(share)),
    direction: share > 0 ? 'more' : 'less',
    basis: basisWords[basis] ?? basis,
  };
  const place = placeOf(row, 'percent');
  return [trapProblem('mix-by-mass-or-volume', details, { severity: 'note', place })];
}

function otherBasis(row: AnsweredRow, view: TrapView): readonly Problem[] {
  return view.formulas().flatMap((cell) =>
    callsOf(cell.text, 'MIX.QUANTITY').flatMap(([, , written = '']) => {
      const basis = bookBasis(view);
      if (basisWords[written] === undefined || written === basis) return [];
      const mixed = mixedIn(row, view);
      const share =
        mixed === undefined
          ? 'up to a fifth'
          : percentText(
              Math.abs(catalystPerGram(written, mixed) / catalystPerGram(basis, mixed) - 1),
            );
      const details = {
        row: nameOf(row),
        column: cell.column,
        written: basisWords[written],
        basis: basisWords[basis] ?? basis,
        share,
      };
      const place = placeOf(row, cell.column);
      return [trapProblem('mix-basis-differs', details, { severity: 'warning', place })];
    }),
  );
}

const usualDrop = /^0?\.05\s*(?:ml|cm3)$/i;

function uncalibratedDrop(row: AnsweredRow, view: TrapView): readonly Problem[] {
  return view.formulas().flatMap((cell) =>
    callsOf(cell.text, 'MIX.DROPS').flatMap(([, drop = '']) => {
      const fromBook = drop === 'book.catalyst_drop';
      const own = view.book.constants.get('catalyst_drop')?.origin !== 'built-in';
      if (fromBook ? own : !usualDrop.test(drop)) return [];
      const constant = fromBook ? view.row('constant', 'catalyst_drop') : undefined;
      const base = constant && baseIn(constant, 'value', volume);
      const { settings } = view;
      const details = {
        row: nameOf(row),
        column: cell.column,
        drop: base === undefined ? drop : shown(base, volume, { settings, unit: 'ml' }),
      };
      const place = placeOf(row, cell.column);
      return [trapProblem('drop-not-calibrated', details, { severity: 'warning', place })];
    }),
  );
}

/** Percent by mass against by volume, and drops that nobody measured. */
export const mixTraps: readonly Trap[] = [
  { tables: ['part'], find: customsApart },
  { tables: ['part', 'measure'], find: otherBasis },
  { tables: ['part', 'measure', 'check', 'task'], find: uncalibratedDrop },
];
