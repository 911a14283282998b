import { problemMaker } from '../../problems.ts';

const texts = {
  'check-failed': '{message}',
  'check-near': '{message}',
  'check-decide': '{message}',
  'check-open': '{message}',
} as const;

export type CheckProblemCode = keyof typeof texts;

/** Makes a problem of a check from its sentence. */
export const checkProblem = problemMaker<CheckProblemCode>(texts);
