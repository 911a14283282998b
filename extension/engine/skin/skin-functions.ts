import type {
  Argument,
  FunctionContext,
  FunctionEntry,
  Parameter,
  RowView,
} from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { numberIn } from '../trade/arguments.ts';
import { shapeIn } from '../trade/ring-arguments.ts';
import { angle, area, length, plain, volume, type Dimension } from '../units/dimension.ts';
import { skinContact } from './contact.ts';
import { faultProblem, skinProblem } from './skin-problems.ts';
import type { PlacedLevel } from './panel.ts';
import {
  columnsBuiltUp,
  columnsStanding,
  limitsOn,
  outlineAt,
  panelColumns,
  readPanels,
} from './read-panel.ts';
import { skinAnswer } from './skin-answer.ts';
import type { SkinFigures } from './skin.ts';

const method =
  'minimal surface over the panel’s outline and the rings’ lips (mesh of linear elements, Newton’s method); while typing a sum of catenoids';

interface SkinMeasure {
  readonly help: string;
  readonly dimension: Dimension;
  readonly shows: string;
  readonly of: (figures: SkinFigures) => number;
  /** How the two hands of a pair become one figure: what is bought is shared, what must fit is the worst. */
  readonly join: 'mean' | 'most' | 'least';
}

function joined(values: readonly number[], { join }: SkinMeasure): number {
  if (join === 'most') return Math.max(...values);
  if (join === 'least') return Math.min(...values);
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Kinds whose outline a skin is stretched over. */
const bases: ReadonlySet<string> = new Set(['base', 'existing']);

function noOutline(name: string, row: RowView): Problem {
  return bases.has(row.kind)
    ? skinProblem('skin-outline-blank', { row: row.id })
    : skinProblem('skin-no-outline', { function: name, row: row.id });
}

function measured(
  name: string,
  measure: SkinMeasure,
  asked: {
    readonly row: RowView;
    readonly context: FunctionContext;
    readonly limits: readonly PlacedLevel[] | undefined;
  },
): Result<number> {
  const { row, context, limits } = asked;
  const panels = readPanels(row, limits);
  if (panels.length === 0) {
    return failed(noOutline(name, row));
  }
  const values: number[] = [];
  for (const panel of panels) {
    const answer = skinAnswer(panel, context);
    if (answer.state === 'fault') return failed(faultProblem(answer.fault, context.settings));
    values.push(measure.of(answer.figures));
  }
  return ok(joined(values, measure));
}

function skinFunction(name: string, measure: SkinMeasure): FunctionEntry {
  const { help, dimension, shows } = measure;
  return {
    name,
    group: 'skin',
    help,
    parameters: [
      { name: 'part', help: 'The base; everything that lies on it counts.', type: { kind: 'row' } },
    ],
    result: { kind: 'quantity', dimension },
    example: { formula: `=${name}(base)`, shows },
    source: method,
    rows: {
      reads: panelColumns,
      standing: columnsStanding,
      run: (row, _, context) => {
        const value = measured(name, measure, { row, context, limits: undefined });
        return value.ok ? ok({ kind: 'quantity', base: value.value, dimension }) : value;
      },
    },
  };
}

const clearanceMeasure: SkinMeasure = {
  help: 'Least room between the finished surface and what it must stay clear of: the outline given, at its height above the base plane, else all limits that stand on the base. Less than nothing where they meet.',
  dimension: length,
  shows: '1/2 in',
  of: ({ clearance }) => clearance,
  join: 'least',
};

/** The limit that the arguments after the row describe; undefined where they describe none. */
function limitGiven(args: readonly Argument[]): readonly PlacedLevel[] | undefined {
  const shape = shapeIn(args[1]);
  const height = numberIn(args[2]);
  if (shape === undefined || height === undefined) return undefined;
  const at = { x: numberIn(args[3]) ?? 0, y: numberIn(args[4]) ?? 0 };
  return [{ id: 'limit', outline: outlineAt(shape, at), height }];
}

const optionalLength = (name: string, help: string): Parameter => ({
  name,
  help,
  type: { kind: 'quantity', dimensions: [length] },
  optional: true,
});

const skinClearance: FunctionEntry = {
  ...skinFunction('SKIN.CLEARANCE', clearanceMeasure),
  parameters: [
    { name: 'part', help: 'The base; everything that lies on it counts.', type: { kind: 'row' } },
    {
      name: 'outline',
      help: 'Outline of what must not be touched, seen straight on.',
      type: { kind: 'shape' },
      optional: true,
    },
    optionalLength('height', 'How far it is from the back of the base.'),
    optionalLength('at_x', 'Where its outline stands, to the rear.'),
    optionalLength('at_y', 'Where its outline stands, up.'),
  ],
  rows: {
    reads: panelColumns,
    standing: columnsBuiltUp,
    run: (row, args, context) => {
      const asked = { row, context, limits: limitGiven(args) ?? limitsOn(row) };
      const value = measured('SKIN.CLEARANCE', clearanceMeasure, asked);
      if (!value.ok) return value;
      return Number.isFinite(value.value)
        ? ok({ kind: 'quantity', base: value.value, dimension: length })
        : failed(skinProblem('skin-no-limit', { function: 'SKIN.CLEARANCE', row: row.id }));
    },
  },
};

/** Layers that harden into the shell, each with the column that holds what it comes to. */
const shellLayers: Readonly<Record<string, string>> = { skin: 'thickness', mat: 'cured_thickness' };

const skinThickness: FunctionEntry = {
  name: 'SKIN.THICKNESS',
  group: 'skin',
  help: 'Thickness of the hardened shell over a base: cloth with its resin and the mat behind it. Filler and covering are left out.',
  parameters: [
    { name: 'part', help: 'The base; everything that lies on it counts.', type: { kind: 'row' } },
  ],
  result: { kind: 'quantity', dimension: length },
  example: { formula: '=SKIN.THICKNESS(base)', shows: '1/8 in' },
  source: 'definition; thickness of mat by LAMINATE.THICKNESS',
  rows: {
    reads: ['thickness', 'cured_thickness'],
    standing: (kind) => [shellLayers[kind] ?? []].flat(),
    run: (row) => {
      const base = row.standing.reduce((sum, layer) => {
        const column = shellLayers[layer.kind];
        return sum + (column === undefined ? 0 : (numberIn(layer.value(column)) ?? 0));
      }, 0);
      return ok({ kind: 'quantity', base, dimension: length });
    },
  },
};

/** What can be asked of the skin over a base. */
export const skinFunctions: readonly FunctionEntry[] = [
  skinFunction('SKIN.AREA', {
    help: 'Surface of the skin that takes resin: from the outline to the rings’ mouths, without the openings.',
    dimension: area,
    shows: '2.556 sqft',
    of: ({ skin, faces }) => skin + faces,
    join: 'mean',
  }),
  skinFunction('SKIN.CLOTH', {
    help: 'Surface of the cloth before the rings are cut open.',
    dimension: area,
    shows: '2.797 sqft',
    of: ({ skin, lids }) => skin + lids,
    join: 'mean',
  }),
  skinFunction('SKIN.BLANKLENGTH', {
    help: 'Length along x of the flat piece that the skin can be pulled from, without allowances.',
    dimension: length,
    shows: '25 in',
    of: ({ blankLength }) => blankLength,
    join: 'most',
  }),
  skinFunction('SKIN.BLANKWIDTH', {
    help: 'Width along y of the flat piece that the skin can be pulled from, without allowances.',
    dimension: length,
    shows: '16 21/32 in',
    of: ({ blankWidth }) => blankWidth,
    join: 'most',
  }),
  skinFunction('SKIN.VOLUME', {
    help: 'Space between the base’s front and the skin with its openings closed.',
    dimension: volume,
    shows: '329 cuin',
    of: ({ volume: space }) => space,
    join: 'mean',
  }),
  skinFunction('SKIN.STRETCH', {
    help: 'How many times the least stretched part the most stretched one reaches: a material that gives less than this less 1, both ways, wrinkles or needs heat or a dart. At least: cloth that grips the lip first is stretched more.',
    dimension: plain,
    shows: '1.187',
    of: ({ stretch }) => stretch,
    join: 'most',
  }),
  skinFunction('SKIN.SLOPE', {
    help: 'Steepest slope of the skin from the base; over 80° the cloth lies against a ring’s wall.',
    dimension: angle,
    shows: '50.6 deg',
    of: ({ slope }) => slope,
    join: 'most',
  }),
  skinClearance,
  skinThickness,
  skinContact,
];
