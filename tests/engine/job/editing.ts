import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { sample } from './arbitrary-files.ts';

export const ring = { table: 'part', id: 'mid_ring' };

export function edited(text: string, ...edits: Edit[]): string {
  const result = applyEdits(readFile(text), edits);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value.reading.text;
}

export function refusal(text: string, ...edits: Edit[]): string {
  const result = applyEdits(readFile(text), edits);
  return result.ok ? 'made' : result.problem.code;
}

export function set(column: string, text: string | undefined, row = ring): Edit {
  return { kind: 'set-cell', row, column, text };
}

/** Lines that differ, as a diff shows them; enough where lines are not exchanged. */
export function difference(before: string, after: string): readonly string[] {
  const left = before.split('\n');
  const right = after.split('\n');
  let start = 0;
  while (start < left.length && left[start] === right[start]) start++;
  let end = 0;
  while (
    end < Math.min(left.length, right.length) - start &&
    left.at(-1 - end) === right.at(-1 - end)
  ) {
    end++;
  }
  return [
    ...left.slice(start, left.length - end).map((line) => `-${line}`),
    ...right.slice(start, right.length - end).map((line) => `+${line}`),
  ];
}

export function change(edit: Edit): readonly string[] {
  return difference(sample, edited(sample, edit));
}

export function order(text: string, table = 'part'): readonly string[] {
  return (
    readFile(text)
      .tables.get(table)
      ?.map((row) => `${row.id} ${String(row.order)}`) ?? []
  );
}

/** Parts of these ids and orders, written as the grid writes them. */
export function parts(...rows: readonly string[]): string {
  const blocks = rows.map((row) => {
    const [id = '', number] = row.split(' ');
    return `[[part]]\nid = "${id}"\n${number === undefined ? '' : `\norder = ${number}\n`}`;
  });
  return `format = 1\n\n[job]\nunits = "in"\n\n${blocks.join('\n')}`;
}
