import { describe, expect, test } from 'vitest';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { namedCell, tracedBack, tracedText } from '../../../extension/engine/sharing/cell-trace.ts';
import { sample } from '../job/arbitrary-files.ts';
import { edited } from '../job/editing.ts';

const reading = readFile(sample);

describe('namedCell', () => {
  test('a row and its column, a setting, a column with dots', () => {
    expect(namedCell(reading, 'mid_ring.tilt')).toEqual({
      table: 'part',
      id: 'mid_ring',
      column: 'tilt',
    });
    expect(namedCell(reading, 'job.client')).toEqual({ table: 'job', id: '', column: 'client' });
    expect(namedCell(reading, 'skin.draw.staples.use')?.column).toBe('draw.staples.use');
  });

  test('no such row, or no column, is nothing', () => {
    expect(namedCell(reading, 'nobody.tilt')).toBeUndefined();
    expect(namedCell(reading, 'mid_ring')).toBeUndefined();
  });
});

describe('tracedText', () => {
  test('a setting and a cell', () => {
    expect(tracedText(reading, { table: 'job', id: '', column: 'units' })).toBe('in');
    expect(tracedText(reading, { table: 'part', id: 'mid_ring', column: 'tilt' })).toBe('15 deg');
  });
});

describe('tracedBack', () => {
  test('a row that was renamed is found under its former name', () => {
    const row = { table: 'part', id: 'base' };
    const later = readFile(edited(sample, { kind: 'rename-row', row, id: 'backing' }));
    const cell = { table: 'part', id: 'backing', column: 'name' };
    expect(tracedBack(cell, later, reading)).toEqual({ ...cell, id: 'base' });
  });
});
