import * as vscode from 'vscode';
import { wantedOutlines, type FileReading, type Snapshot } from '../engine/index.ts';
import { readBookText, readTextBeside, type BookText } from './book-files.ts';

/** Texts of outline files by their path beside the job; undefined for one that cannot be read. */
type OutlineTexts = ReadonlyMap<string, string | undefined>;

/** What a job that follows its files offers them. */
interface FilesBesideGround {
  readonly job: vscode.Uri;
  readonly log: vscode.LogOutputChannel;
  readonly snapshot: () => Snapshot;
  readonly setBook: (text: string | undefined) => void;
  readonly setOutlines: (texts: OutlineTexts) => void;
}

/** Address of an outline file that a job names. */
function outlineUri(job: vscode.Uri, path: string): vscode.Uri {
  return vscode.Uri.joinPath(job, '..', path);
}

async function readOutlines(job: vscode.Uri, wants: readonly string[]): Promise<OutlineTexts> {
  const read = wants.map(
    async (path) => [path, await readTextBeside(outlineUri(job, path))] as const,
  );
  return new Map(await Promise.all(read));
}

/** The shop book and the outline files that a reading names, for a job about to be opened. */
export async function readFilesBeside(
  job: vscode.Uri,
  reading: FileReading,
): Promise<{ readonly book: BookText; readonly outlines: OutlineTexts }> {
  const [book, outlines] = await Promise.all([
    readBookText(job, reading.head.get('book')?.text),
    readOutlines(job, wantedOutlines(reading)),
  ]);
  return { book, outlines };
}

/** Keeps a job up with the files it names: its shop book and its outlines. */
export class FilesBeside {
  readonly #ground: FilesBesideGround;
  #bookUri: vscode.Uri | undefined;
  #disposed = false;

  constructor(ground: FilesBesideGround, bookUri: vscode.Uri | undefined) {
    this.#ground = ground;
    this.#bookUri = bookUri;
  }

  /** A file was saved or changed on disk: it is read again if the job names it. */
  async changed(uri: vscode.Uri): Promise<void> {
    const { job, snapshot } = this.#ground;
    const isChanged = (other: vscode.Uri | undefined): boolean =>
      uri.toString() === other?.toString();
    if (isChanged(this.#bookUri)) await this.loadBook();
    if (snapshot().wants.some((path) => isChanged(outlineUri(job, path)))) {
      await this.loadOutlines();
    }
  }

  /** Brings what the job names now and did not name before. */
  follow(before: Snapshot): void {
    const now = this.#ground.snapshot();
    if (bookPath(now) !== bookPath(before)) void this.loadBook();
    if (now.wants !== before.wants) void this.loadOutlines();
  }

  async loadBook(): Promise<void> {
    const { job, log, snapshot, setBook } = this.#ground;
    const path = bookPath(snapshot());
    try {
      const book = await readBookText(job, path);
      // The job may name another book by now, which is on its way.
      if (this.#disposed || path !== bookPath(snapshot())) return;
      this.#bookUri = book.uri;
      setBook(book.text);
    } catch (error) {
      log.error(`shop book ${path ?? ''}: ${String(error)}`);
    }
  }

  async loadOutlines(): Promise<void> {
    const { job, log, snapshot, setOutlines } = this.#ground;
    const { wants } = snapshot();
    try {
      const texts = await readOutlines(job, wants);
      if (this.#disposed || wants !== snapshot().wants) return;
      setOutlines(texts);
    } catch (error) {
      log.error(`outline files ${wants.join(', ')}: ${String(error)}`);
    }
  }

  dispose(): void {
    this.#disposed = true;
  }
}

function bookPath(snapshot: Snapshot): string | undefined {
  return snapshot.shown.head.get('book')?.text;
}
