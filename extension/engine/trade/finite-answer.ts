import type { Argument, FunctionContext, FunctionEntry } from '../formula/catalogue.ts';
import type { CellValue } from '../formula/value.ts';
import { shapeArea, shapePerimeter } from '../geometry/shape.ts';
import { showShape } from '../geometry/shape-text.ts';
import { failed } from '../result.ts';
import { showQuantity } from '../units/show.ts';
import { tradeProblem } from './trade-problems.ts';

function isFinite(value: CellValue): boolean {
  if (value.kind === 'quantity') return Number.isFinite(value.base);
  if (value.kind !== 'shape') return true;
  return Number.isFinite(shapeArea(value.shape)) && Number.isFinite(shapePerimeter(value.shape));
}

function givenText(argument: Argument, { settings }: FunctionContext): string {
  if (argument === undefined || !('kind' in argument)) return '';
  if (argument.kind === 'quantity') return ` ${showQuantity(argument, settings).text}`;
  return argument.kind === 'shape' ? ` ${showShape(argument.shape, settings)}` : '';
}

/**
 * The same function, which refuses where the answer is beyond what can be reckoned with: an overflow
 * or a division by next to nothing is never passed on as a figure.
 */
export function withFiniteAnswer(entry: FunctionEntry): FunctionEntry {
  const { name, parameters, run } = entry;
  if (run === undefined) return entry;
  return {
    ...entry,
    run: (args, context) => {
      const answer = run(args, context);
      if (!answer.ok || isFinite(answer.value)) return answer;
      const given = parameters
        .map((parameter, index) => `${parameter.name}${givenText(args[index], context)}`)
        .filter((_, index) => args[index] !== undefined)
        .join(', ');
      return failed(tradeProblem('answer-not-finite', { function: name, given }));
    },
  };
}
