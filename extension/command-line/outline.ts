import { traceOutline } from '../engine/index.ts';
import type { Request } from './arguments.ts';

/** An outline as a file with what is said of it, or a sentence why there is none. */
export type TracedFile =
  | { readonly ok: true; readonly svg: string; readonly words: string }
  | { readonly ok: false; readonly fault: string };

/** Makes the outline that a list of points describes. */
export function tracedFile(
  list: string,
  { out, units, stations, smooth }: Extract<Request, { command: 'outline' }>,
): TracedFile {
  const name = out.replace(/^.*[/\\]/, '').replace(/\.svg$/i, '');
  const made = traceOutline(list, {
    mode: stations ? 'stations' : 'points',
    smooth,
    title: name,
    settings: { units, currency: 'USD' },
  });
  if (!made.ok) return { ok: false, fault: made.problem.message };
  const { svg, sentence, name: id } = made.value;
  // A file in the folder of the job or below it is named from there; from elsewhere it must be brought.
  const isBelow = !/^([/\\~]|[a-z]:)|(^|[/\\])\.\.([/\\]|$)/i.test(out);
  const job = isBelow ? 'A job in this folder' : 'A job beside it';
  const path = isBelow ? out.replaceAll('\\', '/').replace(/^\.\//, '') : `${name}.svg`;
  const words = `${out}: ${sentence} ${job} writes path("${path}#${id}") in its shape cell.`;
  return { ok: true, svg, words };
}
