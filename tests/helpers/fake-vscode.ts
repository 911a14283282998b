/**
 * As much of the `vscode` module as the host's tests need outside VS Code. The host project of vitest
 * puts it in the module's place; a test that needs more gives its own with `vi.mock`.
 */
const files = new Map<string, Uint8Array>();

interface UriParts {
  readonly scheme?: string;
  readonly path?: string;
}

export class Uri {
  readonly scheme: string;
  readonly path: string;

  private constructor(scheme: string, path: string) {
    this.scheme = scheme;
    this.path = path;
  }

  get fsPath(): string {
    return this.path;
  }

  static parse(text: string): Uri {
    const [, scheme = 'file', path = text] = /^([a-z-]+):(.*)$/.exec(text) ?? [];
    return new Uri(scheme, path);
  }

  static joinPath(uri: Uri, ...parts: readonly string[]): Uri {
    const steps: string[] = [];
    for (const step of [uri.path, ...parts].join('/').split('/')) {
      if (step === '..') steps.pop();
      else if (step !== '.') steps.push(step);
    }
    return new Uri(uri.scheme, steps.join('/'));
  }

  with({ scheme = this.scheme, path = this.path }: UriParts): Uri {
    return new Uri(scheme, path);
  }

  toString(): string {
    return `${this.scheme}:${this.path}`;
  }
}

export class FileSystemError extends Error {}

export class Position {
  readonly line: number;
  readonly character: number;

  constructor(line: number, character: number) {
    this.line = line;
    this.character = character;
  }
}

export class Range {
  readonly start: Position;
  readonly end: Position;

  constructor(start: Position, end: Position) {
    this.start = start;
    this.end = end;
  }
}

interface Replacement {
  readonly uri: Uri;
  readonly range: Range;
  readonly text: string;
}

export class WorkspaceEdit {
  readonly replacements: Replacement[] = [];

  replace(uri: Uri, range: Range, text: string): void {
    this.replacements.push({ uri, range, text });
  }
}

export const DiagnosticSeverity = { Error: 0, Warning: 1, Information: 2, Hint: 3 } as const;

export class Diagnostic {
  readonly range: Range;
  readonly message: string;
  readonly severity: number;
  source: string | undefined;
  code: unknown;

  constructor(range: Range, message: string, severity: number) {
    this.range = range;
    this.message = message;
    this.severity = severity;
  }
}

export class TabInputText {
  readonly uri: Uri;

  constructor(uri: Uri) {
    this.uri = uri;
  }
}

/** A document in memory; `write` is what typing in the text view, undo and git do. */
export class FakeDocument {
  readonly uri: Uri;
  readonly languageId: string;
  #text: string;

  constructor(uri: Uri, text: string, languageId = 'panelwright-job') {
    this.uri = uri;
    this.#text = text;
    this.languageId = languageId;
  }

  getText(): string {
    return this.#text;
  }

  positionAt(offset: number): Position {
    const before = this.#text.slice(0, offset);
    const line = before.split('\n').length - 1;
    return new Position(line, offset - (before.lastIndexOf('\n') + 1));
  }

  offsetAt({ line, character }: Position): number {
    const lines = this.#text.split('\n').slice(0, line);
    return lines.reduce((sum, one) => sum + one.length + 1, character);
  }

  /** What the file holds since it was saved last. */
  saved: string | undefined;

  save(): Promise<boolean> {
    this.saved = this.#text;
    return Promise.resolve(true);
  }

  write(text: string): void {
    this.#text = text;
    for (const hear of editor.hearers) hear(this);
  }
}

/** What the tests hold of the editor: open documents, edits that came, and how they are answered. */
export const editor = {
  documents: [] as FakeDocument[],
  hearers: new Set<(document: FakeDocument) => void>(),
  edits: [] as WorkspaceEdit[],
  /** False: edits are refused, as in a read-only folder. */
  accepts: true,
  commands: [] as (readonly unknown[])[],
  warnings: [] as string[],
  saves: true,
  writable: new Map<string, boolean>(),
  tabs: [] as { readonly input: unknown }[],
};

function applied(edit: WorkspaceEdit): boolean {
  editor.edits.push(edit);
  if (!editor.accepts) return false;
  const [first] = edit.replacements;
  const document = editor.documents.find((one) => one.uri.toString() === first?.uri.toString());
  if (document === undefined) return false;
  let text = document.getText();
  const changes = edit.replacements.map(({ range, text: put }) => ({
    start: document.offsetAt(range.start),
    end: document.offsetAt(range.end),
    put,
  }));
  for (const { start, end, put } of changes.sort((one, two) => two.start - one.start))
    text = text.slice(0, start) + put + text.slice(end);
  document.write(text);
  return true;
}

export const workspace = {
  get textDocuments(): readonly FakeDocument[] {
    return editor.documents;
  },
  async applyEdit(edit: WorkspaceEdit): Promise<boolean> {
    // Edits go to another process and back.
    await new Promise((done) => setTimeout(done, 1));
    return applied(edit);
  },
  fs: {
    isWritableFileSystem: (scheme: string): boolean | undefined => editor.writable.get(scheme),
    readFile(uri: Uri): Promise<Uint8Array> {
      const found = files.get(uri.toString());
      return found === undefined
        ? Promise.reject(new FileSystemError(`${uri.toString()} is not there`))
        : Promise.resolve(found);
    },
    writeFile(uri: Uri, content: Uint8Array): Promise<void> {
      files.set(uri.toString(), content);
      return Promise.resolve();
    },
  },
};

export const commands = {
  executeCommand(...call: readonly unknown[]): Promise<void> {
    editor.commands.push(call);
    return Promise.resolve();
  },
};

export const window = {
  tabGroups: {
    get all(): readonly { readonly tabs: readonly { readonly input: unknown }[] }[] {
      return [{ tabs: editor.tabs }];
    },
  },
  showWarningMessage(message: string): Promise<void> {
    editor.warnings.push(message);
    return Promise.resolve();
  },
  showInformationMessage: (): Promise<void> => Promise.resolve(),
  /** The person takes the name that is offered, or closes the dialog. */
  showSaveDialog: ({ defaultUri }: { readonly defaultUri: Uri }): Promise<Uri | undefined> =>
    Promise.resolve(editor.saves ? defaultUri : undefined),
};

/** Cancels as VS Code's own does. */
export class CancellationTokenSource {
  readonly #hearers = new Set<() => void>();
  readonly token = {
    isCancellationRequested: false,
    onCancellationRequested: (hear: () => void): { dispose: () => void } => {
      this.#hearers.add(hear);
      return { dispose: () => this.#hearers.delete(hear) };
    },
  };

  cancel(): void {
    this.token.isCancellationRequested = true;
    for (const hear of this.#hearers) hear();
  }
}
