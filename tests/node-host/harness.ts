import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { serveNodeHost } from '../../.config/start/node-host.js';
import { gitRepository, type GitRepository } from '../helpers/git-repository.ts';
import type { Size } from '../workbench/harness/browser.ts';
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
  /** Chooses a line of the list that a command shows. */
  readonly choose: (text: string) => Promise<void>;
  /** Lines of the list that a command shows, once they hold a text. */
  readonly choices: (text: string) => Promise<readonly string[]>;
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
  const lines = workbench.page.locator('.quick-input-list .monaco-list-row');
  return {
    ...workbench,
    repository,
    git(...words) {
      const { status, out } = repository.git(...words);
      if (status !== 0) throw new Error(`git ${words.join(' ')}: ${out}`);
      return out;
    },
    async choose(text) {
      await lines.filter({ hasText: text }).first().click({ timeout: 60_000 });
    },
    choices: async (text) =>
      until(
        `a list with ${text}`,
        async () => {
          const texts = await lines.allInnerTexts();
          return texts.some((line) => line.includes(text)) && texts;
        },
        60_000,
      ),
  };
}
