import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { serveNodeHost } from '../../.config/start/node-host.js';
import { gitRepository, type GitRepository } from '../helpers/git-repository.ts';
import type { Locator, Size } from '../workbench/harness/browser.ts';
import {
  browse,
  repository as checkout,
  themes,
  until,
  type Theme,
  type Workbench,
} from '../workbench/harness/workbench.ts';

/** Nobody's own settings have a say in what git does, and what only looks holds up nothing. */
const gitAlone = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_EDITOR: 'true',
  GIT_OPTIONAL_LOCKS: '0',
};

/** A workbench on a real repository. */
export interface GitWorkbench extends Workbench {
  readonly repository: GitRepository;
  /** Runs git; a fault throws with what git said. */
  readonly git: (...words: readonly string[]) => string;
  /** Runs a command until the list that it shows holds a text; the lines of that list. */
  readonly listed: (title: string, text: string) => Promise<readonly string[]>;
  /** Chooses a line of the list in front. */
  readonly choose: (text: string) => Promise<void>;
}

/** A repository with the shop book of the sample jobs, and no commit. */
export function shopRepository(): GitRepository {
  const repository = gitRepository();
  mkdirSync(join(repository.folder, 'books'));
  const book = 'books/demo-shop.panelbook';
  copyFileSync(join(checkout, 'sample-jobs', book), join(repository.folder, book));
  return repository;
}

/** Commits everything in somebody's name. */
export function commitAs(repository: GitRepository, author: string, message: string): void {
  const email = `${author.toLowerCase().replaceAll(' ', '.')}@example.com`;
  repository.git('add', '-A');
  repository.git('commit', '-q', '-m', message, `--author=${author} <${email}>`);
}

function listLines({ page }: Workbench): Locator {
  return page.locator('.quick-input-list .monaco-list-row');
}

/**
 * Lines of the list that a command shows, once they hold a text. The palette gives the focus back to
 * the grid as it closes, which on a busy machine comes after the list and closes it: then undefined.
 */
async function linesThatStay(
  workbench: Workbench,
  text: string,
): Promise<readonly string[] | undefined> {
  const lines = listLines(workbench);
  const line = lines.filter({ hasText: text }).first();
  try {
    await line.waitFor({ state: 'visible', timeout: 20_000 });
  } catch (fault) {
    if (fault instanceof Error && fault.name === 'TimeoutError') return undefined;
    throw fault;
  }
  await workbench.page.waitForTimeout(500);
  return (await line.isVisible()) ? lines.allInnerTexts() : undefined;
}

export async function openRepository(
  repository: GitRepository,
  options: { readonly theme?: Theme; readonly size?: Size } = {},
): Promise<GitWorkbench> {
  const { folder } = repository;
  const served = await serveNodeHost({
    folder,
    env: gitAlone,
    settings: {
      'workbench.colorTheme': themes[options.theme ?? 'dark'].name,
      'workbench.startupEditor': 'none',
      'window.autoDetectColorScheme': false,
      'git.openRepositoryInParentFolders': 'never',
      'git.autofetch': false,
    },
  });
  const workbench = await browse({
    url: served.url,
    folder,
    ...(options.size === undefined ? {} : { size: options.size }),
    async end() {
      await served.close();
      repository.remove();
    },
  });
  // A file that is clicked before the extensions are known opens as text.
  await workbench.page
    .locator('.statusbar-item', { hasText: 'main' })
    .first()
    .waitFor({ timeout: 90_000 });
  return {
    ...workbench,
    repository,
    git(...words) {
      const { status, out } = repository.git(...words);
      if (status !== 0) throw new Error(`git ${words.join(' ')}: ${out}`);
      return out;
    },
    listed: async (title, text) =>
      until(
        `a list with ${text}`,
        async () => {
          await workbench.command(title);
          return linesThatStay(workbench, text);
        },
        90_000,
      ),
    async choose(text) {
      await listLines(workbench).filter({ hasText: text }).first().click({ timeout: 60_000 });
    },
  };
}
