import { EmptyValue } from 'hyperformula';
import type { CellValue, ValueType } from '../formula/value.ts';
import { isPlain, shapeSizes, type FreeShape, type Shape } from '../geometry/shape.ts';
import { plain } from '../units/dimension.ts';

/** A value as the evaluator holds it: base-unit numbers, texts, yes or no. */
export type Register = number | string | boolean;

/** Shapes by the text that stands for them in the evaluator. */
export type Shapes = Map<string, Shape>;

// Two outlines from one drawing file are other shapes when the file has changed between.
function shapeKey(shape: Shape): string {
  if (!isPlain(shape)) return `${freeKey(shape)}@${shape.outline.print}`;
  return `${shape.kind}(${shapeSizes(shape).join(',')})`;
}

function freeKey(shape: FreeShape): string {
  switch (shape.kind) {
    case 'polygon':
      return shape.kind;
    case 'path':
      return `path(${shape.address},${String(shape.unit)})`;
    case 'grown':
      return `grown(${shapeKey(shape.of)},${String(shape.distance)},${shape.corners})`;
  }
}

/** What stands for a value in the evaluator; of two values of one kind and dimension, alike if they are. */
export function registerOf(value: CellValue): Register {
  switch (value.kind) {
    case 'quantity':
      return value.base;
    case 'text':
      return value.text;
    case 'yes-no':
      return value.yes;
    case 'choice':
      return value.word;
    case 'link':
      return value.id;
    case 'shape':
      return shapeKey(value.shape);
  }
}

export function toRegister(value: CellValue, shapes: Shapes): Register {
  if (value.kind === 'shape') shapes.set(shapeKey(value.shape), value.shape);
  return registerOf(value);
}

function textAs(text: string, type: ValueType, shapes: Shapes): CellValue | undefined {
  if (type.kind === 'text') return { kind: 'text', text };
  if (text === '') return undefined;
  switch (type.kind) {
    case 'choice':
      return { kind: 'choice', word: text };
    case 'link':
      return { kind: 'link', id: text };
    case 'shape': {
      const shape = shapes.get(text);
      return shape === undefined ? undefined : { kind: 'shape', shape };
    }
    default:
      return { kind: 'text', text };
  }
}

/** A value of the evaluator as what its type says it is; undefined where it is blank. */
export function fromRegister(raw: unknown, type: ValueType, shapes: Shapes): CellValue | undefined {
  if (raw === null || raw === undefined || raw === EmptyValue) return undefined;
  switch (typeof raw) {
    case 'number': {
      const dimension = type.kind === 'quantity' ? type.dimension : plain;
      return { kind: 'quantity', base: raw, dimension };
    }
    case 'boolean':
      return { kind: 'yes-no', yes: raw };
    case 'string':
      return textAs(raw, type, shapes);
    case 'object':
      // The evaluator marks percentages and the like with an object round the number.
      return 'val' in raw ? fromRegister(raw.val, type, shapes) : undefined;
    default:
      return undefined;
  }
}
