import {
  cutDrawings,
  drawingDxf,
  drawingPdf,
  drawingSvg,
  layOut,
  lengthText,
  readInstance,
  rowName,
  type BillLine,
  type CutAnswer,
} from '../engine/index.ts';
import { unwritable } from './endings.ts';
import type { ReadJob } from './job.ts';
import { steady } from './steady.ts';
import type { World } from './world.ts';

function laidLines(job: ReadJob): readonly BillLine[] {
  return job.snapshot.bill.lines.filter(({ laid }) => laid !== undefined);
}

/** What a job cuts from whole stock, in words: stock, parts and how they lie. */
export function cutPlanReport(job: ReadJob): string {
  const { settings, workbook } = job.snapshot;
  const lines = laidLines(job).flatMap((line) => {
    const steps = line.steps.map(({ text }) => `  ${text}`);
    const drawings = cutDrawings({ line, settings, name: rowName(workbook), cuts: true });
    const sheets = drawings.flatMap(({ title, words }) => [
      `  ${title}`,
      ...words.map((one) => `    ${one}`),
    ]);
    return [line.name, ...steps, ...sheets, ''];
  });
  return lines.length === 0 ? 'This job cuts nothing from whole stock.\n' : lines.join('\n');
}

/** Writes the cut layouts of a job, each as SVG, DXF and PDF. */
export function writeCutPlan(
  job: ReadJob,
  out: string,
  world: World,
):
  | { readonly ok: true; readonly files: readonly string[] }
  | { readonly ok: false; readonly fault: string } {
  const { settings, workbook } = job.snapshot;
  const name = rowName(workbook);
  const contents = laidLines(job)
    .flatMap((line) => cutDrawings({ line, settings, name, cuts: true }))
    .flatMap((drawing) => [
      [`${drawing.id}.svg`, drawingSvg(drawing)] as const,
      [`${drawing.id}.dxf`, drawingDxf(drawing)] as const,
      [
        `${drawing.id}.pdf`,
        drawingPdf(drawing, settings.units === 'in' ? 'letter' : 'a4'),
      ] as const,
    ]);
  const files: string[] = [];
  for (const [file, content] of contents) {
    const path = world.within(out, file);
    if (!world.write(path, content)) return { ok: false, fault: unwritable(path) };
    files.push(path);
  }
  return { ok: true, files };
}

/** Lays out a bare instance: its text in, the answer or a sentence out. */
export function layoutAnswer(
  text: string,
):
  | { readonly ok: true; readonly answer: CutAnswer }
  | { readonly ok: false; readonly fault: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (fault) {
    const words = fault instanceof Error ? fault.message : '';
    return { ok: false, fault: `The instance is not JSON: ${words}` };
  }
  const instance = readInstance(json);
  if (!instance.ok) return { ok: false, fault: instance.problem.message };
  return { ok: true, answer: layOut(instance.value) };
}

/** The answer with steady numbers, so that two runs compare byte by byte. */
export function layoutJson(answer: CutAnswer): object {
  return JSON.parse(
    JSON.stringify(answer, (_, value: unknown) =>
      typeof value === 'number' ? steady(value) : value,
    ),
  ) as object;
}

/** The answer in a few lines. */
export function layoutReport(answer: CutAnswer): string {
  const least = answer.proven ? 'nothing can be cheaper' : `at least ${String(answer.bound)}`;
  const length =
    answer.length === undefined
      ? ''
      : `, ${lengthText(answer.length, { units: 'mm', currency: 'USD' })} of roll`;
  const first = `${String(answer.count)} (${least})${length}, price ${String(steady(answer.price))}, ${String(Math.round(answer.utilisation * 1000) / 10)} % used`;
  const placed = answer.placements.map(
    ({ part, index, x, y, length: along, width, rotation }) =>
      `${part}: sheet ${String(index + 1)} at ${String(steady(x))}, ${String(steady(y))}, ${String(along)} × ${String(width)}, turned ${String(rotation)}°`,
  );
  const patterns = answer.patterns.map(
    ({ stock, times, pieces, left }) =>
      `${String(times)} × ${stock}${pieces.length === 0 ? '' : `: ${pieces.map(({ part, count }) => `${String(count)} × ${part}`).join(', ')}; ${String(steady(left))} left`}`,
  );
  const missing = answer.unplaced.map(
    ({ part, count }) => `${String(count)} × ${part} found no place`,
  );
  return `${[first, ...placed, ...patterns, ...missing].join('\n')}\n`;
}
