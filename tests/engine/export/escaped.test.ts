import { describe, expect, test } from 'vitest';
import { escaped } from '../../../extension/engine/export/escaped.ts';

describe('escaped', () => {
  test('a name that looks like markup stays a name', () => {
    expect(escaped('<b class="x">A & B</b>')).toBe(
      '&lt;b class=&quot;x&quot;&gt;A &amp; B&lt;/b&gt;',
    );
  });
});
