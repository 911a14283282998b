import type { Book, Kind, Kit } from '../../extension/engine/book/book.ts';
import { readBook } from '../../extension/engine/book/read-book.ts';
import { readFile } from '../../extension/engine/job/read-file.ts';

/** The book of a shop file (absent: the demo book) under a job's own rows, both as text without format. */
export function bookOf(file?: string, job = ''): Book {
  return readBook({
    job: readFile(`format = 1\n\n${job}`).tables,
    ...(file === undefined ? {} : { file: readFile(`format = 1\n\n${file}`) }),
    currency: 'USD',
  });
}

export function kindOf(book: Book, id: string): Kind {
  const kind = book.kinds.get(id);
  if (kind === undefined) throw new Error(`There is no kind ${id}`);
  return kind;
}

export function kitOf(book: Book, id: string): Kit {
  const kit = book.kits.find((one) => one.id === id);
  if (kit === undefined) throw new Error(`There is no kit ${id}`);
  return kit;
}
