import * as vscode from 'vscode';
import {
  cutDrawings,
  drawingDxf,
  drawingPdf,
  drawingSvg,
  jobPatterns,
  rowName,
  type Pattern,
} from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';

type Drawn = Pick<Pattern, 'drawing'>;

interface Format extends vscode.QuickPickItem {
  /** What follows the pattern's id in the name of its file. */
  readonly ending: string;
  readonly write: (drawing: Pattern['drawing']) => Uint8Array;
}

function asText(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** What patterns may be written as; those usual where the job's units are come ticked. */
function formats(units: 'in' | 'mm'): readonly Format[] {
  return [
    {
      label: 'SVG',
      description: 'For drawing programs and laser cutters',
      ending: '.svg',
      picked: true,
      write: (drawing) => asText(drawingSvg(drawing)),
    },
    {
      label: 'DXF',
      description: 'For CAD and routers',
      ending: '.dxf',
      picked: true,
      write: (drawing) => asText(drawingDxf(drawing)),
    },
    {
      label: 'PDF on Letter',
      description: 'Full size in tiles, to print and join',
      ending: '-letter.pdf',
      picked: units === 'in',
      write: (drawing) => drawingPdf(drawing, 'letter'),
    },
    {
      label: 'PDF on A4',
      description: 'Full size in tiles, to print and join',
      ending: '-a4.pdf',
      picked: units === 'mm',
      write: (drawing) => drawingPdf(drawing, 'a4'),
    },
  ];
}

async function chosenPatterns(
  what: string,
  patterns: readonly Drawn[],
): Promise<readonly Drawn[] | undefined> {
  const items = patterns.map((pattern) => ({
    label: pattern.drawing.title,
    description: pattern.drawing.id,
    picked: true,
    pattern,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: `${what}: which`,
    canPickMany: true,
    matchOnDescription: true,
  });
  return picked?.map((item) => item.pattern);
}

/** Asks which cut layouts, as what and where, and writes them at full size. */
export async function exportCuts(desk: JobDesk): Promise<void> {
  const { bill, settings, workbook } = desk.snapshot();
  const name = rowName(workbook);
  const drawings = bill.lines.flatMap((line) => cutDrawings({ line, settings, name, cuts: true }));
  if (drawings.length === 0) {
    await vscode.window.showInformationMessage('This job cuts nothing from whole stock yet.');
    return;
  }
  const all = drawings.map((drawing) => ({ drawing }));
  await exportDrawings(desk, 'Export Cut Layouts', all);
}

/** Asks for patterns, formats and a folder, and writes them there at full size. */
export async function exportPatterns(desk: JobDesk): Promise<void> {
  const { workbook, book, settings } = desk.snapshot();
  const all = jobPatterns({ answers: workbook, book, settings });
  if (all.length === 0) {
    await vscode.window.showInformationMessage(
      'This job has nothing that is cut to a form: give a base its outline first.',
    );
    return;
  }
  await exportDrawings(desk, 'Export Patterns', all);
}

async function exportDrawings(desk: JobDesk, what: string, all: readonly Drawn[]): Promise<void> {
  const { settings } = desk.snapshot();
  const patterns = await chosenPatterns(what, all);
  if (patterns === undefined || patterns.length === 0) return;
  const kinds = await vscode.window.showQuickPick(formats(settings.units), {
    title: `${what}: as what`,
    canPickMany: true,
  });
  if (kinds === undefined || kinds.length === 0) return;
  const [folder] =
    (await vscode.window.showOpenDialog({
      title: `${what}: into which folder`,
      openLabel: 'Write Here',
      canSelectFiles: false,
      canSelectFolders: true,
      defaultUri: vscode.Uri.joinPath(desk.document.uri, '..'),
    })) ?? [];
  if (folder === undefined) return;
  for (const { drawing } of patterns) {
    for (const { ending, write } of kinds) {
      const uri = vscode.Uri.joinPath(folder, `${drawing.id}${ending}`);
      await vscode.workspace.fs.writeFile(uri, write(drawing));
    }
  }
  const count = patterns.length * kinds.length;
  await vscode.window.showInformationMessage(
    `${String(count)} ${count === 1 ? 'file' : 'files'} written to ${folder.path}. Print PDFs at 100 %, and measure their check lines first.`,
  );
}
