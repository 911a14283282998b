import type { Expression, Step } from './expression.ts';

/** Something a formula names: a path of words, or a list of rows. */
export type Reference =
  | {
      readonly kind: 'path';
      readonly steps: readonly Step[];
      /** It stands alone as an argument, where it may be a row. */
      readonly argument: boolean;
    }
  | {
      readonly kind: 'list';
      readonly form: 'all' | 'on';
      readonly row?: readonly Step[];
      readonly kinds: readonly Step[];
      readonly column: Step;
    };

function collected(expression: Expression, argument: boolean, found: Reference[]): void {
  switch (expression.kind) {
    case 'quantity':
    case 'text':
      return;
    case 'path':
      found.push({ kind: 'path', steps: expression.steps, argument });
      return;
    case 'list': {
      const { form, kinds, column, row } = expression;
      const list = { kind: 'list', form, kinds, column } as const;
      found.push(row === undefined ? list : { ...list, row });
      return;
    }
    case 'call':
      for (const one of expression.args) {
        if (one !== undefined) collected(one, true, found);
      }
      return;
    case 'unary':
    case 'percent':
      collected(expression.operand, false, found);
      return;
    case 'binary':
      collected(expression.left, false, found);
      collected(expression.right, false, found);
  }
}

/** Everything a formula names, in reading order. Function names are not among it. */
export function referencesOf(expression: Expression): readonly Reference[] {
  const found: Reference[] = [];
  collected(expression, false, found);
  return found;
}
