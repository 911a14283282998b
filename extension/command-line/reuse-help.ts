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
};
