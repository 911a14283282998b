import type { UnitSettings } from '../units/quantity.ts';
import type { CellResult } from './answers.ts';
import { shownValue } from './shown-cell.ts';

function shown(result: CellResult, settings: UnitSettings): string {
  return result.state === 'value' ? shownValue(result.value, '', settings) : '?';
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
