import type { Problem } from '../problems.ts';
import {
  arealWeight,
  density,
  divided,
  area,
  length,
  plain,
  time,
  volume,
} from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { customaryUnit, unitWritten, type Measure } from './amount.ts';
import { baseIn, nameOf, wordIn } from './cells.ts';
import type { Properties } from './convert.ts';
import { readHeldPack } from './held-price.ts';
import { measureHeld, type PackFacts } from './pack.ts';

export type Form = 'sheet' | 'roll' | 'strip' | 'liquid' | 'aerosol' | 'piece';

/** What the bill needs to know of a material: how it is measured, sold and charged. */
export interface MaterialFacts {
  readonly id: string;
  readonly name: string;
  readonly row: AnsweredRow;
  readonly form: Form;
  readonly measure: Measure;
  /** Unit amounts are shown in; of counted goods their own word. */
  readonly unit: string;
  /** Share added to what is needed where a row says nothing itself. */
  readonly waste: number;
  /** False where nap, grain or stretch keeps every blank lengthways. */
  readonly turns: boolean;
  readonly charges: 'packs' | 'used';
  readonly properties: Properties;
  /** How long it keeps, minutes; undefined for what does not spoil. */
  readonly keeps: number | undefined;
  readonly cutting: CuttingFacts;
  readonly packs: readonly PackFacts[];
  readonly problems: readonly Problem[];
}

/** How a material is cut; lengths in mm. */
export interface CuttingFacts {
  readonly kerf: number;
  readonly trim: number;
  readonly method: 'saw' | 'free' | 'outline';
  /** Smaller parts may lie in what falls out of openings. */
  readonly openings: boolean;
  /** Whether tapered strips are cut in pairs head to tail: where fewer sheets do, or as is said. */
  readonly pairing: 'saving' | 'always' | 'never';
  readonly repeat: number;
  /** Overlap where lengths are joined; 0 where they may not be. */
  readonly lap: number;
  readonly search: 'refine' | 'long';
}

function yesNoIn(row: AnsweredRow, column: string): boolean | undefined {
  const { result } = row.cell(column);
  return result.state === 'value' && result.value.kind === 'yes-no' ? result.value.yes : undefined;
}

function pairingOf(row: AnsweredRow): CuttingFacts['pairing'] {
  const said = yesNoIn(row, 'pairing');
  return said === undefined ? 'saving' : said ? 'always' : 'never';
}

function cuttingOf(row: AnsweredRow): CuttingFacts {
  const method = wordIn(row, 'method');
  return {
    kerf: baseIn(row, 'kerf', length) ?? 0,
    trim: baseIn(row, 'trim', length) ?? 0,
    method: method === 'free' || method === 'outline' ? method : 'saw',
    openings: yesNoIn(row, 'openings') ?? true,
    pairing: pairingOf(row),
    repeat: baseIn(row, 'repeat', length) ?? 0,
    lap: baseIn(row, 'lap', length) ?? 0,
    search: wordIn(row, 'search') === 'long' ? 'long' : 'refine',
  };
}

const forms: readonly Form[] = ['sheet', 'roll', 'strip', 'liquid', 'aerosol', 'piece'];

const formMeasures: Readonly<Record<Form, Measure>> = {
  sheet: 'area',
  roll: 'length',
  strip: 'length',
  liquid: 'volume',
  aerosol: 'count',
  piece: 'count',
};

function formOf(row: AnsweredRow): Form {
  const word = wordIn(row, 'form');
  return forms.find((form) => form === word) ?? 'piece';
}

function propertiesOf(row: AnsweredRow): Properties {
  const found = {
    density: baseIn(row, 'density', density),
    weight: baseIn(row, 'weight', arealWeight),
    thickness: baseIn(row, 'thickness', length),
    coverage: baseIn(row, 'coverage', divided(area, volume)),
    width: baseIn(row, 'width', length),
    length: baseIn(row, 'length', length),
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}

// Liquids are sold by volume or by weight, pieces now and then by length or weight: the packs tell.
// Sheets are reckoned by area and rolls and strips by length whatever their packs say, for that is
// what blanks and pieces are cut from; a strip without a stock length can only be counted.
function measureOfMaterial(
  form: Form,
  packs: readonly AnsweredRow[],
  properties: Properties,
): Measure {
  const held = packs.map(measureHeld).find((measure) => measure !== undefined);
  if (form === 'sheet' || form === 'roll') return formMeasures[form];
  if (form === 'strip') {
    return held === 'count' && properties.length === undefined ? 'count' : 'length';
  }
  return held ?? formMeasures[form];
}

function unitOfMaterial(
  row: AnsweredRow,
  measure: Measure,
  how: { readonly packs: readonly AnsweredRow[]; readonly settings: UnitSettings },
): string {
  if (measure === 'count') {
    const word = wordIn(row, 'unit');
    if (word !== '') return word;
    return formOf(row) === 'aerosol' ? 'can' : 'each';
  }
  const pack = how.packs.find((candidate) => measureHeld(candidate) === measure);
  if (pack === undefined) return customaryUnit(measure, how.settings);
  const column = pack.cell('holds').result.state === 'value' ? 'holds' : 'step';
  return unitWritten(pack.cell(column).text, measure, how.settings);
}

function isDirected(row: AnsweredRow): boolean {
  return ['nap', 'grain', 'stretch'].some((column) => {
    const { result } = row.cell(column);
    if (result.state !== 'value') return false;
    if (result.value.kind === 'yes-no') return result.value.yes;
    const word = wordIn(row, column);
    return word !== '' && word !== 'none' && word !== 'no' && word !== 'either';
  });
}

/** How a material is sold: its packs, and the prices of them that the job holds. */
export interface SoldAs {
  readonly packs: readonly AnsweredRow[];
  readonly prices: readonly AnsweredRow[];
  /** The job takes what is on the shelf before it buys; else the shelf is left alone. */
  readonly useStock?: boolean;
}

function isOnShelf(pack: AnsweredRow): boolean {
  return baseIn(pack, 'have', plain) !== undefined;
}

/**
 * Reads a material and its packs. Packs that cannot be read are left out and told in `problems`;
 * a material without any pack left has no price.
 */
export function readMaterial(
  row: AnsweredRow,
  { packs: all, prices, useStock = false }: SoldAs,
  settings: UnitSettings,
): MaterialFacts {
  const packs = useStock ? all : all.filter((pack) => !isOnShelf(pack));
  const form = formOf(row);
  const properties = propertiesOf(row);
  const measure = measureOfMaterial(form, packs, properties);
  const unit = unitOfMaterial(row, measure, { packs, settings });
  const charge = wordIn(row, 'charge');
  const usual = form === 'sheet' || form === 'roll' ? 'packs' : 'used';
  const read = packs.map((pack) =>
    readHeldPack(pack, prices, { name: nameOf(row), measure, unit, properties, settings }),
  );
  return {
    id: row.id,
    name: nameOf(row),
    row,
    form,
    measure,
    unit,
    waste: baseIn(row, 'waste', plain) ?? 0,
    turns: !isDirected(row),
    charges: charge === 'packs' || charge === 'used' ? charge : usual,
    properties,
    keeps: baseIn(row, 'shelf_life', time),
    cutting: cuttingOf(row),
    packs: read.flatMap(({ pack }) => (pack === undefined ? [] : [pack])),
    problems: read.flatMap(({ problems }) => problems),
  };
}
