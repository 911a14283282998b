import { describe, expect, test } from 'vitest';
import { openSession } from '../../../extension/engine/index.ts';
import { cutOthers, cutView } from '../../../extension/host/views/cut-view.ts';

const job = `format = 1

[job]
title = "Two boards"
units = "in"
currency = "USD"

[[panel]]
id = "door"

hands = "pair"

[[part]]
id = "back"

name = "Back board"
kind = "base"
panel = "door"

material = "hardboard_6"

length = "26 in"
width = "15 in"
`;

const snapshot = openSession(job).snapshot();
const wish = { line: '', sheet: 0, cuts: false };

describe('cutView', () => {
  test('shows the first line that is cut, with its parts by row', () => {
    const view = cutView(wish, snapshot);
    expect(view.wish.line).toBe('hardboard_6');
    expect(view.message).toBe('');
    expect(view.rows).toEqual({ 'part/back': 'Back board' });
    expect(view.drawing?.marks.filter(({ row }) => row === 'part/back').length).toBeGreaterThan(1);
  });

  test('tells what the layout comes to, and that nothing can cost less', () => {
    const { facts } = cutView(wish, snapshot);
    expect(facts[0]).toMatch(/^laid out: 1 sheet, /);
    expect(facts).toContain('nothing can cost less');
    expect(facts.at(-1)).toMatch(/^costs \d+\.\d\d USD$/);
  });

  test('the saw’s cuts come in words and marks when they are wanted', () => {
    const sawn = cutView({ ...wish, cuts: true }, snapshot);
    expect(sawn.words.some((words) => words.startsWith('Cut 1: '))).toBe(true);
    expect(sawn.drawing?.marks.some(({ role }) => role === 'kerf')).toBe(true);
  });

  test('a job that cuts nothing says what would bring a layout', () => {
    const empty = openSession('format = 1\n').snapshot();
    expect(cutView(wish, empty).message).toMatch(/^Nothing is cut/);
  });
});

describe('cutOthers', () => {
  test('each stock alone is laid out, and half of it', () => {
    const others = cutOthers(wish, snapshot);
    expect(others.map(({ stock }) => stock.split(':')[0])).toEqual([
      'hardboard_full',
      'hardboard_full',
      'hardboard_half',
      'hardboard_half',
    ]);
    expect(others[0]?.words).toBe('1 for 24.00 USD, 17 % used');
  });
});
