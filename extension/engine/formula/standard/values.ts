import { plain, sameDimension, type Dimension } from '../../units/dimension.ts';
import type { Argument } from '../catalogue.ts';
import type { CellValue } from '../value.ts';

function isList(argument: Argument): argument is readonly (CellValue | undefined)[] {
  return Array.isArray(argument);
}

/** The values of one argument, blanks left out. */
export function valuesOf(argument: Argument): readonly CellValue[] {
  const values = isList(argument) ? argument : [argument];
  return values.flatMap((value) => value ?? []);
}

/** All places of one argument, blanks as undefined. */
export function placesOf(argument: Argument): readonly (CellValue | undefined)[] {
  return isList(argument) ? argument : [argument];
}

/** The number in a value, in base units; yes counts as 1. Undefined where it is no number. */
export function numberIn(value: CellValue): number | undefined {
  if (value.kind === 'quantity') return value.base;
  return value.kind === 'yes-no' ? Number(value.yes) : undefined;
}

/** The number an argument holds; undefined where it was left out or blank. */
export function numberOf(argument: Argument): number | undefined {
  const value = valuesOf(argument)[0];
  return value === undefined ? undefined : numberIn(value);
}

/** All numbers of the arguments, blanks skipped. */
export function numbersOf(args: readonly Argument[]): readonly number[] {
  return args.flatMap(valuesOf).flatMap((value) => numberIn(value) ?? []);
}

/** The dimension the arguments share; a plain number where none has one. */
export function dimensionOf(args: readonly Argument[]): Dimension {
  const dimensions = args
    .flatMap(valuesOf)
    .flatMap((value) => (value.kind === 'quantity' ? [value.dimension] : []));
  return dimensions.find((dimension) => !sameDimension(dimension, plain)) ?? plain;
}

/** A value as text: words as they are, numbers with up to fifteen digits. */
export function wordsIn(value: CellValue): string {
  switch (value.kind) {
    case 'text':
      return value.text;
    case 'choice':
      return value.word;
    case 'link':
      return value.id;
    case 'yes-no':
      return value.yes ? 'TRUE' : 'FALSE';
    case 'quantity':
      return String(Number(value.base.toPrecision(15)));
    case 'shape':
      return value.shape.kind;
  }
}

/** The text of an argument; empty where it was left out or blank. */
export function textOf(argument: Argument): string {
  const value = valuesOf(argument)[0];
  return value === undefined ? '' : wordsIn(value);
}
