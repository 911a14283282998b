import { describe, expect, test } from 'vitest';
import {
  copiedDriverCommand,
  driverCommand,
  withAttributes,
} from '../../../extension/engine/sharing/merge-setup.ts';

const lines = '*.paneljob merge=panelwright\n*.panelbook merge=panelwright\n';

describe('withAttributes', () => {
  test('adds what is missing, once, below what is there', () => {
    expect(withAttributes('')).toBe(lines);
    expect(withAttributes(lines)).toBe(lines);
    expect(withAttributes('*.png binary')).toBe(`*.png binary\n${lines}`);
    expect(withAttributes('*.paneljob merge=panelwright\n')).toBe(lines);
  });

  test('keeps the line breaks of the file', () => {
    expect(withAttributes('a\r\n')).toBe(`a\r\n${lines.replaceAll('\n', '\r\n')}`);
  });
});

describe('driverCommand', () => {
  test('is read by a shell on every system', () => {
    expect(driverCommand('C:\\shop\\merge-driver.cjs')).toContain('"C:/shop/merge-driver.cjs"');
    expect(copiedDriverCommand()).toContain('$(git rev-parse --git-common-dir)/panelwright/');
  });
});
