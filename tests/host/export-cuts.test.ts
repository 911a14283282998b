import { afterEach, describe, expect, test, vi } from 'vitest';
import { exportCuts } from '../../extension/host/export-patterns.ts';
import { JobDesk } from '../../extension/host/job-desk.ts';
import { Uri, window, workspace } from '../helpers/fake-vscode.ts';
import { bench } from '../helpers/open-desk.ts';
import {
  areaOf,
  readDxfLines,
  readPdfPages,
  readSvgLines,
  type ReadLine,
} from '../helpers/read-drawings.ts';
import { smallJob } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

/** A person who takes all layouts and all formats, and this folder. */
function person(folder: Uri | undefined): string[] {
  const told: string[] = [];
  Object.assign(window, {
    showInformationMessage: (message: string) => Promise.resolve(told.push(message)),
    showQuickPick: (items: readonly unknown[]) => Promise.resolve(items),
    showOpenDialog: () => Promise.resolve(folder === undefined ? undefined : [folder]),
  });
  return told;
}

const opened: JobDesk[] = [];

afterEach(() => {
  for (const desk of opened.splice(0)) desk.dispose();
});

async function written(text: string): Promise<(name: string) => Promise<Uint8Array>> {
  const on = bench(text);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  await exportCuts(desk);
  return async (name) => workspace.fs.readFile(Uri.parse(`file:/cut/${name}`));
}

// Two boards of 24 × 12 in are cut; an inch is 25.4 mm exactly.
const board = 24 * 25.4 * 12 * 25.4;

/** Lines that enclose a board's area to a thousandth. */
function boards(lines: readonly ReadLine[]): readonly ReadLine[] {
  return lines.filter((one) => one.closed && Math.abs(areaOf(one) / board - 1) < 1e-3);
}

function sidesOf({ points }: ReadLine): readonly number[] {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].sort(
    (a, b) => b - a,
  );
}

describe('exportCuts', () => {
  test('the layout on screen is written as SVG, DXF and PDF that others read at full size', async () => {
    const told = person(Uri.parse('file:/cut'));
    const file = await written(smallJob);
    const text = async (name: string): Promise<string> => {
      return new TextDecoder().decode(await file(name));
    };
    const svg = readSvgLines(await text('hardboard_6-1.svg'));
    const dxf = readDxfLines(await text('hardboard_6-1.dxf'));
    expect(boards(svg.lines)).toHaveLength(2);
    expect(boards(dxf.lines)).toHaveLength(2);
    // Group code $INSUNITS 4 is millimetres (Autodesk's DXF reference).
    expect(dxf.units).toBe(4);
    expect(dxf.texts).toContain('Board');
    for (const one of [...boards(svg.lines), ...boards(dxf.lines)]) {
      const [long = 0, wide = 0] = sidesOf(one);
      expect(long).toBeCloseTo(609.6, 1);
      expect(wide).toBeCloseTo(304.8, 1);
    }
    expect(told[0]).toMatch(/^4 files written to \/cut/);
  });

  test.each([
    // ISO 216 and ANSI Y14.1, portrait.
    ['letter', 215.9, 279.4],
    ['a4', 210, 297],
  ])('the PDF on %s is tiled at full size', async (paper, width, height) => {
    person(Uri.parse('file:/cut'));
    const file = await written(smallJob);
    const pages = await readPdfPages(await file(`hardboard_6-1-${paper}.pdf`));
    expect(pages.length).toBeGreaterThan(4);
    for (const page of pages) {
      const sides = [page.width, page.height].sort((a, b) => a - b);
      expect(sides[0]).toBeCloseTo(width, 0);
      expect(sides[1]).toBeCloseTo(height, 0);
    }
    // A tile holds the outlines that reach into it, whole.
    const drawn = pages.flatMap(({ lines }) => boards(lines));
    expect(drawn.length).toBeGreaterThan(4);
    for (const one of drawn) {
      expect(sidesOf(one)[0]).toBeCloseTo(609.6, 0);
      expect(sidesOf(one)[1]).toBeCloseTo(304.8, 0);
    }
    expect(pages.map((page) => page.text).join(' ')).toContain('Board');
  });

  test('a job that cuts nothing is told so, and no folder is asked for', async () => {
    const told = person(Uri.parse('file:/cut'));
    await written(smallJob.replace('material = "hardboard_6"', 'material = "none"'));
    expect(told).toEqual(['This job cuts nothing from whole stock yet.']);
  });
});
