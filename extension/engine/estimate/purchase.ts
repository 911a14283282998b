import type { UnitSettings } from '../units/quantity.ts';
import { amountOf, amountText, lengthText, sizeText } from './amount.ts';
import type { BoughtPack, Minor, Step } from './bill.ts';
import { packsOfLayout } from './buy-laid.ts';
import type { Laid } from './cut-layout.ts';
import { blanksOnSheet, mergedSizes, rollLayout, timesInto, type Blank } from './layout.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import { offerOf, weighedPrice, type PackFacts } from './pack.ts';
import { pieceOfStrip } from './strip-piece.ts';
import { cheapestPacks, priceOf, wholeSteps, type PackChoice } from './packs.ts';

/** What a line needs once its blanks are laid out. */
export interface LineNeed {
  /** In the measure the material is bought in. */
  readonly base: number;
  /** Blanks that must come out of whole sheets, or lengths out of whole strips, and are not laid out. */
  readonly pieces: readonly Blank[];
  readonly approximate: boolean;
  readonly steps: readonly Step[];
}

/**
 * What the rows of one material need together: their sum, but cloth off a roll by the length its
 * blanks take when laid across the bolt.
 *
 * Blanks must fit the bolt: rows whose blanks do not are taken out before.
 */
export function lineNeed(
  material: MaterialFacts,
  rows: readonly Asked[],
  settings: UnitSettings,
  cut?: Laid,
): LineNeed {
  const isLaid = ({ blank }: Asked): boolean => material.form === 'roll' && blank !== undefined;
  const sum = rows.reduce((total, row) => (isLaid(row) ? total : total + row.need.base), 0);
  const laid = material.form === 'roll' ? rows.filter(isLaid) : [];
  if (laid.length === 0) {
    const pieces = cut === undefined ? stockPieces(material, rows) : [];
    const guessed = material.form === 'sheet' || pieces.length > 0;
    const approximate = cut === undefined ? guessed : !cut.settled;
    return { base: sum, pieces, approximate, steps: [] };
  }
  return clothNeed(material, { laid, sum, cut }, settings);
}

interface Cloth {
  readonly laid: readonly Asked[];
  /** Length that rows ask for without a blank. */
  readonly sum: number;
  readonly cut: Laid | undefined;
}

function clothNeed(
  material: MaterialFacts,
  { laid, sum, cut }: Cloth,
  settings: UnitSettings,
): LineNeed {
  const taken = laid.reduce((total, { need }) => total + need.base, 0);
  const bare = laid.reduce((total, { need, waste }) => total + need.base / (1 + waste), 0);
  const factor = bare > 0 ? taken / bare : 1;
  if (cut?.answer.length !== undefined) {
    const base = cut.answer.length * factor + sum;
    return { base, pieces: [], approximate: !cut.settled, steps: wasteSteps(factor) };
  }
  const layout = rollLayout({
    width: material.properties.width ?? 0,
    blanks: laid.flatMap(({ blank }) => (blank === undefined ? [] : [blank])),
    turns: material.turns,
  });
  if (!layout.fits) return { base: sum, pieces: [], approximate: true, steps: [] };
  const bolt = lengthText(material.properties.width ?? 0, settings);
  const shown = layout.sizes.slice(0, shownSizes);
  const steps: Step[] = shown.map((size) => ({ text: sizeWords(size, settings) }));
  const more = layout.sizes.length - shown.length;
  if (more > 0) steps.push({ text: `and ${String(more)} smaller sizes` });
  const waste = factor > 1 ? ` + ${String(Math.round((factor - 1) * 1000) / 10)} % waste` : '';
  steps.push({ text: `laid across ${bolt}: ${lengthText(layout.length, settings)}${waste}` });
  if (sum > 0)
    steps.push({ text: `+ ${amountText(amountOf(sum, 'length', material.unit), settings)}` });
  return { base: layout.length * factor + sum, pieces: [], approximate: true, steps };
}

function wasteSteps(factor: number): readonly Step[] {
  const share = Math.round((factor - 1) * 1000) / 10;
  return share > 0 ? [{ text: `+ ${String(share)} % waste` }] : [];
}

// The working is for a person to follow; the longest blanks settle the length.
const shownSizes = 12;

function sizeWords(
  size: {
    readonly blank: Blank;
    readonly turned: boolean;
    readonly across: number;
    readonly rows: number;
    readonly beside: number;
    readonly along: number;
  },
  settings: UnitSettings,
): string {
  const turned = size.turned ? ' (turned)' : '';
  const rows = size.rows === 1 ? '1 row' : `${String(size.rows)} rows`;
  const own =
    size.rows === 0
      ? ''
      : `${String(size.across)} across, ${rows} of ${lengthText(size.along, settings)}`;
  const beside = size.beside === 0 ? '' : `${String(size.beside)} beside larger ones`;
  const words = [own, beside].filter((part) => part !== '').join(', ');
  return `${String(size.blank.count)} of ${sizeText(size.blank, settings)}${turned}: ${words}`;
}

// Pieces of strip count as blanks without width, so that one rule serves sheets and lengths.
function stockPieces(material: MaterialFacts, rows: readonly Asked[]): readonly Blank[] {
  if (material.form === 'sheet') {
    return mergedSizes(rows.flatMap(({ blank }) => (blank === undefined ? [] : [blank])));
  }
  if (material.form !== 'strip' || material.properties.length === undefined) return [];
  return mergedSizes(rows.flatMap((row) => pieceOfStrip(row) ?? []));
}

/** How many pieces of one size a pack's stock gives; 0 where the piece is larger than the stock. */
export function piecesFromPack(piece: Blank, pack: PackFacts, turns: boolean): number {
  const { stock } = pack;
  if (stock === undefined) return Number.POSITIVE_INFINITY;
  const each =
    piece.width === 0
      ? timesInto(piece.length, stock.length)
      : blanksOnSheet(piece, { length: stock.length, width: stock.width }, turns);
  return each * stock.number;
}

/** What is bought for a line. */
export interface Purchase {
  readonly packs: readonly BoughtPack[];
  /** Money out now: nothing for what is on the shelf. */
  readonly cost: Minor;
  /** What is bought and what is taken from the shelf, at its prices. */
  readonly value: Minor;
  readonly amount: number;
}

// Cloth, boards and lengths that are cut to size cannot be a little short; nor can counted goods.
function slackFor(material: MaterialFacts, rows: readonly Asked[], slack: number): number {
  const cut = rows.some(({ blank }) => blank !== undefined) || material.form === 'strip';
  return cut || material.measure === 'count' ? 0 : slack;
}

/**
 * The cheapest way to buy what a line needs: packs in any mixture, or goods by the step. A sheet or
 * a length is worth no more than the pieces that come out of it.
 *
 * @returns undefined where the material is not sold, or no stock takes its pieces
 */
export function purchase(
  material: MaterialFacts,
  need: LineNeed,
  more: {
    readonly rows: readonly Asked[];
    readonly slack: number;
    readonly cut?: Laid | undefined;
  },
): Purchase | undefined {
  const laid = more.cut;
  if (laid !== undefined && material.form !== 'roll') {
    return bought(packsOfLayout(material, laid), material.packs);
  }
  const slack = slackFor(material, more.rows, more.slack);
  const { packs } = material;
  const takes = (pack: PackFacts) => (piece: Blank) =>
    piecesFromPack(piece, pack, material.turns) > 0;
  const forAll = packs.filter((pack) => need.pieces.every(takes(pack)));
  const fitting =
    forAll.length > 0 ? forAll : packs.filter((pack) => need.pieces.some(takes(pack)));
  const worth = new Map(fitting.map((pack) => [pack.id, worthOf(pack, need, material.turns)]));
  const whole = fitting.filter(({ step }) => step === undefined);
  const offers = whole.map((pack) => offerOf(pack, worth.get(pack.id) ?? 0));
  const choices: (PackChoice | undefined)[] = [
    cheapestPacks(need.base, offers, slack),
    ...fitting.map(({ id, holds, step }) =>
      step === undefined ? undefined : wholeSteps(need.base, { id, step: holds, ...step }, slack),
    ),
  ];
  const cheapest = choices
    .filter((choice) => choice !== undefined)
    .reduce<PackChoice | undefined>(
      (best, choice) => (best === undefined || choice.cost < best.cost ? choice : best),
      undefined,
    );
  return cheapest === undefined ? undefined : bought(cheapest, packs);
}

function worthOf(pack: PackFacts, need: LineNeed, turns: boolean): number {
  return need.pieces.reduce((worth, piece) => {
    const number = piecesFromPack(piece, pack, turns);
    return number === 0 ? worth : Math.min(worth, (number / piece.count) * need.base);
  }, pack.holds);
}

function bought(choice: PackChoice, packs: readonly PackFacts[]): Purchase {
  const taken = choice.packs.flatMap(({ id, count }) => {
    const pack = packs.find((candidate) => candidate.id === id);
    return pack === undefined ? [] : [{ pack, count }];
  });
  const shelf = taken.filter(({ pack }) => pack.have !== undefined);
  const sum = (each: (pack: PackFacts) => Minor): Minor =>
    shelf.reduce((total, { pack, count }) => total + each(pack) * count, 0);
  const cost = choice.cost - sum(weighedPrice);
  return {
    packs: taken.map(({ pack, count }) => boughtPack(pack, count)),
    cost,
    value: cost + sum(({ price }) => price),
    amount: taken.reduce((sum, { pack, count }) => sum + pack.holds * count, 0),
  };
}

/** A pack as it stands on the bill, at the price that so many of them have. */
export function boughtPack(facts: PackFacts, count: number): BoughtPack {
  const { id, shown, step, stock, held, have } = facts;
  const single = have === undefined && step === undefined && facts.breaks !== undefined;
  const price = single ? priceOf(offerOf(facts, facts.holds), count) / count : facts.price;
  const sheet = stock === undefined || stock.width === 0 ? {} : { sheet: stock };
  const frozen = held === undefined ? {} : { held };
  const shelf = have === undefined ? {} : { shelf: true };
  const pack = { id, count, holds: shown, price, ...sheet, ...frozen, ...shelf };
  return step === undefined ? pack : { ...pack, cut: { ...shown, base: shown.base * count } };
}
