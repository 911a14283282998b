import type { FunctionEntry, Parameter } from './catalogue.ts';

/** How many arguments a function takes. */
export interface ArgumentCount {
  readonly least: number;
  readonly most: number;
}

function firstRepeated(entry: FunctionEntry): number {
  const index = entry.parameters.findIndex((parameter) => parameter.repeats === true);
  return index === -1 ? entry.parameters.length : index;
}

/** Index of the parameter that an argument belongs to; those that repeat come round again. */
export function parameterIndex(entry: FunctionEntry, argument: number): number | undefined {
  const { length } = entry.parameters;
  if (argument < length) return argument;
  const start = firstRepeated(entry);
  return start === length ? undefined : start + ((argument - start) % (length - start));
}

/** The parameter that an argument belongs to. */
export function parameterOf(entry: FunctionEntry, argument: number): Parameter | undefined {
  const index = parameterIndex(entry, argument);
  return index === undefined ? undefined : entry.parameters[index];
}

/** The least and the greatest number of arguments. */
export function argumentCount(entry: FunctionEntry): ArgumentCount {
  const { parameters } = entry;
  const least = parameters.filter((parameter) => parameter.optional !== true).length;
  const most = firstRepeated(entry) < parameters.length ? Infinity : parameters.length;
  return { least, most };
}

/** `RING.DEPTH(driver_depth, behind, clearance, [tilt])`. */
export function signatureText(entry: FunctionEntry): string {
  const names = entry.parameters.map(({ name, optional, repeats }) => {
    const shown = repeats === true ? `${name}, …` : name;
    return optional === true ? `[${shown}]` : shown;
  });
  return `${entry.name}(${names.join(', ')})`;
}
