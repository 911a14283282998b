import * as vscode from 'vscode';
import type { FromWebview } from '../protocol/messages.ts';
import { writeFile } from './write-file.ts';

type Wanted = FromWebview & { readonly type: 'save-picture' };

const formats = { svg: 'SVG picture', png: 'PNG picture' } as const;

/** Largest picture that is written, in characters of its message. */
const largest = 40_000_000;

function bytesOf({ format, content }: Wanted): Uint8Array {
  if (format === 'svg') return new TextEncoder().encode(content);
  return Uint8Array.from(atob(content), (letter) => letter.charCodeAt(0));
}

/** Asks where a picture is to be kept, beside the job unless told, and writes it. */
export async function savePicture(job: vscode.Uri, wanted: Wanted): Promise<void> {
  const { format } = wanted;
  if (!Object.hasOwn(formats, format)) return;
  if (wanted.content === '' || wanted.content.length > largest) {
    void vscode.window.showWarningMessage('This picture could not be written.');
    return;
  }
  const name = wanted.name.replace(/[^\w-]+/g, '-');
  const folder = vscode.Uri.joinPath(job, '..');
  await writeFile({
    place: vscode.Uri.joinPath(folder, `${name}.${format}`),
    title: 'Save Picture',
    filters: { [formats[format]]: [format] },
    bytes: () => bytesOf(wanted),
    name: 'Picture',
  });
}
