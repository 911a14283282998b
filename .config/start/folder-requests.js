import { mkdir, readdir, readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, sep } from 'node:path';

/** A request that is not granted, told to the workbench by its code. */
export class Refusal extends Error {
  /**
   * @param {number} status
   * @param {string} code
   */
  constructor(status, code) {
    super(code);
    this.status = status;
    this.code = code;
  }
}

/** What the operating system says, in the words of VS Code's file systems. */
const codes = /** @type {Record<string, string>} */ ({
  ENOENT: 'FileNotFound',
  EEXIST: 'FileExists',
  ENOTEMPTY: 'FileExists',
  ENOTDIR: 'FileNotADirectory',
  EISDIR: 'FileIsADirectory',
  EACCES: 'NoPermissions',
  EPERM: 'NoPermissions',
});

/** @param {unknown} fault */
function refusalOf(fault) {
  if (fault instanceof Refusal) return fault;
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
  const word = codes[code];
  return word === undefined ? new Refusal(500, 'Unavailable') : new Refusal(404, word);
}

/** @param {string} path */
async function realOrNothing(path) {
  try {
    return await realpath(path);
  } catch (fault) {
    if (fault instanceof Error && 'code' in fault && fault.code === 'ENOENT') return undefined;
    throw fault;
  }
}

/**
 * The file that a path of the workbench means. Links are followed first, so neither `..` nor a link
 * leads out of the folder.
 *
 * @param {string} root real path of the folder
 * @param {string | null} path begins with `/`
 */
async function inside(root, path) {
  if (path === null || !path.startsWith('/') || path.includes('\0') || path.includes('\\')) {
    throw new Refusal(400, 'NoPermissions');
  }
  const wanted = join(root, path);
  let known = wanted;
  let real = await realOrNothing(known);
  while (real === undefined && known.length > root.length) {
    known = dirname(known);
    real = await realOrNothing(known);
  }
  const place = real === undefined ? wanted : real + wanted.slice(known.length);
  if (place !== root && !place.startsWith(root + sep)) throw new Refusal(403, 'NoPermissions');
  return place;
}

/** @param {string} place */
async function statOf(place) {
  const found = await stat(place);
  return JSON.stringify({
    folder: found.isDirectory(),
    ctime: Math.floor(found.birthtimeMs),
    mtime: Math.floor(found.mtimeMs),
    size: found.size,
    writable: (found.mode & 0o200) !== 0,
  });
}

/** @param {string} place */
async function listOf(place) {
  const entries = await readdir(place, { withFileTypes: true });
  const listed = await Promise.all(
    entries.map(async (entry) => {
      if (!entry.isSymbolicLink()) return { name: entry.name, folder: entry.isDirectory() };
      const target = await stat(join(place, entry.name)).catch(() => undefined);
      return { name: entry.name, folder: target?.isDirectory() ?? false };
    }),
  );
  return JSON.stringify(listed);
}

/** @param {string} place */
async function exists(place) {
  return (await realOrNothing(place)) !== undefined;
}

/**
 * @param {string} place
 * @param {URLSearchParams} options
 * @param {Buffer} body
 */
async function write(place, options, body) {
  const there = await exists(place);
  if (!there && options.get('create') !== 'true') throw new Refusal(404, 'FileNotFound');
  if (there && options.get('overwrite') !== 'true') throw new Refusal(404, 'FileExists');
  await writeFile(place, body);
  return '{}';
}

/**
 * @param {string} from
 * @param {string} to
 * @param {boolean} overwrite
 */
async function move(from, to, overwrite) {
  if (!overwrite && (await exists(to))) throw new Refusal(404, 'FileExists');
  await rename(from, to);
  return '{}';
}

/** @type {Record<string, (root: string, place: string, options: URLSearchParams, body: Buffer) => Promise<string | Buffer>>} */
const verbs = {
  'GET /stat': (_root, place) => statOf(place),
  'GET /list': (_root, place) => listOf(place),
  'GET /file': (_root, place) => readFile(place),
  'POST /file': (_root, place, options, body) => write(place, options, body),
  'POST /folder': async (_root, place) => {
    await mkdir(place);
    return '{}';
  },
  'POST /delete': async (root, place, options) => {
    if (place === root) throw new Refusal(403, 'NoPermissions');
    await rm(place, { recursive: options.get('recursive') === 'true' });
    return '{}';
  },
  'POST /rename': async (root, place, options) =>
    move(place, await inside(root, options.get('to')), options.get('overwrite') === 'true'),
};

/**
 * Does what one request asks for, inside `root` only.
 *
 * @param {string} root real path of the folder
 * @param {URL} url
 * @param {string} method
 * @param {Buffer} body
 */
export async function answers(root, url, method, body) {
  try {
    const verb = verbs[`${method} ${url.pathname}`];
    if (verb === undefined) throw new Refusal(404, 'NoSuchRequest');
    const place = await inside(root, url.searchParams.get('path'));
    return await verb(root, place, url.searchParams, body);
  } catch (fault) {
    throw refusalOf(fault);
  }
}
