import type { CommandName } from './arguments.ts';
import { compareUses } from './compare-help.ts';
import { figuresUses } from './figures-help.ts';
import { paperOut } from './paper-arguments.ts';
import { reuseUses } from './reuse-help.ts';

const uses: Readonly<Record<CommandName, { readonly use: string; readonly help: string }>> = {
  ...compareUses,
  ...figuresUses,
  ...reuseUses,
  estimate: {
    use: 'panelwright estimate FILE [--json]',
    help: `Works out what a job needs, what to buy and what to charge, group by group.
FILE is a job (*.paneljob). Its shop book is found beside it, as the job says.
  --json   for programs: see docs/command-line.md`,
  },
  check: {
    use: 'panelwright check FILE... [--json]',
    help: `Lists the problems of one or more jobs, each with its file and line.
  --json   for programs`,
  },
  calc: {
    use: "panelwright calc 'FORMULA' [--units in|mm] [--currency CODE] [--json]",
    help: `Works out one formula, such as '=BEARING.OFFSET(1 3/8in, 1 1/8in)'. The = may be left out.
  --units     what lengths are shown in; in unless told
  --currency  the currency money is in; USD unless told
  --json      for programs`,
  },
  bom: {
    use: 'panelwright bom FILE [--csv]',
    help: `Prints the bill of materials with the rows that need each material.
  --csv    as comma-separated values, for a spreadsheet`,
  },
  costdrivers: {
    use: 'panelwright costdrivers FILE [--json]',
    help: `Lists the five cells that move the price most, each tried a tenth lower and a tenth higher.
  --json   for programs`,
  },
  quote: {
    use: 'panelwright quote FILE [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints the quote for the client as a page (HTML): scope, price, tax, payments, a line to sign; no costs.
${paperOut}`,
  },
  shopping: {
    use: 'panelwright shopping FILE [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints the shopping list as a page: what to buy, in packs.
${paperOut}`,
  },
  shopsheet: {
    use: 'panelwright shopsheet FILE [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints the shop sheet as a page: order of work, cut list, bearings, rings, holes, shims, steps and tools.
${paperOut}`,
  },
  mixcards: {
    use: 'panelwright mixcards FILE [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints a card for each pot of resin as a page.
${paperOut}`,
  },
  safety: {
    use: 'panelwright safety FILE [--out FILE.html|FILE.pdf] [--paper letter|a4]',
    help: `Prints the safety sheet as a page: dangers of the job, with the limits that rules print.
${paperOut}`,
  },
  patterns: {
    use: 'panelwright patterns FILE --out DIR [--paper letter|a4] [--part ID]',
    help: `Writes patterns of all that is cut to a form, at full size: SVG, DXF, and PDF on sheets of paper.
  --out    the folder they are written to; made where it is not there
  --paper  the printer's sheets; letter for a job in inches, a4 for one in millimetres
  --part   the id of one row`,
  },
  cutplan: {
    use: 'panelwright cutplan FILE [--out DIR]',
    help: `Lays out what a job cuts from whole sheets, lengths and rolls, with the cuts in order.
  --out    a folder for the layouts as SVG, DXF and PDF; made where it is not there`,
  },
  layout: {
    use: 'panelwright layout INSTANCE.json [--json]',
    help: `Lays out a bare instance: rectangles, outlines, strips, bolt or packs, in mm.
What an instance holds is told in docs/command-line.md.
  --json   for programs`,
  },
  outline: {
    use: 'panelwright outline [LIST] --out FILE.svg [--stations] [--smooth] [--units in|mm]',
    help: `Makes an outline from measured points, a line each: x and y, between commas, tabs or semicolons.
LIST is a file; without it the points are piped in. A line that ends in the word corner is one.
  --stations  lines say how far along a straight edge, and how far off it (or both sides' offsets)
  --smooth    a smooth line through the points, but for corners; else straight from point to point
  --units     what bare numbers are in; in unless told
  --out       the SVG file it is written to, which a job beside it may name`,
  },
  merge: {
    use: 'panelwright merge BASE OURS THEIRS [-o OUT] [--path P] [--marker-size N] [--json] | --set-up [FOLDER] [--yes]',
    help: `Merges two versions of a job (or shop book) with the one both came from, cell by cell.
Ends with 1 where cells are in conflict: they stand between conflict markers in what is written.
  -o             the file it is written to; else it goes to the standard output
  --path         what the file is called in messages
  --marker-size  letters of a conflict marker; 7 unless told
  --json         for programs: the conflicts, and how long it took
  --set-up       makes git merge the jobs of the repository in FOLDER with this; says first what it writes
  --yes          writes it`,
  },
  functions: {
    use: 'panelwright functions [--json]',
    help: `Lists the functions that formulas may use.
  --json   with parameters, examples and sources`,
  },
};

const ends = `
Ends with 0 when all is well, 1 when the job or the formula has problems, 2 when it was called wrongly.
`;

/** The page --help prints: of one command, or of all. */
export function helpPage(of: CommandName | undefined): string {
  if (of !== undefined) return `${uses[of].use}\n\n${uses[of].help}\n${ends}`;
  const lines = Object.values(uses).map(({ use }) => `  ${use}`);
  return [
    'Panelwright estimates jobs of custom speaker panels.',
    '',
    ...lines,
    '  panelwright help COMMAND',
    '  panelwright --version',
    ends,
  ].join('\n');
}
