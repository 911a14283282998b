import { problemMaker } from '../problems.ts';

/** Reasons why two versions cannot be held against each other. */
export const compareProblem = problemMaker({
  'compare-conflicted':
    'The {which} version holds git’s conflict markers, so its cells cannot be told; settle them first.',
  'compare-unreadable':
    'The {which} version cannot be read, so there is nothing to compare with; open it as text and mend it first.',
});
