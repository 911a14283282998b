import { drawingDxf, drawingPdf, drawingSvg, jobPatterns, type Pattern } from '../engine/index.ts';
import type { Request } from './arguments.ts';
import { unwritable } from './endings.ts';
import type { ReadJob } from './job.ts';
import type { World } from './world.ts';

/** Files written, or a sentence why there are none. */
export type WrittenPatterns =
  | { readonly ok: true; readonly files: readonly string[] }
  | { readonly ok: false; readonly fault: string };

function chosen(
  patterns: readonly Pattern[],
  part: string | undefined,
): readonly Pattern[] | string {
  if (patterns.length === 0) return 'This job has nothing that is cut to a form.';
  if (part === undefined) return patterns;
  const found = patterns.filter((pattern) => pattern.part === part);
  if (found.length > 0) return found;
  const parts = [...new Set(patterns.map((pattern) => pattern.part))].join(', ');
  return `There is no pattern of ${part}. There are patterns of: ${parts}.`;
}

/** Writes the patterns of a job: each as SVG, DXF and PDF. */
export function writePatterns(
  job: ReadJob,
  { out, paper, part }: Extract<Request, { command: 'patterns' }>,
  world: World,
): WrittenPatterns {
  const { workbook, book, settings } = job.snapshot;
  const patterns = chosen(jobPatterns({ answers: workbook, book, settings }), part);
  if (typeof patterns === 'string') return { ok: false, fault: patterns };
  const sheets = paper ?? (settings.units === 'in' ? 'letter' : 'a4');
  const files: string[] = [];
  for (const { drawing } of patterns) {
    const contents = [
      [`${drawing.id}.svg`, drawingSvg(drawing)],
      [`${drawing.id}.dxf`, drawingDxf(drawing)],
      [`${drawing.id}-${sheets}.pdf`, drawingPdf(drawing, sheets)],
    ] as const;
    for (const [name, content] of contents) {
      const file = world.within(out, name);
      if (!world.write(file, content)) return { ok: false, fault: unwritable(file) };
      files.push(file);
    }
  }
  return { ok: true, files };
}
