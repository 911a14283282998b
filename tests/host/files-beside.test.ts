import { afterEach, describe, expect, test, vi } from 'vitest';
import type { JobDesk } from '../../extension/host/job-desk.ts';
import { editor, FakeDocument, Uri, workspace } from '../helpers/fake-vscode.ts';
import { closeDesks, deskOf } from '../helpers/open-desk.ts';
import { smallJob } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

const file = Uri.parse('file:/jobs/outlines/shelf.svg');

function svg(width: number): Uint8Array {
  return new TextEncoder().encode(
    `<svg width="40in" viewBox="0 0 40 20"><rect id="edge" width="${String(width)}" height="10"/></svg>`,
  );
}

afterEach(closeDesks);

function area(desk: JobDesk): number {
  const result = desk.snapshot().workbook.row('part', 'board')?.cell('area').result;
  return result?.state === 'value' && result.value.kind === 'quantity'
    ? result.value.base / 25.4 ** 2
    : NaN;
}

const traced = smallJob.replace('"rect(24in, 12in)"', `'path("outlines/shelf.svg#edge")'`);

describe('FilesBeside', () => {
  test('an outline is read as the job opens, and again when its file changes on disk', async () => {
    await workspace.fs.writeFile(file, svg(30));
    const desk = await deskOf(traced);
    expect(area(desk)).toBeCloseTo(300, 6);
    await workspace.fs.writeFile(file, svg(20));
    await desk.fileChanged(file as never);
    expect(area(desk)).toBeCloseTo(200, 6);
  });

  test('an outline that is open in the editor counts as it stands there', async () => {
    await workspace.fs.writeFile(file, svg(30));
    const desk = await deskOf(traced);
    editor.documents.push(new FakeDocument(file, new TextDecoder().decode(svg(16)), 'xml'));
    await desk.fileChanged(file as never);
    expect(area(desk)).toBeCloseTo(160, 6);
  });

  test('a path typed into a cell has its file brought', async () => {
    await workspace.fs.writeFile(file, svg(30));
    const desk = await deskOf(smallJob);
    expect(desk.snapshot().wants).toEqual([]);
    await desk.edit(undefined, undefined, [
      {
        kind: 'type',
        cell: { table: 'part', id: 'board', occurrence: 0, column: 'shape' },
        text: 'path("outlines/shelf.svg#edge")',
      },
    ]);
    await expect.poll(() => area(desk), { timeout: 30_000 }).toBeCloseTo(300, 6);
  });

  test('a file that is not there is told at its cell', async () => {
    const desk = await deskOf(traced.replace('shelf.svg', 'nowhere.svg'));
    const { problems } = desk.snapshot();
    expect(problems.map(({ problem }) => problem.code)).toContain('outline-missing');
  });
});
