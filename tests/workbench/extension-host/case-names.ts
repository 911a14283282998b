/** The cases of the suite, named here because outside an extension host `cases.ts` cannot be loaded. */
export const cases = [
  'a job opens as a grid',
  'a job opens as text when asked, and as a grid again',
  'a shop book is a text of its own language',
  'a comparison of a job shows texts, not two grids',
  'switching units changes one line, and undo takes it back',
  'opening a job does not touch it',
  'a broken line is told in the Problems view',
  'heavy work answers from a worker and tells how far it is',
  'heavy work that would never end is ended by cancelling',
  'every command of the manifest is there',
] as const;

export type CaseName = (typeof cases)[number];
