import type { Form } from './forms.ts';
import type { NoFits } from './no-fit.ts';

/** A sheet, or the length of a roll, on the grid; bays lie behind each other along x, apart. */
export interface Bay {
  readonly stock: number;
  readonly start: number;
  readonly columns: number;
  readonly rows: number;
}

/** Parts to be placed: each with the forms it may take. */
export interface Ground {
  readonly forms: readonly Form[];
  readonly noFits: NoFits;
  /** Form indices of each item. */
  readonly ways: readonly (readonly number[])[];
  readonly areas: readonly number[];
}

/** Where items lie, on the grid. */
export interface Places {
  readonly x: Int32Array;
  readonly y: Int32Array;
  readonly form: Int32Array;
  readonly bay: Int32Array;
}

/** Places of so many items, none of them anywhere yet. */
export function noPlaces(count: number): Places {
  return {
    x: new Int32Array(count),
    y: new Int32Array(count),
    form: new Int32Array(count),
    bay: new Int32Array(count).fill(-1),
  };
}

/** The same places, to be changed apart. */
export function copied({ x, y, form, bay }: Places): Places {
  return { x: x.slice(), y: y.slice(), form: form.slice(), bay: bay.slice() };
}

/** Columns of the first bay that are taken. */
export function reachOf(places: Places, ground: Ground, bay: number, start: number): number {
  let reach = 0;
  for (let item = 0; item < places.x.length; item++) {
    if (places.bay[item] !== bay) continue;
    const form = ground.forms[places.form[item] ?? 0];
    reach = Math.max(reach, (places.x[item] ?? 0) - start + (form?.columns ?? 0));
  }
  return reach;
}
