import { kindGroups, type Book, type Draw, type Kind, type KindGroup } from './book.ts';
import { cautionsFirst, hazards } from './cautions.ts';
import { isTableKind } from './read-kinds.ts';

const intro = `# Kinds

This page is written from the built-in kinds, constants and charts by the test that keeps it in step. A kind says
what a row means; a blank cell shows its kind's default, and typing over it wins. A shop's book or a job lays its own
over these, key by key; nothing here needs code. What each key of a kind is stands in [job-file.md](job-file.md); the
functions in [functions.md](functions.md).
`;

const groupTitles: Readonly<Record<KindGroup, string>> = {
  structure: 'Structure',
  skin: 'Skin',
  finish: 'Finish',
  drivers: 'Drivers and wiring',
  shop: 'Shop',
};

const tableTitles: readonly (readonly [table: string, title: string])[] = [
  ['task', 'Tasks'],
  ['check', 'Checks'],
  ['charge', 'Charges'],
];

function code(text: string): string {
  return text === '' ? '' : `\`${text}\``;
}

// A bar ends a cell of the table, whatever stands around it.
function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  if (rows.length === 0) return [];
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line), ''];
}

function columnRow(kind: Kind, key: string, formula: string | undefined): readonly string[] {
  const label = kind.labels.get(key) ?? '';
  return [code(key), label, code(formula ?? ''), kind.helps.get(key) ?? ''];
}

function drawLine({ name, label, cells }: Draw): string {
  const texts = [...cells].map(([key, text]) => `${key} ${code(text)}`);
  return `- **${label}** (${code(`draw.${name}`)}): ${texts.join(', ')}`;
}

function listed(title: string, items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [`${title}: ${items.join(', ')}.`, ''];
}

function bullets(title: string, items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [`${title}:`, '', ...items.map((item) => `- ${item}`), ''];
}

const takesTexts: Readonly<Record<Kind['takes'], string>> = {
  blank: 'a blank of length × width',
  strip: 'a length of stock',
  amount: 'an amount, the column `use`',
  none: 'nothing',
};

function materialLine(kind: Kind): readonly string[] {
  if (kind.table !== 'part') return [];
  const material = kind.defaults.get('material');
  const from = material === undefined ? '' : ` of ${code(material)} unless told`;
  return [`Takes ${takesTexts[kind.takes]}${from}.`, ''];
}

/** True for a column that every row of the table has not, or not with this default. */
function isOwn(kind: Kind, key: string, common: Kind | undefined): boolean {
  if (common?.columns.includes(key) !== true) return true;
  return kind.defaults.get(key) !== common.defaults.get(key);
}

function kindLines(kind: Kind, common: Kind | undefined): readonly string[] {
  const own = kind.columns.filter((key) => isOwn(kind, key, common));
  const columns = own.map((key) => columnRow(kind, key, kind.defaults.get(key)));
  const results = [...kind.results].map(([key, formula]) => columnRow(kind, key, formula));
  const rules = kind.rules.map(({ formula, say }) => `${code(formula)}, else: ${say}`);
  return [
    `### ${kind.name} (${code(kind.id)})`,
    '',
    kind.help,
    '',
    ...listed('Stands on', kind.on.map(code)),
    ...materialLine(kind),
    ...table(['Column', 'Label', 'Where blank', 'Meaning'], columns),
    ...table(['Result', 'Label', 'Formula', 'Meaning'], results),
    ...(kind.draws.length === 0 ? [] : ['Draws:', '', ...kind.draws.map(drawLine), '']),
    ...bullets('Must hold', rules),
    ...(kind.source === '' ? [] : [`Its own figures: ${kind.source}.`, '']),
    ...listed('Checks', kind.checks.map(code)),
    ...listed('Tasks', kind.tasks.map(code)),
    ...bullets('Shop sheet', kind.steps),
    ...listed('Tools', kind.tools),
    ...bullets('Cautions', kind.cautions),
    ...listed('Hazards', kind.hazards.map(code)),
  ];
}

function partLines(kinds: readonly Kind[], common: Kind | undefined): readonly string[] {
  return kindGroups.flatMap((group) => [
    `## ${groupTitles[group]}`,
    '',
    ...kinds
      .filter((kind) => kind.table === 'part' && kind.group === group)
      .flatMap((kind) => kindLines(kind, common)),
  ]);
}

function commonLines(book: Book): readonly string[] {
  const part = book.kinds.get('part');
  if (part === undefined) return [];
  const rows = part.columns.map((key) => columnRow(part, key, part.defaults.get(key)));
  return ['## Every part', '', ...table(['Column', 'Label', 'Where blank', 'Meaning'], rows)];
}

function constantLines({ constants }: Book): readonly string[] {
  const rows = [...constants].map(([id, { cells }]) => [
    code(id),
    cells.get('name') ?? '',
    cells.get('value') ?? '',
    cells.get('source') ?? '',
  ]);
  return ['## Constants', '', ...table(['Constant', 'Figure of', 'Value', 'From'], rows)];
}

function chartLines({ bands }: Book): readonly string[] {
  const rows = bands.map(({ chart, from, to, value, source }) => [chart, from, to, value, source]);
  return [
    '## Charts',
    '',
    'A band has its lower edge and not its upper one.',
    '',
    ...table(['Chart', 'From', 'Below', 'Value', 'From whom'], rows),
  ];
}

function hazardLines(): readonly string[] {
  const lines = hazards.flatMap(({ id, title, text, limits }) => [
    `- **${title}** (${code(id)}): ${text}`,
    ...limits.map((limit) => `  - ${limit.text} (${limit.source})`),
  ]);
  return ['## Hazards', '', cautionsFirst, '', ...lines, ''];
}

/** The page of kinds, docs/kinds.md: every kind of a book, its constants, charts and hazards. */
export function kindsPage(book: Book): string {
  const kinds = [...book.kinds.values()].filter((kind) => !isTableKind(kind));
  const lines = [
    ...commonLines(book),
    ...partLines(kinds, book.kinds.get('part')),
    ...tableTitles.flatMap(([name, title]) => [
      `## ${title}`,
      '',
      ...kinds
        .filter((kind) => kind.table === name)
        .flatMap((kind) => kindLines(kind, book.kinds.get(name))),
    ]),
    ...constantLines(book),
    ...chartLines(book),
    ...hazardLines(),
  ];
  return `${intro}\n${lines.join('\n').trimEnd()}\n`;
}
