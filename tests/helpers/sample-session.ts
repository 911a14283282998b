import { openSession, type Session, type Snapshot } from '../../extension/engine/index.ts';
import { sourceText } from './source-files.ts';

export const doorPair = sourceText('sample-jobs/front-door-pair.paneljob');
export const demoBook = sourceText('sample-jobs/books/demo-shop.panelbook');

/** The front-door pair of the sample jobs on its shop book. */
export function doorSession(text = doorPair): Session {
  return openSession(text, demoBook);
}

export function doorSnapshot(text = doorPair): Snapshot {
  return doorSession(text).snapshot();
}

/** The text with one place in it replaced; a place that is not there is a fault of the test. */
export function replaced(text: string, before: string, after: string): string {
  if (!text.includes(before)) throw new Error(`The text has no “${before}”`);
  return text.replace(before, () => after);
}
