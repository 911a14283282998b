import type { Book } from '../../book/book.ts';
import { density, plain } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import type { Bill, RowNeed } from '../bill.ts';
import { baseIn, nameOf, wordIn } from '../cells.ts';
import { measureOf } from '../amount.ts';
import { mixFacts, type MixFacts } from './mix-facts.ts';
import { mixWarnings } from './mix-warnings.ts';
import type { Coat, MixPlan, OpenCoat } from './mix.ts';
import { catalystVolume, potCount, potLifeOf, potOf, shareByMass, type Densities } from './pots.ts';

/** What a mix plan is made from: a snapshot has it all. */
export interface MixGround {
  readonly workbook: Answers;
  readonly book: Book;
  readonly bill: Bill;
  readonly settings: UnitSettings;
}

/** Needs of the rows that draw catalyst, by `row#occurrence`. */
function mixedNeeds(bill: Bill): ReadonlyMap<string, readonly RowNeed[]> {
  const found = new Map<string, RowNeed[]>();
  for (const { rows } of bill.lines) {
    for (const need of rows) {
      const key = `${need.row}#${String(need.occurrence)}`;
      const known = found.get(key);
      if (known === undefined) found.set(key, [need]);
      else known.push(need);
    }
  }
  return found;
}

// Mixed resin is the row's own material, or the draw that brings it.
function resinNeed(needs: readonly RowNeed[]): RowNeed | undefined {
  return needs.find(({ draw }) => draw === 'resin') ?? needs.find(({ draw }) => draw === '');
}

function densityOf(material: string, answers: Answers): number | undefined {
  const row = answers.row('material', material);
  const base = row === undefined ? undefined : baseIn(row, 'density', density);
  return base !== undefined && base > 0 ? base : undefined;
}

function materialName(material: string, answers: Answers): string {
  const row = answers.row('material', material);
  return row === undefined ? material : nameOf(row);
}

interface Around extends MixGround {
  readonly facts: MixFacts;
}

function coatOf(
  row: AnsweredRow,
  needs: readonly RowNeed[],
  around: Around,
): Coat | OpenCoat | undefined {
  const { workbook, facts, settings } = around;
  const name = nameOf(row);
  const open = (why: string): OpenCoat => ({ row: row.id, name, why });
  const resin = resinNeed(needs);
  const catalyst = needs.find(({ draw }) => draw === 'catalyst');
  if (resin === undefined || catalyst === undefined) {
    return open('its resin or its catalyst has no amount yet.');
  }
  const share = baseIn(row, 'percent', plain);
  if (share === undefined || share <= 0) return open('its percentage of catalyst has no answer.');
  const densities = {
    resin: densityOf(resin.material, workbook),
    catalyst: densityOf(catalyst.material, workbook),
  };
  if (densities.resin === undefined || densities.catalyst === undefined) {
    const lacking = densities.resin === undefined ? resin.material : catalyst.material;
    return open(`${materialName(lacking, workbook)} has no density.`);
  }
  const known: Densities = { resin: densities.resin, catalyst: densities.catalyst };
  const grams = gramsOf(resin, known.resin);
  if (grams === undefined) return open('its resin is neither a mass nor a volume.');
  if (grams === 0) return undefined;
  const basis = facts.basis;
  const panels = resin.panels * resin.pieces;
  const made = planned({ grams, panels, share, densities: known, facts });
  const coat = {
    row: row.id,
    occurrence: row.occurrence,
    name,
    resin: materialName(resin.material, workbook),
    catalyst: materialName(catalyst.material, workbook),
    panels,
    share,
    basis,
    ...made,
  };
  const byMass = shareByMass(share, { basis, densities: known });
  return { ...coat, warnings: mixWarnings({ ...coat, byMass }, facts, settings) };
}

function gramsOf({ need }: RowNeed, resinDensity: number): number | undefined {
  const measure = measureOf(need.dimension);
  if (measure === 'mass') return need.base;
  return measure === 'volume' ? need.base * resinDensity : undefined;
}

type Amounts = Pick<
  Coat,
  'grams' | 'volume' | 'catalystGrams' | 'catalystVolume' | 'pots' | 'pot' | 'spreading' | 'potLife'
>;

function planned(of: {
  readonly grams: number;
  readonly panels: number;
  readonly share: number;
  readonly densities: Densities;
  readonly facts: MixFacts;
}): Amounts {
  const { grams, panels, share, densities, facts } = of;
  const custom = { basis: facts.basis, densities };
  const catalyst = catalystVolume(grams, share, custom);
  const life = potLifeOf(share, facts);
  const pots = potCount(grams, { panels, potLife: life, facts });
  const pot = potOf(grams / pots, share, { ...custom, facts });
  return {
    grams,
    volume: grams / densities.resin,
    catalystGrams: catalyst * densities.catalyst,
    catalystVolume: catalyst,
    pots,
    pot,
    ...(life === undefined ? {} : { potLife: life }),
    spreading: facts.stirTime + pot.resinGrams / facts.spreadRate,
  };
}

/** True for a row whose kind mixes resin: it draws catalyst and has not switched it off. */
function mixes(row: AnsweredRow): boolean {
  if (row.broken || !row.draws.includes('catalyst')) return false;
  return wordIn(row, 'draw.catalyst.material') !== 'none';
}

/**
 * The mixing of a job, coat by coat in display order, with the amounts of the bill: resin with its
 * waste, catalyst for that resin, in pots that one person spreads before they gel.
 */
export function mixPlan(ground: MixGround): MixPlan {
  const facts = mixFacts(ground.workbook, ground.book);
  const needs = mixedNeeds(ground.bill);
  const around = { ...ground, facts };
  const found = ground.workbook
    .rows('part')
    .filter(mixes)
    .flatMap((row) => {
      const own = needs.get(`${row.id}#${String(row.occurrence)}`) ?? [];
      return coatOf(row, own, around) ?? [];
    });
  const coats = found.filter((one) => 'pots' in one);
  const sum = (value: (coat: Coat) => number): number =>
    coats.reduce((total, coat) => total + value(coat), 0);
  return {
    coats,
    open: found.filter((one) => 'why' in one),
    ...(facts.celsius === undefined ? {} : { celsius: facts.celsius }),
    anchored: facts.anchored,
    totals: {
      pots: sum(({ pots }) => pots),
      resinGrams: sum(({ grams }) => grams),
      resinVolume: sum(({ volume }) => volume),
      catalystGrams: sum((coat) => coat.catalystGrams),
      catalystVolume: sum((coat) => coat.catalystVolume),
    },
  };
}
