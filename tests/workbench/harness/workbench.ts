import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serveWorkbench } from '../../../.config/start/workbench.js';
import { launchBrowser, type Frame, type Locator, type Page, type Size } from './browser.ts';

export const repository = fileURLToPath(new URL('../../../', import.meta.url));

/** Names of VS Code's own themes, and what a webview is told of each. */
export const themes = {
  dark: { name: 'Default Dark Modern', kind: 'vscode-dark' },
  light: { name: 'Default Light Modern', kind: 'vscode-light' },
  'high-contrast': { name: 'Default High Contrast', kind: 'vscode-high-contrast' },
  'high-contrast-light': {
    name: 'Default High Contrast Light',
    kind: 'vscode-high-contrast-light',
  },
} as const;

export type Theme = keyof typeof themes;

export interface LaunchOptions {
  /** Folder whose contents are copied into the workspace; sample-jobs by default. */
  readonly folder?: string;
  /** Further files of the workspace, by path. */
  readonly files?: Readonly<Record<string, string>>;
  readonly theme?: Theme;
  readonly size?: Size;
  /** Folder of another extension to load instead of this repository's. */
  readonly extension?: string;
  /** Folder of a further extension. */
  readonly beside?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
  /** A bundled suite to run in the extension host. */
  readonly suite?: string;
}

/** A VS Code workbench in a browser, with a workspace of its own on disk. */
export interface Workbench {
  readonly page: Page;
  /** Folder of the workspace on disk. */
  readonly folder: string;
  /** What the content security policy refused so far, in any frame. */
  readonly violations: readonly string[];
  /** Opens a file by clicking it in the explorer. */
  readonly clickFile: (path: string) => Promise<void>;
  /** Opens a file by clicking it, and waits for its grid. */
  readonly openGrid: (path: string) => Promise<Frame>;
  /** The frame of the grid in front. */
  readonly gridFrame: (marker?: string) => Promise<Frame>;
  /** Bytes of a file on disk, as text. */
  readonly bytes: (path: string) => Promise<string>;
  /** Runs a command of the palette by its title. */
  readonly command: (title: string) => Promise<void>;
  /** What the suite printed, once it has ended. */
  readonly suiteLines: () => Promise<readonly string[]>;
  readonly screenshot: (name: string) => Promise<string>;
  readonly close: () => Promise<void>;
}

/** How Chromium begins to tell that the content security policy refused something. */
const refusal = /Content Security Policy/;

export async function until<Answer>(
  what: string,
  ask: () => Promise<Answer | undefined | false>,
  timeoutMs = 30_000,
): Promise<Answer> {
  const end = Date.now() + timeoutMs;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined && answer !== false) return answer;
    if (Date.now() > end) throw new Error(`Waited ${timeoutMs / 1000} s in vain for ${what}.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

async function layOutWorkspace(options: LaunchOptions): Promise<string> {
  const folder = join(await mkdtemp(join(tmpdir(), 'panelwright-')), 'workspace');
  await cp(options.folder ?? join(repository, 'sample-jobs'), folder, { recursive: true });
  const settings = {
    'workbench.colorTheme': themes[options.theme ?? 'dark'].name,
    'workbench.secondarySideBar.defaultVisibility': 'hidden',
    'window.autoDetectColorScheme': false,
    ...options.settings,
  };
  const files = { '.vscode/settings.json': JSON.stringify(settings), ...options.files };
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  return folder;
}

/** Row of a file in the explorer; folders above it are opened first. */
async function explorerRow(page: Page, path: string): Promise<Locator> {
  const row = (label: string): Locator =>
    page.locator(`.explorer-folders-view .monaco-list-row[aria-label^="${label}"]`).first();
  const parts = path.split('/');
  for (const folder of parts.slice(0, -1)) {
    const line = row(folder);
    await line.waitFor({ timeout: 60_000 });
    if ((await line.getAttribute('aria-expanded')) !== 'true') await line.click();
  }
  const file = row(parts.at(-1) ?? path);
  await file.waitFor({ timeout: 60_000 });
  return file;
}

async function frameWith(page: Page, marker: string): Promise<Frame> {
  const ask = async (): Promise<Frame | undefined> => {
    for (const frame of [...page.frames()].reverse()) {
      const shown = await frame
        .locator(marker)
        .first()
        .isVisible()
        .catch(() => false);
      if (shown) return frame;
    }
    return undefined;
  };
  // The first grid of a workbench waits for the extension to start.
  return until(`a frame with ${marker}`, ask, 60_000);
}

/** Runs a command from the palette, opened again until the command stands in its list. */
async function runCommand(page: Page, title: string): Promise<void> {
  const input = page.locator('.quick-input-widget input.input').first();
  const line = page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first();
  const shown = { state: 'visible', timeout: 3000 } as const;
  await until(`the command ${title}`, async () => {
    try {
      await page.keyboard.press('F1');
      await input.waitFor(shown);
      await input.fill(`>${title}`, { timeout: shown.timeout });
      await line.click({ timeout: shown.timeout });
      return true;
    } catch (fault) {
      if (fault instanceof Error && fault.name === 'TimeoutError') return false;
      throw fault;
    }
  });
}

/** Gives what a suite in the extension host prints, as soon as it says that it has ended. */
async function hearSuite(page: Page): Promise<{ readonly ended: Promise<readonly string[]> }> {
  const lines: string[] = [];
  let end: (lines: readonly string[]) => void = () => undefined;
  const ended = new Promise<readonly string[]>((resolve) => {
    end = resolve;
  });
  await page.exposeFunction('codeAutomationLog', (_kind: string, words: readonly unknown[]) => {
    lines.push(words.join(' '));
  });
  await page.exposeFunction('codeAutomationExit', () => {
    end(lines);
  });
  return { ended };
}

/** A workbench that is served already. */
export interface Served {
  readonly url: string;
  /** Its folder on disk. */
  readonly folder: string;
  readonly size?: Size;
  /** What ends the server and throws its folder away. */
  readonly end: () => Promise<void>;
}

/** Opens a browser on a workbench and waits for its explorer. */
export async function browse({ url, folder, size, end }: Served): Promise<Workbench> {
  const browser = await launchBrowser();
  const context = await browser.newContext({ viewport: size ?? { width: 1440, height: 900 } });
  const page = await context.newPage();
  const violations: string[] = [];
  page.on('console', (message) => {
    if (refusal.test(message.text())) violations.push(message.text());
  });
  const suite = await hearSuite(page);
  await page.goto(url);
  await page
    .locator('.explorer-folders-view .monaco-list-row')
    .first()
    .waitFor({ timeout: 90_000 });

  const gridFrame = (marker = '[data-grid]'): Promise<Frame> => frameWith(page, marker);
  const clickFile = async (path: string): Promise<void> => {
    await (await explorerRow(page, path)).click();
  };
  return {
    page,
    folder,
    violations,
    clickFile,
    gridFrame,
    async openGrid(path) {
      await clickFile(path);
      return gridFrame();
    },
    suiteLines: async () => suite.ended,
    bytes: async (path) => readFile(join(folder, path), 'utf8'),
    command: async (title) => runCommand(page, title),
    async screenshot(name) {
      const path = join(repository, 'node_modules/.cache/workbench', `${name}.png`);
      await page.screenshot({ path });
      return path;
    },
    async close() {
      await browser.close();
      await end();
    },
  };
}

/** Starts a workbench; every test that starts one closes it. */
export async function launch(options: LaunchOptions = {}): Promise<Workbench> {
  const folder = await layOutWorkspace(options);
  const served = await serveWorkbench({
    folder,
    ...(options.extension === undefined ? {} : { extension: options.extension }),
    ...(options.beside === undefined ? {} : { beside: options.beside }),
    ...(options.suite === undefined ? {} : { tests: options.suite }),
  });
  return browse({
    url: served.url,
    folder,
    ...(options.size === undefined ? {} : { size: options.size }),
    async end() {
      await served.close();
      await rm(dirname(folder), { recursive: true, force: true });
    },
  });
}
