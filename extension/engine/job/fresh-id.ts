import { isWellFormedId } from './reserved-words.ts';

/** How often letters are drawn before they are counted up instead. */
const draws = 20;

const combinations = 26 ** 3;

function lettersOf(number: number): string {
  return [676, 26, 1]
    .map((unit) => String.fromCharCode(97 + (Math.floor(number / unit) % 26)))
    .join('');
}

/**
 * An id for a new row: three letters, `_`, its kind (`kfd_ring`). Drawn letters keep two people's new
 * rows apart and spread them through the file.
 *
 * @param letters draws three small letters; the host's, as the engine has no chance
 */
export function freshId(kind: string, taken: ReadonlySet<string>, letters: () => string): string {
  const word = isWellFormedId(kind) ? kind : 'row';
  for (let draw = 0; draw < draws; draw++) {
    const id = `${letters()}_${word}`;
    if (isWellFormedId(id) && !taken.has(id)) return id;
  }
  for (let number = 0; number < combinations; number++) {
    const id = `${lettersOf(number)}_${word}`;
    if (!taken.has(id)) return id;
  }
  return freshId(`${word}_more`, taken, letters);
}

/**
 * The id that is wanted, or where it is taken the first of `wanted_2`, `wanted_3`… that is not; it is
 * taken from then on.
 */
export function takeId(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number++) id = `${wanted}_${String(number)}`;
  taken.add(id);
  return id;
}
