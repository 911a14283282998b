import type { ReuseCommand } from './reuse-arguments.ts';

/** Help of the commands of templates, shop books and stock. */
export const reuseUses: Readonly<
  Record<ReuseCommand, { readonly use: string; readonly help: string }>
> = {
  templates: {
    use: 'panelwright templates [--json]',
    help: `Lists the built-in templates with what each asks: what it offers, and within which limits.
  --json   for programs`,
  },
  new: {
    use: 'panelwright new --template NAME [--set ID=ANSWER]... -o FILE.paneljob',
    help: `Writes a job from a template. NAME is a built-in one or the path of a file (*.paneltemplate).
  --set       an answer to a question, such as --set panel_length=24in; what is not set is as offered
  --title     what the job is called; else as the template
  --date      day of the estimate
  --book      path of the shop book, seen from the job
  --units     in or mm; in unless told
  --currency  code of its money; USD unless told`,
  },
  freeze: {
    use: 'panelwright freeze FILE --date DAY [--write] | --release [--write]',
    help: `Lists the prices that a quote of FILE stands on, and holds them in the job.
  --date     day of the prices
  --release  takes held prices out, so that the job follows the book again
  --write    writes the job; else it is only shown`,
  },
  prices: {
    use: 'panelwright prices BOOK [LIST] [--date DAY] [--write]',
    help: `Holds a price list (CSV, or columns between tabs; piped in without LIST) against a shop book:
what is matched and how, old and new price side by side. Likely matches are marked with a question mark.
  --date   day of the prices, written into the book
  --write  writes the prices that are matched by id or name; likely ones are left to a person`,
  },
  substitute: {
    use: 'panelwright substitute FILE OLD NEW [--write]',
    help: `Puts a material in the place of another throughout a job, and tells what that does: figures that
follow its thickness, need, cost, problems that come and go. OLD and NEW are ids of materials.
  --write  writes the job; else it is only shown`,
  },
  bookout: {
    use: 'panelwright bookout FILE [--write]',
    help: `Tells what a job that is built does to the shelf: packs used, offcuts and rests put away.
  --write  writes it into the shop book that the job names`,
  },
};
