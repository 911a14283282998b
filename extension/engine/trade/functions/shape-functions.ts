import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import {
  shapeArea,
  shapeLength,
  shapePerimeter,
  shapeWidth,
  shapeWords,
  type PlainShape,
  type Shape,
} from '../../geometry/shape.ts';
import { shapeOf, validShape } from '../../geometry/shape-text.ts';
import { failed, ok } from '../../result.ts';
import { area, length, type Dimension } from '../../units/dimension.ts';
import { missing, needed, numbersOf } from '../arguments.ts';
import { shapeIn } from '../ring-arguments.ts';
import { freeShapeFunctions } from './free-shape-functions.ts';
import { shapeGrow } from './shape-grow.ts';

const sizeHelps = {
  diameter: 'Diameter.',
  length: 'Size along the row’s x.',
  width: 'Size along the row’s y.',
  radius: 'Radius of the corners, at most half the short side.',
};

function constructor(
  kind: PlainShape['kind'],
  form: { readonly help: string; readonly formula: string; readonly shows: string },
): FunctionEntry {
  const parameters = shapeWords[kind].map((name) => needed(name, length, sizeHelps[name]));
  return {
    name: kind,
    group: 'shapes',
    help: form.help,
    parameters,
    result: { kind: 'shape' },
    example: { formula: form.formula, shows: form.shows },
    source: 'geometry',
    run: (args, context) => {
      const sizes = numbersOf(kind, parameters, args);
      if (!sizes.ok) return sizes;
      const inOrder = parameters.map(({ name }) => sizes.value[name]);
      const shape = validShape(shapeOf(kind, inOrder), context.settings);
      return shape.ok ? ok({ kind: 'shape', shape: shape.value }) : shape;
    },
  };
}

const shapeParameter: Parameter = {
  name: 'shape',
  help: 'A shape, such as circle(8 in).',
  type: { kind: 'shape' },
};

function measure(
  name: string,
  form: {
    readonly help: string;
    readonly dimension: Dimension;
    readonly formula: string;
    readonly shows: string;
    readonly of: (shape: Shape) => number;
  },
): FunctionEntry {
  return {
    name,
    group: 'shapes',
    help: form.help,
    parameters: [shapeParameter],
    result: { kind: 'quantity', dimension: form.dimension },
    example: { formula: form.formula, shows: form.shows },
    source: 'geometry',
    run: (args) => {
      const shape = shapeIn(args[0]);
      if (shape === undefined) return failed(missing(name, shapeParameter));
      return ok({ kind: 'quantity', base: form.of(shape), dimension: form.dimension });
    },
  };
}

/** Makers of shapes and what can be measured of them. */
export const shapeFunctions: readonly FunctionEntry[] = [
  constructor('circle', {
    help: 'A circle of a diameter.',
    formula: '=circle(8in)',
    shows: 'circle(8 in)',
  }),
  constructor('oval', {
    help: 'An ellipse of a length and a width.',
    formula: '=oval(9in, 6in)',
    shows: 'oval(9 in, 6 in)',
  }),
  constructor('rect', {
    help: 'A rectangle of a length and a width.',
    formula: '=rect(24in, 16in)',
    shows: 'rect(24 in, 16 in)',
  }),
  constructor('roundrect', {
    help: 'A rectangle with round corners.',
    formula: '=roundrect(26in, 15in, 2in)',
    shows: 'roundrect(26 in, 15 in, 2 in)',
  }),
  ...freeShapeFunctions,
  measure('SHAPE.AREA', {
    help: 'Area inside a shape.',
    dimension: area,
    formula: '=SHAPE.AREA(roundrect(24in, 16in, 2in))',
    shows: '2.643 sqft',
    of: shapeArea,
  }),
  measure('SHAPE.PERIMETER', {
    help: 'Length of a shape’s outline.',
    dimension: length,
    formula: '=SHAPE.PERIMETER(circle(8in))',
    shows: '25 1/8 in',
    of: shapePerimeter,
  }),
  measure('SHAPE.LENGTH', {
    help: 'Size of a shape along the row’s x.',
    dimension: length,
    formula: '=SHAPE.LENGTH(oval(9in, 6in))',
    shows: '9 in',
    of: shapeLength,
  }),
  measure('SHAPE.WIDTH', {
    help: 'Size of a shape along the row’s y.',
    dimension: length,
    formula: '=SHAPE.WIDTH(oval(9in, 6in))',
    shows: '6 in',
    of: shapeWidth,
  }),
  shapeGrow,
];
