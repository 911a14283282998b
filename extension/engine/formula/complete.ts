import { isUnitWord, unitWords } from '../units/unit-words.ts';
import { caretAt, type Caret } from './caret.ts';
import type { FunctionEntry, Parameter } from './catalogue.ts';
import { parameterOf, signatureText } from './parameters.ts';
import type { Nameable, Scope } from './scope.ts';

export interface Completion {
  readonly label: string;
  readonly detail: string;
  readonly kind: 'function' | 'column' | 'row' | 'word' | 'unit';
  /** Replaces the range of the completions. */
  readonly insert: string;
}

export interface Completions {
  readonly start: number;
  readonly end: number;
  readonly items: readonly Completion[];
}

const kinds: Readonly<Record<Nameable['kind'], Completion['kind']>> = {
  column: 'column',
  link: 'column',
  row: 'row',
  kind: 'word',
  table: 'word',
  root: 'word',
};

function ofName(name: Nameable, asRow: boolean): Completion {
  const { word, detail } = name;
  const goesOn = name.kind === 'root' || (name.kind === 'row' && !asRow);
  return { label: word, detail, kind: kinds[name.kind], insert: goesOn ? `${word}.` : word };
}

function ofFunction(entry: FunctionEntry): Completion {
  const insert = entry.parameters.length === 0 ? `${entry.name}()` : `${entry.name}(`;
  return { label: entry.name, detail: signatureText(entry), kind: 'function', insert };
}

function units(scope: Scope): readonly Completion[] {
  return [...unitWords(), scope.settings.currency]
    .filter((word) => isUnitWord(word))
    .map((word) => ({ label: word, detail: 'unit', kind: 'unit', insert: word }));
}

const lists: readonly Completion[] = [
  { label: 'all', detail: 'all(kind).column', kind: 'word', insert: 'all(' },
  { label: 'on', detail: 'on(row, kind).column', kind: 'word', insert: 'on(' },
];

function listWords(caret: Caret, scope: Scope): readonly Completion[] {
  const names = scope.names([]);
  const ofRow = caret.around[0]?.name === 'on' && caret.around[0].argument === 0;
  const wanted = ofRow ? ['row', 'link'] : ['kind', 'table'];
  return names.filter(({ kind }) => wanted.includes(kind)).map((name) => ofName(name, true));
}

/** Words that only the parameter under the caret knows. */
function parameterWords(parameter: Parameter | undefined, scope: Scope): readonly Completion[] {
  const type = parameter?.type;
  if (type?.kind === 'choice') {
    const detail = parameter?.help ?? '';
    return type.choices.map((word) => ({ label: word, detail, kind: 'word', insert: word }));
  }
  return type?.kind === 'unit' ? units(scope) : [];
}

function pathStart(caret: Caret, scope: Scope): readonly Completion[] {
  const call = caret.around[0];
  const entry = call === undefined ? undefined : scope.catalogue.get(call.name);
  const parameter =
    entry === undefined || call === undefined ? undefined : parameterOf(entry, call.argument);
  const asRow = parameter?.type.kind === 'row';
  const names = scope
    .names([])
    .filter(({ kind }) => kind !== 'kind' && kind !== 'table')
    .map((name) => ofName(name, asRow));
  const own = parameterWords(parameter, scope);
  if (parameter?.type.kind === 'unit') return own;
  const functions = asRow ? [] : [...scope.catalogue.values()].map(ofFunction);
  return [...own, ...names, ...(asRow ? [] : lists), ...functions];
}

function candidates(caret: Caret, scope: Scope): readonly Completion[] {
  if (caret.quoted) return [];
  if (caret.afterNumber) return units(scope);
  if (caret.list !== undefined) {
    const columns = caret.list.flatMap((kind) => scope.names([kind]));
    return columns.map((name) => ofName(name, true));
  }
  const inside = caret.around[0]?.name;
  if (caret.before.length > 0) {
    // A dotted name may go on as a path or as the name of a function.
    const prefix = `${caret.before.join('.')}.`.toUpperCase();
    const functions = [...scope.catalogue.values()]
      .filter(({ name }) => name.toUpperCase().startsWith(prefix))
      .map((entry) => ({
        ...ofFunction(entry),
        insert: ofFunction(entry).insert.slice(prefix.length),
      }));
    return [...scope.names(caret.before).map((name) => ofName(name, true)), ...functions];
  }
  if (inside === 'all' || inside === 'on') return listWords(caret, scope);
  return pathStart(caret, scope);
}

function likeness(label: string, word: string): number {
  const [name, written] = [label.toLowerCase(), word.toLowerCase()];
  if (name.startsWith(written)) return 0;
  if (name.split(/[._]/).some((part) => part.startsWith(written))) return 1;
  return name.includes(written) ? 2 : 3;
}

/**
 * What may stand at the caret of a formula being typed, best first: words of the parameter, names of the
 * job, functions. Those that do not hold the letters already written are left out.
 */
export function completionsAt(text: string, caret: number, scope: Scope): Completions {
  if (!text.startsWith('=') || caret < 1) return { start: caret, end: caret, items: [] };
  const at = caretAt(text, caret, scope.settings);
  const seen = new Set<string>();
  const items = candidates(at, scope)
    .map((item, index) => ({ item, index, rank: likeness(item.label, at.word) }))
    .filter(({ rank }) => rank < 3)
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ item }) => item)
    .filter(({ label }) => !seen.has(label) && seen.add(label));
  return { start: at.start, end: at.end, items };
}
