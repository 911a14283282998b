import type { Problem } from '../problems.ts';
import { instanceProblem } from './instance-problems.ts';

/** An object of a JSON text. */
export type Fields = Readonly<Record<string, unknown>>;

/** The first fault of an instance; thrown inside the reader alone and caught at its end. */
export class InstanceFault extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** Ends the reading with a problem. */
export function refuse(...made: Parameters<typeof instanceProblem>): never {
  throw new InstanceFault(instanceProblem(...made));
}

/** What stands in a field, in words. */
export function given(value: unknown): string {
  return value === undefined ? 'missing' : JSON.stringify(value).slice(0, 60);
}

/** Whether a value is an object with fields. */
export function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A number of a field, at least `least`; `otherwise` where it is left out. */
export function numberOf(
  fields: Fields,
  key: string,
  rule: { readonly where: string; readonly least: number; readonly otherwise?: number },
): number {
  const value = fields[key];
  if (value === undefined && rule.otherwise !== undefined) return rule.otherwise;
  if (typeof value !== 'number' || !Number.isFinite(value) || value < rule.least) {
    refuse('instance-number', {
      where: `${rule.where}${key}`,
      given: given(value),
      least: rule.least,
    });
  }
  return value;
}

/** One of a few words; undefined where it is left out. */
export function wordOf<Word extends string>(
  fields: Fields,
  key: string,
  words: readonly Word[],
): Word | undefined {
  const value = fields[key];
  if (value === undefined) return undefined;
  const found = words.find((word) => word === value);
  if (found === undefined) {
    refuse('instance-word', { where: key, given: given(value), words: words.join(' or ') });
  }
  return found;
}

/** Objects of a list. */
export function objectsOf(fields: Fields, key: string, least: number): readonly Fields[] {
  const value = fields[key];
  if (!Array.isArray(value) || value.length < least || !value.every(isFields)) {
    refuse('instance-list', { where: key, given: given(value) });
  }
  return value;
}

/** Ids of a list's entries, which must be texts and differ. */
export function idOf(fields: Fields, where: string, index: number): string {
  const { id } = fields;
  if (id === undefined) return String(index + 1);
  if (typeof id !== 'string') refuse('instance-id', { where: `${where}id`, given: given(id) });
  return id;
}
