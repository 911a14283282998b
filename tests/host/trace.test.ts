import { afterEach, describe, expect, test, vi } from 'vitest';
import { JobDesk } from '../../extension/host/job-desk.ts';
import { traceView, writeTrace } from '../../extension/host/trace.ts';
import { editor, Uri, workspace } from '../helpers/fake-vscode.ts';
import { bench, testPanel } from '../helpers/open-desk.ts';
import { smallJob } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

const opened: JobDesk[] = [];

afterEach(() => {
  for (const desk of opened.splice(0)) desk.dispose();
});

async function open(): Promise<JobDesk> {
  const on = bench(smallJob);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  return desk;
}

const settings = { units: 'in', currency: 'USD' } as const;
const wish = { list: '0, 0\n20, 0\n20, 10\n0, 10', mode: 'points', smooth: false } as const;
const cell = { table: 'part', id: 'board', occurrence: 0, column: 'shape' };

function asked() {
  return { panel: testPanel(), request: 1 };
}

describe('traceView', () => {
  test('shows the outline and how large it is, or why there is none', () => {
    const view = traceView(wish, settings);
    expect(view.message).toBe('');
    expect(view.sentence).toContain('20 in × 10 in');
    expect(view.picture?.marks.length).toBeGreaterThan(1);
    expect(traceView({ ...wish, list: '0, 0\n5' }, settings).message).toContain('Line 2');
  });
});

describe('writeTrace', () => {
  test('writes the file beside the job and names it in the cell, whose area it then is', async () => {
    const desk = await open();
    const reply = await writeTrace({ wish, name: 'shelf-traced', cell }, desk, asked());
    expect(reply.ok).toBe(true);
    expect(desk.document.getText()).toContain(`'path("outlines/shelf-traced.svg#edge")'`);
    const bytes = await workspace.fs.readFile(Uri.parse('file:/jobs/outlines/shelf-traced.svg'));
    expect(new TextDecoder().decode(bytes)).toContain('<path id="edge"');
    const area = (): number => {
      const result = desk.snapshot().workbook.row('part', 'board')?.cell('area').result;
      return result?.state === 'value' && result.value.kind === 'quantity'
        ? result.value.base / 25.4 ** 2
        : NaN;
    };
    await expect.poll(area, { timeout: 30_000 }).toBeCloseTo(200, 3);
  });

  test('never writes over a file, nor one that a name cannot be given to', async () => {
    const desk = await open();
    await workspace.fs.writeFile(Uri.parse('file:/jobs/outlines/kept.svg'), new Uint8Array());
    const taken = await writeTrace({ wish, name: 'kept', cell }, desk, asked());
    expect(taken).toMatchObject({ ok: false, cell });
    expect(taken.ok ? '' : taken.message).toContain('outlines/kept.svg already');
    const odd = await writeTrace({ wish, name: '../out', cell }, desk, asked());
    expect(odd.ok ? '' : odd.message).toContain('cannot name a file');
    const open3 = await writeTrace({ wish: { ...wish, list: '' }, name: 'a', cell }, desk, asked());
    expect(open3.ok ? '' : open3.message).toContain('three points or more');
    expect(editor.edits).toEqual([]);
  });
});
