import { describe, expect, test } from 'vitest';
import { inColumns } from '../../extension/command-line/columns.ts';

describe('inColumns', () => {
  test('cells stand under one another, figures at the right, nothing trails', () => {
    const lines = [['Name', 'Cost', ''], '', ['Board', '14.00', 'tight'], ['Glue', '4.50', '']];
    expect(inColumns(lines, [1])).toBe('Name    Cost\n\nBoard  14.00  tight\nGlue    4.50\n');
  });
});
