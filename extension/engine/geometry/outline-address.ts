/** Where an outline is: a file beside the job, and a name in it. */
export interface OutlineAddress {
  readonly file: string;
  /** An id or a layer; undefined for the only outline of the file. */
  readonly name: string | undefined;
}

/**
 * The address that a text spells; undefined where it names no file in the folder of the job or below:
 * nothing absolute, no `..`, no other machine.
 */
export function outlineAddress(text: string): OutlineAddress | undefined {
  const at = text.indexOf('#');
  const file = (at < 0 ? text : text.slice(0, at)).trim();
  const name = at < 0 ? '' : text.slice(at + 1).trim();
  const steps = file.split('/');
  const isLocal = steps.every((step) => step !== '' && step !== '.' && step !== '..');
  // A colon is a drive, a scheme or a stream; a backslash is a folder on one system only.
  if (!isLocal || /[\\:?*"<>|%\p{Cc}]/u.test(file)) return undefined;
  return { file, name: name === '' ? undefined : name };
}

/** Files that a text of a cell or formula asks for with `path("…")`. */
export function filesAskedFor(text: string): readonly string[] {
  if (!/path\s*\(/i.test(text)) return [];
  const found = [...text.matchAll(/\bpath\s*\(\s*"([^"]*)"/gi)];
  return found.flatMap(([, address = '']) => outlineAddress(address)?.file ?? []);
}
