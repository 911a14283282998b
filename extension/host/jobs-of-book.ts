import type * as vscode from 'vscode';
import { openSession, readFile, type FileReading, type Snapshot } from '../engine/index.ts';
import { readTextBeside } from './book-files.ts';
import { readFilesBeside } from './files-beside.ts';
import { filesEnding } from './find-files.ts';

/** A job that stands on a shop book, and what it comes to with the book's text as it is given. */
export interface JobOfBook {
  readonly uri: vscode.Uri;
  readonly reading: FileReading;
  readonly with: (book: string | undefined) => Snapshot;
  /** The book's text as the job finds it. */
  readonly book: string | undefined;
}

async function jobOn(uri: vscode.Uri, book: vscode.Uri): Promise<JobOfBook | undefined> {
  const text = await readTextBeside(uri);
  if (text === undefined) return undefined;
  const reading = readFile(text);
  const { book: named, outlines } = await readFilesBeside(uri, reading);
  if (named.uri?.toString() !== book.toString()) return undefined;
  return {
    uri,
    reading,
    with: (bookText) => openSession(reading, bookText, outlines).snapshot(),
    book: named.text,
  };
}

/** The jobs of the workspace that stand on a shop book, one after another: each takes a while. */
export async function* jobsOfBook(book: vscode.Uri): AsyncGenerator<JobOfBook> {
  for (const uri of await filesEnding('.paneljob')) {
    const job = await jobOn(uri, book);
    if (job !== undefined) yield job;
  }
}
