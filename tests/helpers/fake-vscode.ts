/**
 * As much of the `vscode` module as the host's tests need outside VS Code. The host project of vitest
 * puts it in the module's place; a test that needs more gives its own with `vi.mock`.
 */
const files = new Map<string, Uint8Array>();

export class Uri {
  readonly scheme: string;
  readonly path: string;

  private constructor(scheme: string, path: string) {
    this.scheme = scheme;
    this.path = path;
  }

  static parse(text: string): Uri {
    const [, scheme = 'file', path = text] = /^([a-z-]+):(.*)$/.exec(text) ?? [];
    return new Uri(scheme, path);
  }

  static joinPath(uri: Uri, ...parts: readonly string[]): Uri {
    return new Uri(uri.scheme, [uri.path, ...parts].join('/'));
  }

  toString(): string {
    return `${this.scheme}:${this.path}`;
  }
}

export const workspace = {
  fs: {
    readFile(uri: Uri): Promise<Uint8Array> {
      const found = files.get(uri.toString());
      return found === undefined
        ? Promise.reject(new Error(`${uri.toString()} is not there`))
        : Promise.resolve(found);
    },
    writeFile(uri: Uri, content: Uint8Array): Promise<void> {
      files.set(uri.toString(), content);
      return Promise.resolve();
    },
  },
};
