import { problemMaker } from '../problems.ts';

/** What may be wrong with an instance that a program hands in. */
export const instanceProblem = problemMaker({
  'instance-not-object': 'The instance is not a JSON object such as {"kind":"rectangles", …}.',
  'instance-kind': 'kind is {given}; it is rectangles, outlines, strips, bolt or packs.',
  'instance-number': '{where} is {given}; it must be a number of {least} or more.',
  'instance-list': '{where} is {given}; it must be a list with at least one entry.',
  'instance-word': '{where} is {given}; it is {words}.',
  'instance-id': '{where} is {given}; it must be a text.',
  'instance-twice': 'Two {what} have the id {given}; ids must differ.',
  'instance-rotation': '{where} is {given}; turns of rectangles are 0, 90, 180 and 270.',
  'instance-cents':
    'minimum is {given}, but not all prices and it are amounts of money with up to three decimals: round them.',
  'instance-points': '{where} is {given}; an outline is a list of at least three [x, y].',
});
