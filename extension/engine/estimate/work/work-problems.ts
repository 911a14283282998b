import { problemMaker } from '../../problems.ts';

const texts = {
  'task-kind-missing':
    '{task} has no kind of work, so nothing says how long it takes: choose a kind, or type its time.',
  'task-without-time': '{task} has no time: type a basis and a rate, or its time for one panel.',
  'task-unanswered': '{task} has no time, because {column} has no answer: {reason}',
  'task-unit-unfitting':
    '{task}: {basis} at {rate} is no time. A rate is time for each unit of the basis, such as 6 min/sqft of an area.',
  'task-negative': '{task}: {column} is {value}; time is not below nothing.',
  'task-range-out-of-order':
    '{task}: at best {low}, most often {likely}, at worst {high}: they must rise. The range is left out.',
  'task-learning-outside':
    '{task}: learning is {value}; it is the share of the time left when the count doubles, above 0 % and at most 100 %. It is left out.',
  'task-panels-unclear':
    '{task} is on no part, and the panels of the job are made in different numbers, so it is counted once. Put it on a part, or count it per job.',
  'work-missing':
    'No time for “{work}”: {rows} {calls} for it. Add the task; one of 0 min says that it needs none.',
} as const;

export type WorkProblemCode = keyof typeof texts;

/** Makes a problem of the tasks sheet. */
export const workProblem = problemMaker<WorkProblemCode>(texts);
