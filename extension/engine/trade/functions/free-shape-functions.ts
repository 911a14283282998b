import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { pathShape, polygonShape } from '../../geometry/free-shape.ts';
import { failed, ok } from '../../result.ts';
import { length } from '../../units/dimension.ts';
import { missing, numberIn, wordIn } from '../arguments.ts';

const x: Parameter = {
  name: 'x',
  help: 'How far a corner lies to the right of the zero.',
  type: { kind: 'quantity', dimensions: [length] },
  repeats: true,
};

const y: Parameter = { ...x, name: 'y', help: 'How far it lies above the zero.' };

const polygon: FunctionEntry = {
  name: 'polygon',
  group: 'shapes',
  help: 'An outline through corners, each by its offsets from one zero: x, y, x, y and so on round it.',
  parameters: [x, y],
  result: { kind: 'shape' },
  example: {
    formula: '=SHAPE.AREA(polygon(0in, 0in, 24in, 0in, 20in, 14in, 2in, 12in))',
    shows: '1.903 sqft',
  },
  source: 'geometry',
  run: (args, context) => {
    const numbers = args.map(numberIn);
    const blank = numbers.findIndex((one) => one === undefined);
    if (blank >= 0 || args.length === 0) {
      return failed(missing('polygon', blank % 2 === 1 ? y : x));
    }
    const sizes = numbers.flatMap((one) => (one === undefined ? [] : [one]));
    const shape = polygonShape(sizes, context.settings);
    return shape.ok ? ok({ kind: 'shape', shape: shape.value }) : shape;
  },
};

const address: Parameter = {
  name: 'file',
  help: 'SVG or DXF file beside the job, and after a # which outline of it: an id, or a layer.',
  type: { kind: 'text' },
};

const unit: Parameter = {
  name: 'unit',
  help: 'Size of one unit of the drawing, where the file does not say it.',
  type: { kind: 'quantity', dimensions: [length] },
  optional: true,
};

const path: FunctionEntry = {
  name: 'path',
  group: 'shapes',
  help: 'An outline out of a drawing file that lies beside the job.',
  parameters: [address, unit],
  result: { kind: 'shape' },
  example: {
    formula: '=IFERROR(SHAPE.AREA(path("outlines/door.svg#left")), 2.6sqft)',
    shows: '2.6 sqft',
  },
  source: 'W3C SVG 1.1; AutoCAD DXF reference',
  run: (args, context) => {
    const where = wordIn(args[0]);
    if (where === undefined) return failed(missing('path', address));
    const shape = pathShape(where.trim(), numberIn(args[1]), context);
    return shape.ok ? ok({ kind: 'shape', shape: shape.value }) : shape;
  },
};

/** Makers of outlines of their own form. */
export const freeShapeFunctions: readonly FunctionEntry[] = [polygon, path];
