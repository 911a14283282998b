import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const repository = fileURLToPath(new URL('../../', import.meta.url));

/** Made by programs, so not of the sources. */
const made = new Set(['node_modules', 'dist', 'coverage', '.git', '.cache', '.vscode-test']);

/** Every file of a folder of the repository, as paths with `/` from the root. */
export function filesBelow(folder: string): readonly string[] {
  return readdirSync(`${repository}/${folder}`, { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (made.has(entry.name)) return [];
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

export function sourceText(path: string): string {
  return readFileSync(`${repository}/${path}`, 'utf8');
}
