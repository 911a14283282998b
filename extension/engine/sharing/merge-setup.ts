/** Lines of .gitattributes that send our files to the merge driver. */
const attributes = ['*.paneljob merge=panelwright', '*.panelbook merge=panelwright'];

/** Name under which git's settings know the driver: `merge.panelwright.driver`. */
export const driverName = 'Panelwright, cell by cell';

/** Where a repository keeps its own copy of the driver, seen from its git folder. */
export const driverCopy = 'panelwright/merge-driver.cjs';

/** The text of .gitattributes with our lines in it; the same text where they are there. */
export function withAttributes(text: string): string {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const missing = attributes.filter((line) => !lines.includes(line));
  if (missing.length === 0) return text;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const head = text === '' || text.endsWith('\n') ? text : text + newline;
  return head + missing.map((line) => line + newline).join('');
}

/** Places that git fills in: base, ours, theirs, length of a marker, path in the repository. */
const places = '%O %A %B -o %A --marker-size %L --path %P';

/** The driver as git is to call it: a program file by Node. git gives the line to a shell. */
export function driverCommand(program: string): string {
  return `node "${program.replaceAll('\\', '/')}" ${places}`;
}

/** The driver of a repository that keeps its own copy, found from any of its worktrees. */
export function copiedDriverCommand(): string {
  return driverCommand(`$(git rev-parse --git-common-dir)/${driverCopy}`);
}
