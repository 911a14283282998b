import { describe, expect, test } from 'vitest';
import { layLines } from '../../../webview/grid/lines.ts';

const groups = [
  { group: 'structure', label: 'Structure', totals: '' },
  { group: 'skin', label: 'Skin', totals: '' },
  { group: 'finish', label: 'Finish', totals: '' },
];

function words(order: readonly string[], groupOf: (key: string) => string | undefined): string[] {
  const lines = layLines({ order, groups }, groupOf);
  return lines.all.map((line) => (line.kind === 'group' ? `# ${line.group.label}` : line.key));
}

describe('layLines', () => {
  test('each group with rows has a heading, one without has none', () => {
    const groupOf = (key: string): string => (key === 'vinyl' ? 'finish' : 'structure');
    expect(words(['base', 'ring', 'vinyl'], groupOf)).toEqual([
      '# Structure',
      'base',
      'ring',
      '# Finish',
      'vinyl',
    ]);
  });

  test('a row that has not arrived stands in the group above it', () => {
    const groupOf = (key: string): string | undefined => (key === 'late' ? undefined : 'skin');
    expect(words(['cloth', 'late', 'resin'], groupOf)).toEqual([
      '# Skin',
      'cloth',
      'late',
      'resin',
    ]);
  });

  test('rows find their lines', () => {
    const lines = layLines({ order: ['a', 'b'], groups }, (key) =>
      key === 'a' ? 'structure' : 'skin',
    );
    expect(lines.lineOfRow).toEqual([1, 3]);
    expect(lines.rowOfKey.get('b')).toBe(1);
  });

  test('a table without groups is its rows', () => {
    expect(layLines({ order: ['x', 'y'], groups: [] }, () => '').all).toHaveLength(2);
  });
});
