import type { GitRepository } from '../../extension/host/git/repository.ts';
// Types alone: the mock of the module cannot wait for the module.
import type { Uri, window as fakeWindow, workspace as fakeWorkspace } from './fake-vscode.ts';

/** A commit with the files that it left, by path. */
export interface FakeCommit {
  readonly hash: string;
  readonly message: string;
  readonly authorName: string;
  readonly authorDate: Date;
  readonly files: Readonly<Record<string, string>>;
}

/** A list that the person was shown. */
interface ShownList {
  readonly title: string;
  readonly lines: readonly string[];
}

/** A page that was shown beside the grid. */
interface ShownPage {
  readonly title: string;
  html: string;
}

/** What stands around a command that asks git, and what the person does and sees. */
export const gitWorld = {
  /** False: VS Code has no git, as in a browser. */
  hasGit: true,
  /** Newest first. */
  commits: [] as readonly FakeCommit[],
  /** Branches and tags with the commit they stand on. */
  refs: [] as readonly { readonly name: string; readonly hash: string }[],
  /** Beginnings of the lines that are chosen, in turn; with none left the list is closed. */
  choices: [] as string[],
  /** The file that is chosen in the dialog; undefined closes it. */
  file: undefined as Uri | undefined,
  /** True: who waits presses Cancel at once. */
  cancels: false,
  lists: [] as ShownList[],
  dialogs: [] as string[],
  said: [] as string[],
  errors: [] as string[],
  pages: [] as ShownPage[],
};

/** An empty repository, and a person who chooses nothing. */
export function newGitWorld(): void {
  Object.assign(gitWorld, { hasGit: true, commits: [], refs: [], choices: [], file: undefined });
  Object.assign(gitWorld, { cancels: false, lists: [], dialogs: [], said: [] });
  Object.assign(gitWorld, { errors: [], pages: [] });
}

function commitAt(ref: string): FakeCommit | undefined {
  if (ref === 'HEAD') return gitWorld.commits[0];
  const hash = gitWorld.refs.find(({ name }) => name === ref)?.hash ?? ref;
  return gitWorld.commits.find((commit) => commit.hash === hash);
}

/** A repository that answers as git does: a revision or a file that is not there is a fault. */
const repository: Omit<GitRepository, 'rootUri'> = {
  show: (ref, path) => {
    const text = commitAt(ref)?.files[path];
    return text === undefined ? Promise.reject(new Error('fatal')) : Promise.resolve(text);
  },
  setConfig: () => Promise.resolve(''),
  log: ({ maxEntries = Infinity, path = '' }) => {
    const { commits } = gitWorld;
    const changed = commits.filter(
      ({ files }, index) => files[path] !== commits[index + 1]?.files[path],
    );
    return Promise.resolve(changed.slice(0, maxEntries));
  },
  getRefs: () => Promise.resolve(gitWorld.refs),
};

interface Line {
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
}

function wordsOf(line: Line | string): string {
  if (typeof line === 'string') return line;
  return [line.label, line.description, line.detail]
    .filter((word) => word !== undefined)
    .join(' | ');
}

function choose<Item extends Line | string>(
  items: readonly Item[],
  { title }: { readonly title: string },
): Promise<Item | undefined> {
  gitWorld.lists.push({ title, lines: items.map(wordsOf) });
  const wanted = gitWorld.choices.shift();
  if (wanted === undefined) return Promise.resolve(undefined);
  const found = items.find((item) => wordsOf(item).startsWith(wanted));
  if (found === undefined) throw new Error(`No line begins with “${wanted}”`);
  return Promise.resolve(found);
}

const token = {
  get isCancellationRequested(): boolean {
    return gitWorld.cancels;
  },
};

interface Fake {
  readonly window: typeof fakeWindow;
  readonly workspace: typeof fakeWorkspace;
}

/** The `vscode` module with the git extension, lists, dialogs and pages; for `vi.mock`. */
export function withGit(fake: Fake): object {
  return {
    ...fake,
    ViewColumn: { Beside: -2 },
    ProgressLocation: { Notification: 15 },
    extensions: {
      getExtension: () => {
        const exports = { enabled: true, getAPI: () => ({ getRepository: () => repository }) };
        return gitWorld.hasGit ? { isActive: true, exports } : undefined;
      },
    },
    workspace: Object.assign(fake.workspace, {
      onDidSaveTextDocument: () => ({ dispose: () => undefined }),
    }),
    window: {
      ...fake.window,
      showQuickPick: choose,
      showInformationMessage: (message: string) => Promise.resolve(gitWorld.said.push(message)),
      showErrorMessage: (message: string) => Promise.resolve(gitWorld.errors.push(message)),
      showOpenDialog: ({ title, defaultUri }: { title: string; defaultUri: Uri }) => {
        gitWorld.dialogs.push(`${title} in ${defaultUri.path}`);
        return Promise.resolve(gitWorld.file === undefined ? undefined : [gitWorld.file]);
      },
      withProgress: (_: object, run: (progress: object, token: object) => Promise<unknown>) =>
        run({}, token),
      createWebviewPanel: (_: string, title: string) => {
        const page = { title, html: '' };
        gitWorld.pages.push(page);
        return { webview: page, onDidDispose: () => undefined };
      },
    },
  };
}

/** A commit by the demo estimator; each is a day later than the one with a smaller number. */
export function commit(
  number: number,
  message: string,
  files: Readonly<Record<string, string>>,
  authorName = 'Demo Estimator',
): FakeCommit {
  const hash = String(number).padStart(2, '0').repeat(20);
  return { hash, message, authorName, authorDate: new Date(2026, 10, number, 14, 5), files };
}
