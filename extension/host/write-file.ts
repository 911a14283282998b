import * as vscode from 'vscode';

/** A file that a person may keep. */
export interface Offered {
  /** The place that is suggested. */
  readonly place: vscode.Uri;
  readonly title: string;
  /** Kinds of file, by what the dialog calls them. */
  readonly filters: NonNullable<vscode.SaveDialogOptions['filters']>;
  /** Made only where it is kept. */
  readonly bytes: () => Uint8Array;
  /** What it is called when it has been written: `Workbook`. */
  readonly name: string;
}

/** Asks where a file is to be kept, writes it there and says so. */
export async function writeFile({ place, title, filters, bytes, name }: Offered): Promise<void> {
  const uri = await vscode.window.showSaveDialog({ defaultUri: place, filters, title });
  if (uri === undefined) return;
  await vscode.workspace.fs.writeFile(uri, bytes());
  await vscode.window.showInformationMessage(`${name} written to ${uri.path}.`);
}

/** A file beside a job, named after it: `front-quote.pdf` beside `front.paneljob`. */
export function besideJob(job: vscode.Uri, ending: string): vscode.Uri {
  return job.with({ path: job.path.replace(/\.paneljob$/, '') + ending });
}
