import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { areaOf, readDxfLines, readPdfPages } from '../helpers/read-drawings.ts';
import { smallJob, testWorld } from '../helpers/test-world.ts';

const traced = smallJob.replace('"rect(24in, 12in)"', `'path("outlines/shelf.svg#edge")'`);
const files = {
  'jobs/shelf.paneljob': smallJob,
  'jobs/metric.paneljob': smallJob.replace('units = "in"', 'units = "mm"'),
  'jobs/traced.paneljob': traced,
  'jobs/lost.paneljob': traced.replace('shelf.svg', 'gone.svg'),
  'jobs/bare.paneljob': 'format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\n',
  'jobs/outlines/shelf.svg':
    '<svg width="400mm" viewBox="0 0 400 300"><path id="edge" d="M10 10H390L300 290H10Z"/></svg>',
};

function ran(...args: readonly string[]) {
  const world = testWorld(files);
  const code = run(['patterns', ...args], world);
  return { code, ...world.written(), files: world.files };
}

describe('run patterns', () => {
  test('writes each part of both hands as SVG, DXF and PDF, and lists the files', () => {
    const { code, out, files: written } = ran('jobs/shelf.paneljob', '--out', 'cut');
    expect(code).toBe(0);
    const names = [...written.keys()].sort();
    expect(names).toEqual([
      'cut/board_left-letter.pdf',
      'cut/board_left.dxf',
      'cut/board_left.svg',
      'cut/board_right-letter.pdf',
      'cut/board_right.dxf',
      'cut/board_right.svg',
    ]);
    expect(out.trim().split('\n').sort()).toEqual(names);
  });

  test('an outline out of a drawing comes out at its size, for both hands', async () => {
    const { code, files: written } = ran('jobs/traced.paneljob', '--out', 'cut', '--paper', 'a4');
    expect(code).toBe(0);
    const area = 280 * 290 + (90 * 280) / 2;
    for (const hand of ['left', 'right']) {
      const { lines } = readDxfLines(String(written.get(`cut/board_${hand}.dxf`)));
      const [outline] = lines.filter(({ layer }) => layer === 'OUTLINE').map(areaOf);
      expect((outline ?? 0) / area).toBeCloseTo(1, 4);
    }
    const pdf = written.get('cut/board_left-a4.pdf');
    const pages = pdf instanceof Uint8Array ? await readPdfPages(pdf) : [];
    expect(pages.length).toBeGreaterThan(2);
    expect(pages[0]?.text).toContain('seen from inside the car');
  });

  test('a job in millimetres takes A4, and one part may be asked for', () => {
    const { files: written } = ran('jobs/metric.paneljob', '--out', 'cut', '--part', 'board');
    expect([...written.keys()]).toContain('cut/board_left-a4.pdf');
    const other = ran('jobs/shelf.paneljob', '--out', 'cut', '--part', 'ring');
    expect(other.code).toBe(2);
    expect(other.err).toContain('There is no pattern of ring. There are patterns of: board.');
  });

  test('a drawing that is not there is told with its line, and the program says so at its end', () => {
    const { code, err } = ran('jobs/lost.paneljob', '--out', 'cut');
    expect(code).toBe(1);
    expect(err).toContain('nothing that is cut to a form');
    expect(err).toContain('outlines/gone.svg cannot be read');
    const world = testWorld(files);
    expect(run(['check', 'jobs/lost.paneljob'], world)).toBe(1);
    expect(world.written().out).toMatch(
      /jobs\/lost\.paneljob:\d+: outlines\/gone\.svg cannot be read; .* \[outline-missing\]/,
    );
  });

  test('what cannot be written, or is asked wrongly, says so', () => {
    expect(ran('jobs/shelf.paneljob', '--out', '/sealed').err).toContain(
      '/sealed/board_left.svg cannot be written.',
    );
    expect(ran('jobs/shelf.paneljob').err).toContain('patterns needs --out');
    expect(ran('jobs/shelf.paneljob', '--out', 'cut', '--paper', 'a3').err).toContain(
      '--paper is letter or a4, not a3.',
    );
    expect(ran('jobs/bare.paneljob', '--out', 'cut').code).toBe(2);
    expect(ran('jobs/none.paneljob', '--out', 'cut').code).toBe(2);
  });
});
