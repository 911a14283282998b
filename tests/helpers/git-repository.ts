import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A repository of its own in a folder that is thrown away, with a branch `main`. */
export interface GitRepository {
  readonly folder: string;
  /** Runs git; its output, and how it ended. */
  readonly git: (...args: readonly string[]) => { readonly status: number; readonly out: string };
  readonly read: (file: string) => string;
  readonly write: (file: string, text: string) => void;
  /** Writes a file and commits all. */
  readonly commit: (file: string, text: string, message?: string) => void;
  readonly remove: () => void;
}

export function gitRepository(): GitRepository {
  const folder = mkdtempSync(join(tmpdir(), 'panelwright-git-'));
  const git: GitRepository['git'] = (...args) => {
    const { status, stdout, stderr } = spawnSync('git', args, {
      cwd: folder,
      encoding: 'utf8',
      // Nobody's own settings have a say.
      env: {
        ...process.env,
        GIT_CONFIG_GLOBAL: '/dev/null',
        GIT_CONFIG_NOSYSTEM: '1',
        GIT_EDITOR: 'true',
      },
    });
    return { status: status ?? -1, out: stdout + stderr };
  };
  const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
  const write = (file: string, text: string): void => {
    writeFileSync(join(folder, file), text);
  };
  git('init', '-q', '-b', 'main');
  git('config', 'user.name', 'Demo Estimator');
  git('config', 'user.email', 'demo@example.com');
  git('config', 'core.autocrlf', 'false');
  return {
    folder,
    git,
    read,
    write,
    commit: (file, text, message = 'change') => {
      write(file, text);
      git('add', '-A');
      git('commit', '-q', '-m', message);
    },
    remove: () => {
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
