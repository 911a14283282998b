import { problemMaker } from '../problems.ts';

/** Problems of lists of measured points. */
export const traceProblem = problemMaker({
  'trace-line': 'Line {number}: {message}',
  'trace-not-two':
    'Line {number} has {given} figures; each point takes two, how far to the right and how far up, such as 3 1/2, 12.',
  'trace-not-stations':
    'Line {number} has {given} figures; each station takes how far along the edge and the offset from it, or the offsets of both sides, and every line as many.',
  'trace-falls':
    'Line {number} does not lie further along the edge than the line before it; list the stations in their order.',
  'trace-few': 'An outline takes three points or more; there are {given}.',
});
