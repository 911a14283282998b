import type { Problem } from './problems.ts';

/** An answer, or the one problem that stands in its way. */
export type Result<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: Problem };

export function ok<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function failed(problem: Problem): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem };
}

/** Marks a branch that the types say cannot be reached; reaching it is a bug in the program. */
export function unreachable(value: never): never {
  throw new Error(`Unreachable case: ${JSON.stringify(value)}`);
}
