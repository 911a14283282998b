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
  const words = `${out}: ${sentence} A job beside it writes path("${name}.svg#${id}") in its shape cell.`;
  return { ok: true, svg, words };
}
