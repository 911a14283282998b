import { describe, expect, test } from 'vitest';
import { matchingChoices } from '../../../webview/suggest/options.ts';

const options = [
  { value: 'mdf_12', label: 'MDF, 12 mm', detail: 'sheet' },
  { value: 'panelboard_3', label: 'Panel board, 3 mm', detail: 'sheet' },
  { value: 'ring', label: 'Ring', detail: 'structure' },
  { value: 'tube_ring', label: 'Ring cut from tube', detail: 'structure' },
];

function found(text: string): string[] {
  return matchingChoices(options, text).map((one) => one.insert);
}

describe('matchingChoices', () => {
  test('nothing typed lists all in their order', () => {
    expect(found('')).toEqual(options.map((one) => one.value));
  });

  test('words may come in any order and from label, id or detail', () => {
    expect(found('3 panel')).toEqual(['panelboard_3']);
    expect(found('sheet 12')).toEqual(['mdf_12']);
  });

  test('the option itself comes before those that merely hold it', () => {
    expect(found('ring')).toEqual(['ring', 'tube_ring']);
    expect(found('tube')[0]).toBe('tube_ring');
  });

  test('what fits nothing lists nothing', () => {
    expect(found('carpet')).toEqual([]);
  });
});
