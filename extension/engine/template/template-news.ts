import { namedRowTables } from '../job/columns.ts';
import type { Edit, FileReading, SourceRow } from '../job/source.ts';

/** A row that a template has and a job made from it has not. */
export interface TemplateRow {
  readonly table: string;
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly cells: Readonly<Record<string, string>>;
}

/** What a template holds beyond a job that was made from it. */
export interface TemplateNews {
  /** Versions as they are counted; 0 where one does not say. */
  readonly was: number;
  readonly now: number;
  /** In the order of the template. Rows that were taken out of the job on purpose are among them. */
  readonly rows: readonly TemplateRow[];
}

const otherTables: readonly string[] = ['material', 'pack', 'supplier', 'constant', 'column'];

function versionOf(reading: FileReading): number {
  const version = Number(reading.head.get('template_version')?.text ?? '0');
  return Number.isFinite(version) ? version : 0;
}

function templateRow(row: SourceRow): TemplateRow {
  const cells = Object.fromEntries([...row.cells].map(([key, { text }]) => [key, text]));
  const { table, id } = row;
  return { table, id, name: cells['name'] ?? id, kind: cells['kind'] ?? '', cells };
}

/** What a template has that a job has not, by table and id. */
export function templateNews(job: FileReading, template: FileReading): TemplateNews {
  const rows = [...namedRowTables, ...otherTables].flatMap((table) => {
    const own = new Set((job.tables.get(table) ?? []).map(({ id }) => id));
    return (template.tables.get(table) ?? []).filter(({ id, broken }) => !broken && !own.has(id));
  });
  return { was: versionOf(job), now: versionOf(template), rows: rows.map(templateRow) };
}

/**
 * The edits that take rows of a template into a job, and let it remember the template's version. An
 * id that another row of the job has by now is refused when the edits are worked out on the file.
 */
export function takeEdits(news: TemplateNews, taken: readonly TemplateRow[]): readonly Edit[] {
  const rows = taken.map(({ table, id, cells }): Edit => ({
    kind: 'insert-row',
    table,
    id,
    cells,
  }));
  if (news.now === news.was) return rows;
  return [...rows, { kind: 'set-head', key: 'template_version', text: String(news.now) }];
}
