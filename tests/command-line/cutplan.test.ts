import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { testWorld } from '../helpers/test-world.ts';

const sheet = { id: 'sheet', length: 2440, width: 1220, price: 40 };
const strips = {
  kind: 'rectangles',
  kerf: 3,
  stocks: [sheet],
  parts: [{ id: 'strip', length: 2440, width: 100, count: 12, rotations: [0] }],
};

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

function ran(files: Readonly<Record<string, string>>, ...args: readonly string[]) {
  const world = testWorld(files);
  const code = run(args, world);
  return { code, ...world.written(), files: world.files };
}

describe('run layout', () => {
  test('says how many sheets there are, and that fewer are impossible', () => {
    const { code, out } = ran({ 'i.json': JSON.stringify(strips) }, 'layout', 'i.json');
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toBe('2 (nothing can be cheaper), price 80, 49.2 % used');
  });

  test('gives programs every placement', () => {
    const { out } = ran({ 'i.json': JSON.stringify(strips) }, 'layout', 'i.json', '--json');
    const answer = JSON.parse(out) as { count: number; placements: readonly unknown[] };
    expect(answer.count).toBe(2);
    expect(answer.placements.length).toBe(12);
  });

  test('a bad instance gets a sentence', () => {
    const bad = ran({ 'i.json': '{"kind":"strips"}' }, 'layout', 'i.json');
    expect(bad.code).toBe(2);
    expect(bad.err).toBe(
      'panelwright: stocks is missing; it must be a list with at least one entry.\n',
    );
    expect(ran({ 'i.json': 'no' }, 'layout', 'i.json').err).toMatch(/^panelwright: .* is not JSON/);
  });
});

describe('run cutplan', () => {
  test('tells where each part lies and how it is sawn', () => {
    const { out } = ran({ 'j.paneljob': job }, 'cutplan', 'j.paneljob');
    expect(out).toContain('  2 of 26 in × 15 in\n');
    expect(out).toMatch(/Back board: .* at 0 in along, 0 in across/);
    expect(out).toContain('Cut 1: ');
  });

  test('a part that the job locks stays where it lies', () => {
    const lock = `
[[lock]]
id = "keep"

part = "back"
stock = "hardboard_half"
sheet = 1

at_x = "1 in"
at_y = "2 in"
`;
    const { out } = ran({ 'j.paneljob': job + lock }, 'cutplan', 'j.paneljob');
    expect(out).toMatch(/Back board: .* at 1 in along, 2 in across.*, locked\./);
  });

  test('writes every sheet as SVG, DXF and PDF', () => {
    const { files } = ran({ 'j.paneljob': job }, 'cutplan', 'j.paneljob', '--out', 'cut');
    expect([...files.keys()]).toEqual([
      'cut/hardboard_6-1.svg',
      'cut/hardboard_6-1.dxf',
      'cut/hardboard_6-1.pdf',
    ]);
  });
});
