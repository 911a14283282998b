import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { openOutlineFiles } from '../../extension/engine/geometry/outline-files.ts';
import { testWorld } from '../helpers/test-world.ts';

const square = 'x\ty\n0\t0\n10\t0\n10\t8\n0\t8\n';

function ran(args: readonly string[], piped = square) {
  const world = testWorld({ 'points.txt': square }, piped);
  const code = run(['outline', ...args], world);
  const written = world.files.get('outlines/shelf.svg');
  const files = openOutlineFiles(new Map([['shelf.svg', String(written)]]));
  const answer = files.source({
    address: 'shelf.svg#edge',
    unit: undefined,
    settings: { units: 'in', currency: 'USD' },
  });
  return { code, ...world.written(), outline: answer.ok ? answer.value : undefined };
}

const out = ['--out', 'outlines/shelf.svg'];

describe('run outline', () => {
  test('writes the outline of piped points, which a job can name, and says how large it is', () => {
    const { code, out: told, outline } = ran(out);
    expect(code).toBe(0);
    expect((outline?.area ?? 0) / 25.4 ** 2).toBeCloseTo(80, 4);
    expect(outline?.box.left).toBeCloseTo(0, 3);
    expect(told).toBe(
      'outlines/shelf.svg: 10 in × 8 in, 0.5556 sqft inside, 36 in round, from 4 points. A job in this folder writes path("outlines/shelf.svg#edge") in its shape cell.\n',
    );
  });

  test('reads a file, in millimetres, and stations along an edge', () => {
    expect(ran(['points.txt', '--units', 'mm', ...out]).outline?.area).toBeCloseTo(80, 3);
    const { outline } = ran([...out, '--stations', '--units', 'mm'], '0, 50\n100, 80\n200, 50\n');
    expect(outline?.area).toBeCloseTo(13_000, 2);
  });

  test('says what is wrong with the points, or with the call', () => {
    expect(ran(out, '0, 0\n10, 10\n10, 0\n0, 10\n')).toMatchObject({
      code: 1,
      err: 'panelwright: The outline crosses itself at (5 in, 5 in). Pull its lines apart there.\n',
    });
    expect(ran(out, '0, 0\n10\n').err).toContain('Line 2 has 1 figures');
    expect(ran([]).err).toContain('outline needs --out');
    expect(ran(['--out', 'a.dxf']).code).toBe(2);
    expect(ran(['no.txt', ...out]).err).toContain('no.txt cannot be read');
    expect(ran(['--out', '../a.svg']).out).toContain('A job beside it writes path("a.svg#edge")');
    expect(ran(['--out', '/sealed/a.svg']).err).toContain('cannot be written');
    expect(ran([...out, '--units', 'cm']).err).toContain('--units is in or mm');
  });
});
