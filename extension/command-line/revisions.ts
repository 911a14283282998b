import { basename, dirname } from 'node:path';
import { unreadable } from './endings.ts';
import type { FileCommit } from '../engine/index.ts';
import { readJob, type ReadJob } from './job.ts';
import type { World } from './world.ts';

/** A version of a job that a person named, or a sentence that says why there is none. */
export type Version =
  | {
      readonly ok: true;
      readonly name: string;
      readonly job: ReadJob;
      /** Text of its shop book; empty where it names none. */
      readonly book: string;
    }
  | { readonly ok: false; readonly fault: string };

interface Named {
  readonly revision: string;
  readonly file: string;
}

/** The two halves of `REV:FILE`; undefined for anything else. A lone letter before the colon is a drive. */
function revisionIn(name: string): Named | undefined {
  const at = name.indexOf(':');
  if (at < 2 && !/^@:/.test(name)) return undefined;
  return { revision: name.slice(0, at), file: name.slice(at + 1) };
}

function shown(world: World, { revision, file }: Named): string | undefined {
  const place = `${revision}:./${basename(file)}`;
  const { status, out } = world.git(['show', place], dirname(file));
  return status === 0 ? out : undefined;
}

/** The files of a revision; one that git does not keep is read as it is now. */
export function worldAt(revision: string, world: World): World {
  return {
    ...world,
    read: (file) => shown(world, { revision, file }) ?? world.read(file),
  };
}

/** Why a revision of a file cannot be read; undefined where it can. */
function revisionFault(named: Named, world: World): string | undefined {
  const { revision, file } = named;
  if (revision.startsWith('-')) return `${revision} is not a revision.`;
  if (world.git(['--version']).status !== 0)
    return `git cannot be run here, so ${revision}:${file} cannot be read. Give two files instead.`;
  const folder = dirname(file);
  if (world.git(['rev-parse', '--git-dir'], folder).status !== 0)
    return `${folder === '.' ? 'This folder' : folder} is in no git repository, so there is no ${revision} of ${file}.`;
  const known = ['rev-parse', '--verify', '--quiet', `${revision}^{commit}`];
  if (world.git(known, folder).status !== 0)
    return `The repository of ${file} has no revision ${revision}.`;
  return shown(world, named) === undefined ? `${revision} has no file ${file}.` : undefined;
}

function version(name: string, file: string, world: World): Version {
  const job = readJob(file, world);
  if (job === undefined) return { ok: false, fault: unreadable(name) };
  const path = job.snapshot.reading.head.get('book')?.text ?? '';
  const book = path === '' ? '' : (world.read(world.beside(file, path)) ?? '');
  return { ok: true, name, job, book };
}

/** Reads a file as it was in a revision, with the shop book of that revision. */
export function readRevision(named: Named, world: World): Version {
  const fault = revisionFault(named, world);
  if (fault !== undefined) return { ok: false, fault };
  return version(`${named.revision}:${named.file}`, named.file, worldAt(named.revision, world));
}

/** Reads what a person named: a file, or `REV:FILE`. */
export function readVersion(name: string, world: World): Version {
  const named = world.read(name) === undefined ? revisionIn(name) : undefined;
  return named === undefined ? version(name, name, world) : readRevision(named, world);
}

/** The commit that a file was last changed in, and whether it was changed since; undefined where git keeps it not. */
export function commitOf(file: string, world: World): FileCommit | undefined {
  const ask = (...args: readonly string[]): string | undefined => {
    const { status, out } = world.git([...args, '--', basename(file)], dirname(file));
    return status === 0 ? out.trim() : undefined;
  };
  const hash = ask('log', '-1', '--format=%H') ?? '';
  if (hash === '') return undefined;
  return { hash, changed: ask('status', '--porcelain') !== '' };
}
