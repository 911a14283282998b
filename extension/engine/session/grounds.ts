import { openOutlineFiles, type OutlineTexts } from '../geometry/outline-files.ts';
import { readFile } from '../job/read-file.ts';
import type { DeskGrounds } from './desk.ts';
import { openHeavyMemory, type HeavyReplies } from './heavy-memory.ts';
import { openWants } from './wants.ts';

/** What a session was brought besides the job: its shop book and outline files. */
export interface SessionGrounds {
  readonly now: () => DeskGrounds;
  readonly setBook: (text: string | undefined) => void;
  /** Tells whether any text is another than before. */
  readonly setOutlines: (texts: OutlineTexts) => boolean;
  /** Takes answers to heavy questions; tells whether any is new. */
  readonly answered: (replies: HeavyReplies) => boolean;
}

function sameTexts(a: OutlineTexts, b: OutlineTexts): boolean {
  return a.size === b.size && [...a].every(([file, text]) => b.has(file) && b.get(file) === text);
}

export function openGrounds(
  bookText: string | undefined,
  outlineTexts: OutlineTexts,
): SessionGrounds {
  let bookFile = bookText === undefined ? undefined : readFile(bookText);
  let outlines = openOutlineFiles(outlineTexts);
  const wants = openWants();
  const heavy = openHeavyMemory();
  return {
    now: () => ({ bookFile, brought: { outlines: outlines.source, heavy }, wants }),
    answered: heavy.add,
    setBook: (text) => {
      bookFile = text === undefined ? undefined : readFile(text);
    },
    setOutlines: (texts) => {
      if (sameTexts(texts, outlines.texts)) return false;
      outlines = openOutlineFiles(texts, outlines);
      return true;
    },
  };
}
