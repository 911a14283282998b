import { afterEach, describe, expect, test, vi } from 'vitest';
import { exportPatterns } from '../../extension/host/export-patterns.ts';
import { Uri, window, workspace } from '../helpers/fake-vscode.ts';
import { closeDesks, deskOf } from '../helpers/open-desk.ts';
import { smallJob } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

interface Item {
  readonly label: string;
  readonly picked?: boolean;
}

const told: string[] = [];
const asked: (readonly Item[])[] = [];

/** A person who takes what is ticked, and this folder. */
function person(folder: Uri | undefined): void {
  told.length = 0;
  asked.length = 0;
  Object.assign(window, {
    showInformationMessage: (message: string) => Promise.resolve(told.push(message)),
    showQuickPick: (items: readonly Item[]) => {
      asked.push(items);
      return Promise.resolve(items.filter(({ picked }) => picked === true));
    },
    showOpenDialog: () => Promise.resolve(folder === undefined ? undefined : [folder]),
  });
}

afterEach(closeDesks);

describe('exportPatterns', () => {
  test('asks which, as what and where, and writes each file there', async () => {
    person(Uri.parse('file:/cut'));
    await exportPatterns(await deskOf(smallJob));
    expect(asked.map((items) => items.map(({ label }) => label))).toEqual([
      ['Board, left, seen from inside the car', 'Board, right, seen from inside the car'],
      ['SVG', 'DXF', 'PDF on Letter', 'PDF on A4'],
    ]);
    const svg = await workspace.fs.readFile(Uri.parse('file:/cut/board_left.svg'));
    expect(new TextDecoder().decode(svg)).toContain('inkscape:label="outline"');
    const pdf = await workspace.fs.readFile(Uri.parse('file:/cut/board_right-letter.pdf'));
    expect(new TextDecoder('latin1').decode(pdf).startsWith('%PDF-1.7')).toBe(true);
    await expect(
      workspace.fs.readFile(Uri.parse('file:/cut/board_right-a4.pdf')),
    ).rejects.toThrow();
    expect(told[0]).toMatch(/^6 files written to \/cut\. Print PDFs at 100 %/);
  });

  test('who turns away has nothing written and is told nothing', async () => {
    person(undefined);
    await exportPatterns(await deskOf(smallJob));
    expect(told).toEqual([]);
  });

  test('a job without outlines says what to do', async () => {
    person(Uri.parse('file:/cut'));
    await exportPatterns(await deskOf(smallJob.replace('shape = "rect(24in, 12in)"\n', '')));
    expect(told[0]).toContain('give a base its outline first');
  });
});
