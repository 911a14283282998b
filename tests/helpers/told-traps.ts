import { openSession } from '../../extension/engine/session/session.ts';
import { trapTexts } from '../../extension/engine/estimate/traps/trap-problems.ts';
import { demoBook, doorPair } from './sample-session.ts';

const codes = new Set(Object.keys(trapTexts));

export interface Told {
  readonly code: string;
  readonly severity: string;
  readonly at: string;
  readonly line: number;
  readonly message: string;
  readonly fixes: readonly string[];
}

/** Traps told of a job: code, place and sentence. */
export function told(text: string, book: string | undefined = demoBook): readonly Told[] {
  return openSession(text, book)
    .snapshot()
    .problems.filter(({ problem }) => codes.has(problem.code))
    .map(({ problem, place, line }) => ({
      code: problem.code,
      severity: problem.severity,
      at: `${place?.table ?? ''}/${place?.row ?? ''}.${place?.column ?? ''}`,
      line,
      message: problem.message,
      fixes: (problem.fixes ?? []).map((fix) => fix.text),
    }));
}

export function only(text: string, book?: string): Told {
  const [first, ...more] = told(text, book);
  if (first === undefined) throw new Error('No trap was told.');
  if (more.length > 0) throw new Error(`More than one: ${JSON.stringify([first, ...more])}`);
  return first;
}

/** The front pair with rows more. */
export function more(rows: string): string {
  return `${doorPair}\n${rows}`;
}

export function part(id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `[[part]]\nid = "${id}"\nname = "${id}"\n${lines.join('\n')}\n`;
}

export function row(table: string, id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `[[${table}]]\nid = "${id}"\n${lines.join('\n')}\n`;
}
