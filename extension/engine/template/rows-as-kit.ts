import { takeId } from '../job/fresh-id.ts';
import type { Edit, SourceRow } from '../job/source.ts';
import { templateWord } from './save-template.ts';

/** What a person says of a group of rows that is to be inserted again. */
export interface GroupStart {
  readonly name: string;
  readonly help: string;
  /** Ids of kits, questions and kit rows that there are already. */
  readonly taken: ReadonlySet<string>;
}

/**
 * The edits that write rows as a kit into a book or a job. Inserted again, a row whose id is taken gets
 * another one, and what refers to it within the group follows; what refers to other rows stays.
 */
export function kitEdits(rows: readonly SourceRow[], start: GroupStart): readonly Edit[] {
  const taken = new Set(start.taken);
  const kit = takeId(templateWord(start.name), taken);
  const head: Edit = {
    kind: 'insert-row',
    table: 'kit',
    id: kit,
    cells: { name: start.name, ...(start.help === '' ? {} : { help: start.help }) },
  };
  const written = rows
    .filter(({ broken }) => !broken)
    .map(({ table, id, cells }, index): Edit => {
      const number = String(index + 1).padStart(2, '0');
      const sets = [...cells].map(([key, { text }]) => [`set.${key}`, text] as const);
      return {
        kind: 'insert-row',
        table: 'kit_row',
        id: takeId(`${kit}_${number}`, taken),
        cells: { kit, table, row: id, ...Object.fromEntries(sets) },
      };
    });
  return [head, ...written];
}
