const vscode = require('vscode');

const scheme = 'panelwright-folder';

/** Port and token travel in the address of the folder: `panelwright-folder://PORT-TOKEN/NAME/…`. */
function connection(uri) {
  const [port, token] = uri.authority.split('-');
  return { port, token };
}

/** The first segment of a path is the folder's own name, there only to be read by people. */
function pathInFolder(uri) {
  const second = uri.path.indexOf('/', 1);
  return second < 0 ? '/' : uri.path.slice(second);
}

async function ask(uri, method, verb, parameters = {}, body = undefined) {
  const { port, token } = connection(uri);
  const query = new URLSearchParams(parameters).toString();
  let response;
  try {
    response = await fetch(`http://127.0.0.1:${port}/${verb}?${query}`, {
      method,
      headers: { 'x-folder-token': token },
      ...(body === undefined ? {} : { body }),
    });
  } catch (fault) {
    if (!(fault instanceof TypeError)) throw fault;
    throw vscode.FileSystemError.Unavailable('The program that serves this folder has ended.');
  }
  if (response.ok) return response;
  const { code } = await response.json();
  const make = vscode.FileSystemError[code] ?? vscode.FileSystemError.Unavailable;
  throw make(uri);
}

class Folder {
  #changed = new vscode.EventEmitter();
  onDidChangeFile = this.#changed.event;
  #watching = false;

  watch(uri) {
    if (!this.#watching) {
      this.#watching = true;
      void this.#follow(uri.with({ path: `/${uri.path.split('/')[1] ?? ''}` }));
    }
    return new vscode.Disposable(() => undefined);
  }

  async #follow(root) {
    let after;
    for (;;) {
      try {
        const response = await ask(root, 'GET', 'changes', after === undefined ? {} : { after });
        const { next, changes } = await response.json();
        after = next;
        const events = await Promise.all(changes.map((change) => this.#event(root, change)));
        if (events.length > 0) this.#changed.fire(events);
      } catch (fault) {
        if (!(fault instanceof vscode.FileSystemError)) throw fault;
        await new Promise((resolve) => setTimeout(resolve, 2000));
      }
    }
  }

  async #event(root, { kind, path }) {
    const uri = root.with({ path: root.path + path });
    const there = await this.stat(uri).then(
      () => true,
      () => false,
    );
    const { Changed, Created, Deleted } = vscode.FileChangeType;
    return { uri, type: !there ? Deleted : kind === 'rename' ? Created : Changed };
  }

  async stat(uri) {
    const found = await (await ask(uri, 'GET', 'stat', { path: pathInFolder(uri) })).json();
    return {
      type: found.folder ? vscode.FileType.Directory : vscode.FileType.File,
      ctime: found.ctime,
      mtime: found.mtime,
      size: found.size,
      ...(found.writable ? {} : { permissions: vscode.FilePermission.Readonly }),
    };
  }

  async readDirectory(uri) {
    const listed = await (await ask(uri, 'GET', 'list', { path: pathInFolder(uri) })).json();
    return listed.map(({ name, folder }) => [
      name,
      folder ? vscode.FileType.Directory : vscode.FileType.File,
    ]);
  }

  async readFile(uri) {
    const response = await ask(uri, 'GET', 'file', { path: pathInFolder(uri) });
    return new Uint8Array(await response.arrayBuffer());
  }

  async writeFile(uri, content, { create, overwrite }) {
    await ask(uri, 'POST', 'file', { path: pathInFolder(uri), create, overwrite }, content);
  }

  async createDirectory(uri) {
    await ask(uri, 'POST', 'folder', { path: pathInFolder(uri) });
  }

  async delete(uri, { recursive }) {
    await ask(uri, 'POST', 'delete', { path: pathInFolder(uri), recursive });
  }

  async rename(from, to, { overwrite }) {
    await ask(from, 'POST', 'rename', {
      path: pathInFolder(from),
      to: pathInFolder(to),
      overwrite,
    });
  }
}

exports.activate = function activate(context) {
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider(scheme, new Folder(), { isCaseSensitive: true }),
  );
};
