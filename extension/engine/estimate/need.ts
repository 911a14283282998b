import type { Problem } from '../problems.ts';
import { whenAsked } from '../steps.ts';
import { plain } from '../units/dimension.ts';
import { showQuantity } from '../units/show.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { sameData } from '../workbook/same-meaning.ts';
import { amountOf, amountText, boughtBy, customaryUnit, sizeText } from './amount.ts';
import type { RowNeed, Step } from './bill.ts';
import { nameOf, wordIn } from './cells.ts';
import { cutOutline } from './cut-outline.ts';
import { conversion, type Property } from './convert.ts';
import { isRing } from '../skin/read-panel.ts';
import type { MaterialFacts } from './material.ts';
import { multiplicity, type Multiplicity } from './panels.ts';
import { leaningStrip } from './ring-pair.ts';
import { columnOf, numberIn, refusal, useOf, type Asking, type Use } from './use.ts';
import { onDemand } from '../units/on-demand.ts';

/** A need before it is known what it costs. */
export type Asked = Omit<RowNeed, 'charge' | 'buy'>;

/** True where both ask for the same by the same working, which is looked at last: it has to be worded. */
export function isSameAsked(one: Asked, other: Asked): boolean {
  const keys = Object.keys(one) as readonly (keyof Asked)[];
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => key === 'steps' || sameData(one[key], other[key])) &&
    sameData(one.steps, other.steps)
  );
}

/** The need, or the problems that keep it out of the bill. */
export interface AskedOutcome {
  readonly asked?: Asked;
  readonly problems: readonly Problem[];
}

interface Factors {
  readonly use: Use;
  readonly pieces: number;
  readonly times: Multiplicity;
  readonly waste: number;
}

/**
 * What a row or a draw needs of its material in the whole job:
 * use × pieces × panels × (1 + waste), turned into the measure the material is bought in.
 */
export function readNeed(asking: Asking): AskedOutcome {
  const use = useOf(asking);
  if (!use.ok) return { problems: [use.problem] };
  const pieces = piecesOf(asking);
  if (!pieces.ok) return { problems: [pieces.problem] };
  const waste = numberIn(asking, columnOf(asking, 'waste'), asking.material.waste);
  if (!waste.ok) return { problems: [waste.problem] };
  const per = wordIn(asking.row, columnOf(asking, 'per')) || wordIn(asking.row, 'per');
  const times = multiplicity(asking.row, asking.panel, per);
  return converted(asking, { use: use.value, pieces: pieces.value, times, waste: waste.value });
}

// A draw is asked for by every piece of its row.
function piecesOf(asking: Asking): ReturnType<typeof numberIn> {
  const own = numberIn(asking, 'qty', 1);
  if (!own.ok || asking.draw === '') return own;
  const drawn = numberIn(asking, columnOf(asking, 'qty'), 1);
  return drawn.ok ? { ok: true, value: own.value * drawn.value } : drawn;
}

const stepsOnDemand = onDemand('steps');
const none: readonly Problem[] = [];

// A class, as each edit makes some anew: see docs/decisions/009.
class WorkedNeed implements Omit<Asked, 'steps'> {
  readonly table: string;
  readonly row: string;
  readonly occurrence: number;
  readonly draw: string;
  readonly material: string;
  readonly group: Asked['group'];
  readonly use: Asked['use'];
  readonly pieces: number;
  readonly panels: number;
  readonly waste: number;
  readonly need: Asked['need'];

  constructor(
    { row, draw, material, kind }: Asking,
    { use, pieces, times, waste }: Factors,
    need: Asked['need'],
  ) {
    this.table = row.table;
    this.row = row.id;
    this.occurrence = row.occurrence;
    this.draw = draw;
    this.material = material.id;
    this.group = kind.group;
    this.use = use.amount;
    this.pieces = pieces;
    this.panels = times.panels;
    this.waste = waste;
    this.need = need;
  }
}

function converted(asking: Asking, factors: Factors): AskedOutcome {
  const { material, settings, row } = asking;
  const { use, pieces, times, waste } = factors;
  const told = times.problem === undefined ? none : [times.problem];
  const total = use.amount.base * pieces * times.panels * (1 + waste);
  const whole = amountOf(total, use.measure, use.amount.unit);
  // Blanks of cloth stay areas: the length of roll they take is known only when all are laid out.
  const laid = use.blank !== undefined && (material.form === 'roll' || material.form === 'sheet');
  const measure = laid ? 'area' : material.measure;
  const way = conversion(use.measure, measure, material.properties);
  if (!way.ok) {
    const property = way.missing.map(propertyWord).join(' and no ');
    const code = way.missing.length === 0 ? 'unit-unfitting' : 'property-missing';
    const amount = amountText(whole, settings);
    const unit = boughtBy(material.unit);
    const column = use.column ?? 'use';
    return {
      problems: [...told, refusal(asking, { code, column }, { property, amount, unit })],
    };
  }
  const unit = measure === material.measure ? material.unit : customaryUnit(measure, settings);
  const need = amountOf(total * way.factor, measure, unit);
  const name = nameOf(row);
  const made: Omit<Asked, 'steps'> = Object.assign(new WorkedNeed(asking, factors, need), {
    ...(use.blank === undefined ? {} : { blank: countedBlank(use.blank, pieces * times.panels) }),
    ...(asking.kind.takes === 'blank' && isRing(row)
      ? leaningOf(asking, use)
      : outlineOf(asking, factors)),
  });
  // Words for a person to read: most edits are past before anybody asks. They must not read cells
  // of the row that nothing else here has read, or a change of these would go unseen.
  const words = whenAsked((): readonly Step[] => [
    ...productSteps(asking, factors, name),
    { text: `= ${amountText(whole, settings)}` },
    ...conversionSteps(way.by, material, amountText(need, settings)),
  ]);
  const asked: Asked = stepsOnDemand(made, words);
  return { asked, problems: told };
}

// A strip lies as a rectangle however parts are nested: the row's outline is that of the bent ring.
function leaningOf({ material, row, draw }: Asking, { blank }: Use): Pick<RowNeed, 'leaning'> {
  const { pairing, kerf } = material.cutting;
  if (draw !== '' || material.form !== 'sheet' || pairing === 'never' || blank === undefined) {
    return {};
  }
  const leaning = leaningStrip(row, { blank, kerf });
  return leaning === undefined ? {} : { leaning };
}

function outlineOf(asking: Asking, { use, pieces }: Factors): Pick<RowNeed, 'outline'> {
  const { material, row, panel } = asking;
  const { openings } = material.cutting;
  if (material.cutting.method !== 'outline' || use.blank === undefined) return {};
  const outline = cutOutline(row, panel, {
    pieces,
    holes: openings ? (asking.openings?.(row) ?? []) : [],
  });
  return outline === undefined ? {} : { outline };
}

function countedBlank(
  blank: { readonly length: number; readonly width: number },
  count: number,
): { readonly length: number; readonly width: number; readonly count: number } {
  return { ...blank, count: Math.ceil(count - 1e-9) };
}

function cellOf(row: AnsweredRow, column: string): NonNullable<Step['row']> {
  return { table: row.table, id: row.id, column };
}

function productSteps(
  asking: Asking,
  { use, pieces, times, waste }: Factors,
  name: string,
): readonly Step[] {
  const { row, settings, panel } = asking;
  const size = use.blank === undefined ? '' : `a blank ${sizeText(use.blank, settings)}, `;
  const drawn = asking.draw === '' ? '' : ` (${asking.draw})`;
  const one = `${name}${drawn}: one piece takes ${size}${amountText(use.amount, settings)}`;
  const steps: Step[] = [
    use.column === undefined ? { text: one } : { text: one, row: cellOf(row, use.column) },
  ];
  if (pieces !== 1) {
    const number = showQuantity({ base: pieces, dimension: plain }, settings);
    steps.push({ text: `× ${number.text} pieces`, row: cellOf(row, columnOf(asking, 'qty')) });
  }
  if (panel !== undefined) {
    steps.push({ text: `× ${times.words}`, row: { table: panel.table, id: panel.id } });
  }
  if (waste > 0) {
    const share = String(Math.round(waste * 1000) / 10);
    steps.push({ text: `+ ${share} % waste` });
  }
  return steps;
}

function propertyWord(property: Property): string {
  return property === 'length' ? 'stock length' : property;
}

function conversionSteps(
  by: readonly Property[],
  { row, name }: MaterialFacts,
  result: string,
): readonly Step[] {
  if (by.length === 0) return [];
  const words = by.map((property) => {
    const { text, formula } = row.cell(property);
    const shown = text === undefined || formula ? '' : ` ${text}`;
    return `${propertyWord(property)}${shown}`;
  });
  const at = { table: row.table, id: row.id };
  return [{ text: `by the ${words.join(' and ')} of ${name}: ${result}`, row: at }];
}
