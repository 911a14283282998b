import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { previewChangeOrder, writeChangeOrder } from '../../extension/host/compare/change-order.ts';
import { previewPaper, writePaper } from '../../extension/host/paper.ts';
import { Uri, window, workspace } from '../helpers/fake-vscode.ts';
import { closeDesks, deskOf } from '../helpers/open-desk.ts';
import { readPdf } from '../helpers/read-pdf.ts';
import { smallJob } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

interface Item {
  readonly label: string;
}

/** What the person chooses, in turn, and what came of it. */
const person = vi.hoisted(() => ({
  choices: [] as string[],
  told: [] as string[],
  pages: [] as { title: string; html: string }[],
  git: undefined as object | undefined,
}));

vi.mock('vscode', async (original) => {
  const fake = await original<typeof import('../helpers/fake-vscode.ts')>();
  return {
    ...fake,
    ViewColumn: { Beside: -2 },
    workspace: Object.assign(fake.workspace, {
      getWorkspaceFolder: () => undefined,
      onDidSaveTextDocument: () => ({ dispose: () => undefined }),
    }),
    extensions: { getExtension: () => person.git },
  };
});

const agreed = Uri.parse('file:/jobs/agreed.paneljob');
const longer = smallJob.replace('rect(24in, 12in)', 'rect(30in, 12in)');

Object.assign(window, {
  showQuickPick: (items: readonly Item[]) => {
    const wanted = person.choices.shift();
    return Promise.resolve(items.find(({ label }) => label === wanted));
  },
  showOpenDialog: () => Promise.resolve([agreed]),
  showInformationMessage: (message: string) => Promise.resolve(person.told.push(message)),
  createWebviewPanel: (_: string, title: string) => {
    const page = { title, html: '' };
    person.pages.push(page);
    return { webview: page, onDidDispose: () => undefined };
  },
});

beforeEach(async () => {
  Object.assign(person, { choices: [], told: [], pages: [], git: undefined });
  await workspace.fs.writeFile(agreed, new TextEncoder().encode(smallJob));
});

afterEach(closeDesks);

async function written(path: string): Promise<string> {
  const { title, pages } = await readPdf(await workspace.fs.readFile(Uri.parse(`file:${path}`)));
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  return `${title} ${words}`.replaceAll(/\s+/g, ' ');
}

describe('writePaper', () => {
  test('writes the paper that was chosen as PDF, with the commit of the job', async () => {
    const repository = {
      log: () => Promise.resolve([{ hash: '0123456789abcdef', message: 'Quote it' }]),
      diffWithHEAD: () => Promise.resolve('- one\n+ other'),
    };
    const api = { getRepository: () => repository };
    person.git = { isActive: true, exports: { enabled: true, getAPI: () => api } };
    person.choices = ['Shop sheet', 'PDF on A4'];
    await writePaper(await deskOf(smallJob));
    const said = await written('/jobs/door-shopsheet.pdf');
    expect(said).toContain('Shop sheet: One shelf');
    expect(said).toContain('Version of the file: 0123456789, changed since');
    expect(person.told).toEqual(['Shop sheet written to /jobs/door-shopsheet.pdf.']);
  });

  test('writes a page of HTML; who turns away has nothing written', async () => {
    person.choices = ['Quote', 'HTML'];
    await writePaper(await deskOf(smallJob));
    const page = await workspace.fs.readFile(Uri.parse('file:/jobs/door-quote.html'));
    expect(new TextDecoder().decode(page)).toMatch(/^<!DOCTYPE html>[\s\S]*One shelf/);
    person.told.length = 0;
    await writePaper(await deskOf(smallJob));
    expect(person.told).toEqual([]);
  });
});

describe('previewPaper', () => {
  test('shows a page that admits its own style and nothing else', async () => {
    person.choices = ['Safety sheet'];
    await previewPaper(await deskOf(smallJob));
    const [page] = person.pages;
    expect(page?.title).toBe('Safety sheet: door.paneljob');
    expect(page?.html).toMatch(/default-src 'none'; style-src 'nonce-\w{24}'/);
  });
});

describe('writeChangeOrder', () => {
  test('writes what changed since a file as PDF', async () => {
    person.choices = ['File…', 'Client’s copy', 'PDF on Letter'];
    await writeChangeOrder(await deskOf(longer));
    const said = await written('/jobs/door-change-order.pdf');
    expect(said).toContain('Change order: One shelf');
    expect(said).toContain('Board: shape 30 in × 12 in, was 24 in × 12 in.');
    expect(said).toContain('Changes: agreed.paneljob');
  });
});

describe('previewChangeOrder', () => {
  test('shows the same beside the grid', async () => {
    person.choices = ['File…', 'Shop’s copy'];
    await previewChangeOrder(await deskOf(longer));
    expect(person.pages[0]?.title).toBe('Change order: door.paneljob');
    expect(person.pages[0]?.html).toContain('Hours (shop copy)');
  });
});
