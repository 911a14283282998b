import { randomBytes, timingSafeEqual } from 'node:crypto';
import { watch } from 'node:fs';
import { createServer } from 'node:http';
import { once } from 'node:events';
import { realpath } from 'node:fs/promises';
import { answers, Refusal } from './folder-requests.js';

const longestBody = 64 * 1024 * 1024;
const longestWaitMs = 25_000;

/** @typedef {{ kind: 'created' | 'changed' | 'deleted', path: string }} FolderChange */

/**
 * Collects what happens in the folder, so that a workbench can ask "what changed after number n".
 *
 * @param {string} folder
 */
function watchFolder(folder) {
  /** @type {{ kind: string, path: string }[]} */
  const seen = [];
  /** @type {Set<() => void>} */
  const waiting = new Set();
  const watcher = watch(folder, { recursive: true }, (event, name) => {
    if (name === null) return;
    seen.push({ kind: event, path: `/${name.split('\\').join('/')}` });
    for (const wake of [...waiting]) wake();
  });
  watcher.on('error', () => undefined);

  /** @param {string | null} number what the last answer said; none means from now on */
  async function changesAfter(number) {
    const after = number === null ? seen.length : Number(number);
    if (number !== null && seen.length <= after) {
      await new Promise((resolve) => {
        const wake = () => {
          clearTimeout(timer);
          waiting.delete(wake);
          resolve(undefined);
        };
        const timer = setTimeout(wake, longestWaitMs);
        waiting.add(wake);
      });
    }
    return { next: seen.length, changes: seen.slice(after) };
  }

  function close() {
    watcher.close();
    for (const wake of [...waiting]) wake();
  }
  return { changesAfter, close };
}

/** @param {import('node:http').IncomingMessage} request */
async function bodyOf(request) {
  /** @type {Buffer[]} */
  const parts = [];
  let size = 0;
  for await (const part of request) {
    size += part.length;
    if (size > longestBody) throw new Refusal(413, 'TooLarge');
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/**
 * @param {string | string[] | undefined} given
 * @param {string} token
 */
function sameToken(given, token) {
  const offered = Buffer.from(typeof given === 'string' ? given : '');
  const wanted = Buffer.from(token);
  return offered.length === wanted.length && timingSafeEqual(offered, wanted);
}

/**
 * Refuses whoever is not the workbench, and lets its page read the answer.
 *
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {{ host: string, isWorkbench: (origin: string) => boolean }} expected
 */
function greet(request, response, { host, isWorkbench }) {
  const origin = request.headers.origin ?? '';
  if (request.headers.host !== host) throw new Refusal(403, 'ForeignHost');
  if (!isWorkbench(origin)) throw new Refusal(403, 'ForeignOrigin');
  response.setHeader('access-control-allow-origin', origin);
  response.setHeader('vary', 'origin');
  response.setHeader('access-control-allow-methods', 'GET, POST');
  response.setHeader('access-control-allow-headers', 'x-folder-token');
  response.setHeader('access-control-allow-private-network', 'true');
  response.setHeader('access-control-max-age', '600');
}

/**
 * Serves one folder to the workbench page and to nobody else: it listens on the loopback address only,
 * answers only requests that name that address as their host (a page that had its own name pointed
 * here is refused), come from the workbench's origin and carry the token.
 *
 * @param {{ folder: string, isWorkbench: (origin: string) => boolean }} options
 */
export async function serveFolder({ folder, isWorkbench }) {
  const root = await realpath(folder);
  const token = randomBytes(24).toString('hex');
  const changes = watchFolder(root);
  let port = 0;

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async function answer(request, response) {
    greet(request, response, { host: `127.0.0.1:${port}`, isWorkbench });
    if (request.method === 'OPTIONS') return Buffer.alloc(0);
    if (!sameToken(request.headers['x-folder-token'], token)) throw new Refusal(401, 'NoToken');
    const url = new URL(request.url ?? '/', 'http://127.0.0.1');
    if (url.pathname === '/changes') {
      return JSON.stringify(await changes.changesAfter(url.searchParams.get('after')));
    }
    const body = request.method === 'POST' ? await bodyOf(request) : Buffer.alloc(0);
    return answers(root, url, request.method ?? '', body);
  }

  const server = createServer((request, response) => {
    answer(request, response).then(
      (content) => {
        response.statusCode = 200;
        response.setHeader('cache-control', 'no-store');
        response.end(content);
      },
      (/** @type {unknown} */ fault) => {
        const refusal = fault instanceof Refusal ? fault : new Refusal(500, 'Unavailable');
        response.statusCode = refusal.status;
        response.end(JSON.stringify({ code: refusal.code }));
      },
    );
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('The folder has no port.');
  port = address.port;

  return {
    port,
    token,
    async close() {
      changes.close();
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}
