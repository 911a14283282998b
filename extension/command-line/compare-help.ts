import type { CompareCommand } from './compare-arguments.ts';
import { paperOut } from './paper-arguments.ts';

/** Help of comparing, history and change orders. */
export const compareUses: Readonly<
  Record<CompareCommand, { readonly use: string; readonly help: string }>
> = {
  diff: {
    use: 'panelwright diff A B [--json]',
    help: `Compares two versions of a job cell by cell, and tells what the change did to materials, money and hours.
A and B are files, or REV:FILE for a file as it was in a revision of its git repository, such as HEAD:door.paneljob.
Ends with 0 where no cell differs, 1 where some do, 2 where a version cannot be read.
  --json   for programs`,
  },
  history: {
    use: 'panelwright history FILE ROW.COLUMN [--most N] [--json]',
    help: `Tells who changed a cell, when and in which commit, with the price before tax each time; the newest first.
ROW.COLUMN is a cell such as mid_ring.tilt; job.SETTING a setting such as job.temperature.
  --most   how many commits are looked through; 200 unless told
  --json   for programs`,
  },
  changeorder: {
    use: 'panelwright changeorder FILE --since REV|FILE [--shop] [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints a change order as a page: what changed in scope and price since a revision or an earlier file.
  --since  the revision of the git repository, or the file, that was agreed to
  --shop   the shop's own copy, with hours and amounts; else the client's
${paperOut}`,
  },
};
