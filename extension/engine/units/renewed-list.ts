/** Lists that came one out of the other. */
interface Line {
  /** Places that each step changed, the last step's last. */
  readonly steps: (readonly number[])[];
  age: number;
}

interface Renewal {
  readonly line: Line;
  readonly age: number;
}

const renewals = new WeakMap<readonly unknown[], Renewal>();

/** So many steps back a list can still be compared place by place. */
const remembered = 8;

/**
 * The list with other things in some places. What came of a list remembers these places, so that
 * `differingPlaces` need not look at all the others.
 */
export function renewedList<Thing>(
  list: readonly Thing[],
  fresh: ReadonlyMap<number, Thing>,
): readonly Thing[] {
  const next = list.slice();
  for (const [place, thing] of fresh) next[place] = thing;
  const known = renewals.get(list);
  // What a list became once it does not become twice: the second time begins a line of its own.
  const line = known !== undefined && known.age === known.line.age ? known.line : newLine(list);
  line.age += 1;
  line.steps.push([...fresh.keys()]);
  if (line.steps.length > remembered) line.steps.shift();
  renewals.set(next, { line, age: line.age });
  return next;
}

function newLine(list: readonly unknown[]): Line {
  const line = { steps: [], age: 0 };
  renewals.set(list, { line, age: 0 });
  return line;
}

/** Places that may differ; undefined where nothing is known of how the one came out of the other. */
function steppedPlaces(
  before: readonly unknown[],
  now: readonly unknown[],
): Iterable<number> | undefined {
  const [old, fresh] = [renewals.get(before), renewals.get(now)];
  if (old === undefined || old.line !== fresh?.line || old.age > fresh.age) return undefined;
  const { line } = fresh;
  const since = line.steps.length - (line.age - old.age);
  if (since < 0) return undefined;
  const steps = line.steps.slice(since, line.steps.length - (line.age - fresh.age));
  return steps.length === 1 ? steps[0] : new Set(steps.flat());
}

/**
 * Places at which two lists hold different things, rising.
 *
 * @returns undefined where one list is longer than the other
 */
export function differingPlaces(
  before: readonly unknown[],
  now: readonly unknown[],
): readonly number[] | undefined {
  if (before === now) return [];
  if (before.length !== now.length) return undefined;
  const places: number[] = [];
  const stepped = steppedPlaces(before, now);
  if (stepped !== undefined) {
    for (const place of stepped) if (before[place] !== now[place]) places.push(place);
    return places.sort((one, two) => one - two);
  }
  for (let place = 0; place < now.length; place++)
    if (before[place] !== now[place]) places.push(place);
  return places;
}
