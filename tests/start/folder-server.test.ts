import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { serveFolder } from '../../.config/start/folder-server.js';

const workbench = 'http://lab.localhost:1234';

let place: string;
let server: Awaited<ReturnType<typeof serveFolder>>;

beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'panelwright-folder-'));
  await mkdir(join(place, 'jobs/inner'), { recursive: true });
  await writeFile(join(place, 'jobs/door.paneljob'), 'format = 1\n');
  await writeFile(join(place, 'secret.txt'), 'secret');
  server = await serveFolder({
    folder: join(place, 'jobs'),
    isWorkbench: (origin) => origin === workbench,
  });
});

afterEach(async () => {
  await server.close();
  await rm(place, { recursive: true, force: true });
});

interface Asked {
  readonly method?: string;
  readonly body?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly origin: string | undefined;
}

/** Asks as the workbench does, unless told otherwise; Node sends whatever Host it is given. */
function ask(
  path: string,
  { method = 'GET', body = '', headers = {} }: Asked = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const own = { origin: workbench, 'x-folder-token': server.token };
    const options = {
      host: '127.0.0.1',
      port: server.port,
      path,
      method,
      headers: { ...own, ...headers },
    };
    const sent = request(options, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => (text += part));
      response.on('end', () => {
        const origin = response.headers['access-control-allow-origin'];
        resolve({ status: response.statusCode ?? 0, text, origin });
      });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const post = (body = ''): Asked => ({ method: 'POST', body });

describe('serveFolder', () => {
  test('the workbench reads, lists and writes the files on disk', async () => {
    expect(await ask('/file?path=/door.paneljob')).toMatchObject({
      status: 200,
      text: 'format = 1\n',
    });
    expect(JSON.parse((await ask('/list?path=/')).text)).toEqual([
      { name: 'door.paneljob', folder: false },
      { name: 'inner', folder: true },
    ]);
    await ask(
      '/file?path=/door.paneljob&create=false&overwrite=true',
      post('format = 1\n\n[job]\n'),
    );
    expect(await readFile(join(place, 'jobs/door.paneljob'), 'utf8')).toBe('format = 1\n\n[job]\n');
  });

  test('creating, renaming and deleting keep VS Code’s rules for what is there already', async () => {
    const codes = [];
    for (const [path, asked] of [
      ['/file?path=/new.paneljob&create=false&overwrite=true', post()],
      ['/file?path=/new.paneljob&create=true&overwrite=false', post('a')],
      ['/file?path=/new.paneljob&create=true&overwrite=false', post('b')],
      ['/rename?path=/new.paneljob&to=/door.paneljob&overwrite=false', post()],
      ['/rename?path=/new.paneljob&to=/inner/kick.paneljob&overwrite=false', post()],
      ['/folder?path=/plans', post()],
      ['/delete?path=/inner&recursive=true', post()],
      ['/stat?path=/inner', {}],
    ] as const) {
      const { status, text } = await ask(path, asked);
      codes.push(status === 200 ? 'done' : (JSON.parse(text) as { code: string }).code);
    }
    expect(codes).toEqual([
      'FileNotFound',
      'done',
      'FileExists',
      'FileExists',
      'done',
      'done',
      'done',
      'FileNotFound',
    ]);
  });

  test.each([
    '/file?path=/../secret.txt',
    '/file?path=/inner/../../secret.txt',
    '/file?path=/%2e%2e/secret.txt',
    '/file?path=..%2fsecret.txt',
    '/file?path=/..%5csecret.txt',
    '/list?path=/..',
  ])('a path that leads out of the folder is refused: %s', async (path) => {
    const { status, text } = await ask(path);
    expect({ refused: status >= 400, code: JSON.parse(text) as unknown }).toEqual({
      refused: true,
      code: { code: 'NoPermissions' },
    });
  });

  test('a link that leads out of the folder is not followed, to read or to write', async () => {
    await symlink(place, join(place, 'jobs/out'), 'junction');
    const options = '&create=true&overwrite=true';
    expect(await ask('/file?path=/out/secret.txt')).toMatchObject({ status: 403 });
    expect(await ask(`/file?path=/out/new.txt${options}`, post('x'))).toMatchObject({
      status: 403,
    });
    expect(
      await ask('/rename?path=/door.paneljob&to=/out/door.paneljob&overwrite=true', post()),
    ).toMatchObject({ status: 403 });
    expect(await readFile(join(place, 'secret.txt'), 'utf8')).toBe('secret');
  });

  test('the folder itself cannot be deleted', async () => {
    expect(await ask('/delete?path=/&recursive=true', post())).toMatchObject({ status: 403 });
  });

  test('without the token, or with another, nothing is told', async () => {
    for (const token of ['', '0'.repeat(server.token.length), `${server.token}0`]) {
      expect(
        await ask('/file?path=/door.paneljob', { headers: { 'x-folder-token': token } }),
      ).toMatchObject({ status: 401, text: '{"code":"NoToken"}' });
    }
  });

  test.each(['http://evil.example', 'null', '', `${workbench}.evil.example`])(
    'a page of another origin is refused although it has the token: %j',
    async (origin) => {
      expect(await ask('/file?path=/door.paneljob', { headers: { origin } })).toEqual({
        status: 403,
        text: '{"code":"ForeignOrigin"}',
        origin: undefined,
      });
    },
  );

  test.each(['evil.example', 'localhost', '127.0.0.1'])(
    'a request that names another host is refused: %s',
    async (host) => {
      const { status, text } = await ask('/file?path=/door.paneljob', {
        headers: { host: `${host}:${server.port + 1}` },
      });
      expect({ status, text }).toEqual({ status: 403, text: '{"code":"ForeignHost"}' });
    },
  );

  test('a change on disk is told to the workbench that waits for one', async () => {
    const first = JSON.parse((await ask('/changes')).text) as { next: number };
    const waiting = ask(`/changes?after=${first.next}`);
    await writeFile(join(place, 'jobs/door.paneljob'), 'format = 1\n# by hand\n');
    const { changes } = JSON.parse((await waiting).text) as { changes: { path: string }[] };
    expect(changes.map((change) => change.path)).toContain('/door.paneljob');
  });
});
