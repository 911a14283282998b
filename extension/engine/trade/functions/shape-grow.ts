import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { shapeGrown } from '../../geometry/shape-grow.ts';
import { failed, ok } from '../../result.ts';
import { length } from '../../units/dimension.ts';
import { missing, numberIn, shownWith, wordIn } from '../arguments.ts';
import { shapeIn, shapeNamed } from '../ring-arguments.ts';
import { tradeProblem } from '../trade-problems.ts';

const name = 'SHAPE.GROW';

const shapeParameter: Parameter = {
  name: 'shape',
  help: 'A shape, such as circle(8 in).',
  type: { kind: 'shape' },
};

const distanceParameter: Parameter = {
  name: 'distance',
  help: 'How far outside its outline; negative for inside.',
  type: { kind: 'quantity', dimensions: [length] },
};

const cornersParameter: Parameter = {
  name: 'corners',
  help: 'round, as a bearing or cloth goes round a corner (taken when left out), or square, as a saw cuts it.',
  type: { kind: 'choice', choices: ['round', 'square'] },
  optional: true,
};

/** SHAPE.GROW. */
export const shapeGrow: FunctionEntry = {
  name,
  group: 'shapes',
  help: 'The shape whose outline runs at a distance outside another.',
  parameters: [shapeParameter, distanceParameter, cornersParameter],
  result: { kind: 'shape' },
  example: {
    formula: '=SHAPE.GROW(roundrect(24in, 16in, 2in), 1in)',
    shows: 'roundrect(26 in, 18 in, 3 in)',
  },
  source: 'geometry (parallel curves)',
  run: ([shapeGiven, distanceGiven, cornersGiven], context) => {
    const shape = shapeIn(shapeGiven);
    if (shape === undefined) return failed(missing(name, shapeParameter));
    const distance = numberIn(distanceGiven);
    if (distance === undefined) return failed(missing(name, distanceParameter));
    const corners = wordIn(cornersGiven) === 'square' ? 'square' : 'round';
    const grown = shapeGrown(shape, distance, corners);
    if (grown !== undefined) return ok({ kind: 'shape', shape: grown });
    return failed(
      tradeProblem('shape-not-grown', {
        function: name,
        distance: shownWith(context)(distance, length),
        shape: shapeNamed(shape, context),
      }),
    );
  },
};
