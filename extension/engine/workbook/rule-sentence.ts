import { showShape } from '../geometry/shape-text.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { CellResult } from './answers.ts';

function shown(result: CellResult, settings: UnitSettings): string {
  if (result.state !== 'value') return '?';
  const { value } = result;
  switch (value.kind) {
    case 'quantity':
      return showQuantity(value, settings).text;
    case 'text':
      return value.text;
    case 'yes-no':
      return value.yes ? 'yes' : 'no';
    case 'choice':
      return value.word.replaceAll('_', ' ');
    case 'link':
      return value.id;
    case 'shape':
      return showShape(value.shape, settings);
  }
}

/**
 * What a kind's rule says of a row that does not keep it: `{column}` stands for the row's cell as it
 * is shown. A column that the row does not have stays as it is written.
 */
export function ruleSentence(
  say: string,
  cell: (column: string) => CellResult | string | undefined,
  settings: UnitSettings,
): string {
  return say.replaceAll(/\{([\w.]+)\}/g, (whole, column: string) => {
    const found = cell(column);
    if (found === undefined) return whole;
    return typeof found === 'string' ? found : shown(found, settings);
  });
}
