import { blocksOf, type Block } from '../workbench/harness/sample.ts';

/** Tables of a job in the order of its file. */
const tables = ['panel', 'driver', 'measure', 'part', 'task', 'check', 'charge'];

/** Columns that hold another row's id. */
const links = /^(on|panel|driver) = "(\w+)"$/gm;

/** A cell that is a formula. */
const formulas = /^\w+ = "=.*"$/gm;

/** A row's id at the head of a path, or as a measure of the job. */
const paths = /(?<![\w.])(job\.)?(\w+)(?=\.)|(?<=job\.)(\w+)/g;

function renamed(block: Block, ids: ReadonlySet<string>, suffix: string): Block {
  const other = (id: string): string => (ids.has(id) ? id + suffix : id);
  const text = block.text
    .replace(/^id = "(\w+)"$/m, (_, id: string) => `id = "${other(id)}"`)
    .replace(links, (_, column: string, id: string) => `${column} = "${other(id)}"`)
    .replace(formulas, (line) => line.replace(paths, (word) => other(word)));
  return { ...block, id: block.id + suffix, text: `${text.trimEnd()}\n` };
}

/** At least this many rows: those of a sample job again and again, each time with ids of their own. */
export function largeJob(sample: string, leastRows: number): string {
  const rows = tables.map((table) => blocksOf(sample, table));
  const ids = new Set(rows.flat().map(({ id }) => id));
  const charges = rows[tables.indexOf('charge')]?.length ?? 0;
  const copies = Math.max(1, Math.ceil((leastRows - charges) / (ids.size - charges)));
  const suffixes = Array.from({ length: copies }, (_, index) =>
    index === 0 ? '' : `_${String(index + 1).padStart(2, '0')}`,
  );
  const parts = rows.flatMap((table, at) =>
    // A job is charged once, however many panels it has.
    (tables[at] === 'charge' ? [''] : suffixes)
      .flatMap((suffix) => table.map((block) => renamed(block, ids, suffix)))
      .sort((one, other) => (one.id < other.id ? -1 : 1))
      .map(({ text }) => text),
  );
  return [`${sample.slice(0, sample.indexOf('\n[[')).trimEnd()}\n`, ...parts].join('\n');
}

/** Number of rows in a job's text. */
export function rowCount(job: string): number {
  return job.match(/^\[\[/gm)?.length ?? 0;
}
