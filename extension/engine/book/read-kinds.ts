import type { Problem } from '../problems.ts';
import { bookProblem } from './book-problems.ts';
import { hazardWords } from './cautions.ts';
import { kindGroups, type Draw, type Kind } from './book.ts';
import type { LaidRow } from './layers.ts';

const takesWords = ['blank', 'strip', 'amount', 'none'] as const;

function textOf(row: LaidRow, key: string): string {
  return row.cells.get(key)?.text ?? '';
}

function listOf(row: LaidRow, key: string): readonly string[] {
  const cell = row.cells.get(key);
  if (cell === undefined) return [];
  return cell.items ?? (cell.text === '' ? [] : [cell.text]);
}

const noTexts: ReadonlyMap<string, string> = new Map();

/** Texts with keys `prefix.rest`: by prefix, then by `rest`. */
function dottedTexts(row: LaidRow): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const found = new Map<string, Map<string, string>>();
  for (const [key, cell] of row.cells) {
    const dot = key.indexOf('.');
    if (dot < 0) continue;
    const prefix = key.slice(0, dot);
    const texts = found.get(prefix) ?? new Map<string, string>();
    found.set(prefix, texts.set(key.slice(dot + 1), cell.text));
  }
  return found;
}

function drawsOf(texts: ReadonlyMap<string, string>): readonly Draw[] {
  const draws = new Map<string, Map<string, string>>();
  for (const [path, text] of texts) {
    const dot = path.indexOf('.');
    if (dot < 0) continue;
    const name = path.slice(0, dot);
    const cells = draws.get(name) ?? new Map<string, string>();
    draws.set(name, cells.set(path.slice(dot + 1), text));
  }
  return [...draws].map(([name, cells]) => {
    const label = cells.get('label') ?? name.replaceAll('_', ' ');
    cells.delete('label');
    return { name, label, cells };
  });
}

function rulesOf(
  rules: ReadonlyMap<string, string>,
  says: ReadonlyMap<string, string>,
): Kind['rules'] {
  return [...rules].map(([name, formula]) => ({ name, formula, say: says.get(name) ?? '' }));
}

function oneOf<Word extends string>(text: string, words: readonly Word[], otherwise: Word): Word {
  return words.find((word) => word === text) ?? otherwise;
}

/** A kind as its row says it, without what is common to its table. */
export function kindFrom(row: LaidRow): Kind {
  const dotted = dottedTexts(row);
  const under = (prefix: string): ReadonlyMap<string, string> => dotted.get(prefix) ?? noTexts;
  return {
    id: row.id,
    name: textOf(row, 'name') || row.id,
    table: textOf(row, 'table') || 'part',
    group: oneOf(textOf(row, 'group'), kindGroups, 'shop'),
    help: textOf(row, 'help'),
    on: listOf(row, 'on'),
    columns: listOf(row, 'columns'),
    takes: oneOf(textOf(row, 'takes'), takesWords, 'none'),
    words: textOf(row, 'words'),
    labels: under('label'),
    helps: under('hint'),
    defaults: under('default'),
    results: under('result'),
    draws: drawsOf(under('draw')),
    rules: rulesOf(under('rule'), under('say')),
    knobs: listOf(row, 'knobs'),
    steps: listOf(row, 'steps'),
    tools: listOf(row, 'tools'),
    cautions: listOf(row, 'cautions'),
    hazards: listOf(row, 'hazards'),
    checks: listOf(row, 'checks'),
    tasks: listOf(row, 'tasks'),
    waits: ['yes', 'true'].includes(textOf(row, 'waits')),
    source: textOf(row, 'source'),
  };
}

function commonGiven(kind: Kind, common: Kind | undefined): Kind {
  if (common === undefined || common === kind) return kind;
  const columns = [...kind.columns, ...common.columns.filter((key) => !kind.columns.includes(key))];
  const used = new Set([...columns, ...kind.results.keys()]);
  const words = (
    own: ReadonlyMap<string, string>,
    shared: ReadonlyMap<string, string>,
  ): ReadonlyMap<string, string> =>
    new Map([...[...shared].filter(([key]) => used.has(key)), ...own]);
  return {
    ...kind,
    columns,
    labels: words(kind.labels, common.labels),
    helps: words(kind.helps, common.helps),
    defaults: new Map([...common.defaults, ...kind.defaults]),
  };
}

/** Kinds by id, with what is common to their table given to each; `read` has those read before. */
export function kindsFrom(
  rows: ReadonlyMap<string, LaidRow>,
  read: ReadonlyMap<LaidRow, Kind>,
): ReadonlyMap<string, Kind> {
  const kinds = new Map([...rows].map(([id, row]) => [id, read.get(row) ?? kindFrom(row)]));
  return new Map([...kinds].map(([id, kind]) => [id, commonGiven(kind, kinds.get(kind.table))]));
}

/** True for a kind that only holds what all rows of a table share. */
export function isTableKind(kind: Kind): boolean {
  return kind.id === kind.table;
}

function wordProblems(row: LaidRow, kind: Kind): readonly Problem[] {
  const closed = [
    ['group', kindGroups, kind.group],
    ['takes', takesWords, kind.takes],
  ] as const;
  return closed.flatMap(([key, words, taken]) => {
    const text = textOf(row, key);
    if (text === '' || words.some((word) => word === text)) return [];
    const details = { id: kind.id, text, key, choices: words.join(', '), fallback: taken };
    return [bookProblem('kind-word-unknown', details, { place: { table: 'kind', row: kind.id } })];
  });
}

function hazardProblems({ id, hazards }: Kind): readonly Problem[] {
  const choices = hazardWords.join(', ');
  return hazards
    .filter((text) => !hazardWords.includes(text))
    .map((text) =>
      bookProblem(
        'kind-hazard-unknown',
        { id, text, choices },
        { severity: 'warning', place: { table: 'kind', row: id, column: 'hazards' } },
      ),
    );
}

/** What is wrong with a kind in itself and beside the other kinds. */
export function kindProblems(
  row: LaidRow,
  kind: Kind,
  kinds: ReadonlyMap<string, Kind>,
): readonly Problem[] {
  const place = { table: 'kind', row: kind.id };
  const { id } = kind;
  const unnamed =
    textOf(row, 'name') === '' ? [bookProblem('kind-name-missing', { id }, { place })] : [];
  const ons = kind.on
    .filter((other) => !kinds.has(other))
    .map((other) => bookProblem('kind-on-unknown', { id, other }, { place }));
  const shown = [...kind.columns, ...kind.results.keys()];
  const unlabelled = shown
    .filter((column) => !kind.labels.has(column) || !kind.helps.has(column))
    .map((column) =>
      bookProblem('kind-label-missing', { id, column }, { severity: 'note', place }),
    );
  const unsaid = kind.rules
    .filter(({ say }) => say === '')
    .map((rule) => bookProblem('kind-rule-unsaid', { id, rule: rule.name }, { place }));
  const bare = kind.draws
    .filter(({ cells }) => !cells.has('material'))
    .map(({ name }) => bookProblem('draw-material-missing', { id, draw: name }, { place }));
  return [
    ...unnamed,
    ...wordProblems(row, kind),
    ...hazardProblems(kind),
    ...ons,
    ...unlabelled,
    ...unsaid,
    ...bare,
  ];
}
