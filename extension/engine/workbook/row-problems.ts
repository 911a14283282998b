import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { CellResult } from './answers.ts';
import { weighed } from './results.ts';
import { hasKinds } from './row-texts.ts';
import { ruleSentence } from './rule-sentence.ts';
import type { RowStore } from './row-store.ts';
import { placeOfCell, placeOfRow, type Cell, type Row } from './row.ts';
import { groundOf } from './standing.ts';
import { isMissing, workbookProblem } from './workbook-problems.ts';

/** Rules of the kind that the row breaks: it cannot be made as it stands. Those of a check are told with its outcome. */
function brokenRules(row: Row, settings: UnitSettings): readonly Problem[] {
  if (row.table === 'check') return [];
  return (row.definition?.rules ?? []).flatMap(({ name, say }) => {
    const result = row.cells.get(`rule.${name}`)?.result;
    if (result?.state !== 'value') return [];
    if (result.value.kind !== 'yes-no' || result.value.yes) return [];
    const known = (column: string): CellResult | string | undefined => {
      const cell = row.cells.get(column)?.result;
      return column === 'name' && cell?.state !== 'value' ? row.id : cell;
    };
    const sentence = ruleSentence(say, known, settings);
    const place = placeOfRow(row);
    return [workbookProblem('row-not-possible', { say: sentence }, { place })];
  });
}

function circle(row: Row, store: RowStore): readonly Problem[] {
  const path = [row.id];
  let ground = groundOf(row, store);
  while (ground !== undefined && ground !== row && path.length < 100) {
    path.push(ground.id);
    ground = groundOf(ground, store);
  }
  const own = row.cells.get('on')?.text?.text === row.id;
  if (ground !== row && !own) return [];
  const place = { ...placeOfRow(row), column: 'on' };
  return [workbookProblem('link-loop', { path: [...path, row.id].join(' on ') }, { place })];
}

function ofRow(row: Row, store: RowStore): readonly Problem[] {
  const { table, id } = row;
  const place = placeOfRow(row);
  const found: Problem[] = [];
  if (hasKinds(table) && row.kind === '' && !row.source.broken) {
    const more = { place: { ...place, column: 'kind' }, severity: 'warning' } as const;
    found.push(workbookProblem('kind-missing', { id }, more));
  }
  return [...found, ...circle(row, store)];
}

/** Of most cells by far there is nothing to tell. */
function isTroubled({ loop, problems, result }: Cell): boolean {
  return loop !== undefined || problems.length > 0 || result.state === 'no-answer';
}

function ofCell(cell: Cell): readonly Problem[] {
  const rule = cell.column.startsWith('rule.');
  const { result, meaning, loop } = cell;
  const told: Problem[] = [];
  if (loop !== undefined) {
    // A loop is told once, at the cell where its path begins.
    const { column, row } = placeOfCell(cell);
    const { place } = loop;
    if (place?.row === row && place?.column === column) told.push(loop);
  } else if (meaning.kind === 'fault') {
    if (meaning.cause === undefined) told.push(...cell.problems);
  } else {
    told.push(...cell.problems);
    const own = result.state === 'no-answer' && result.problem.code !== 'cell-waits';
    if (own) told.push(result.problem);
  }
  const kept = rule ? told.filter(({ code }) => !isMissing(code)) : told;
  return kept.map((problem) => weighed(problem, cell));
}

/** As the cells stand in the file, whichever was written first; those that are not in it by name. */
function inOrderOfText<Told extends { readonly column: string }>(
  told: readonly Told[],
  row: Row,
): readonly Told[] {
  if (told.length < 2) return told;
  const written = [...row.source.texts.keys()];
  const rank = ({ column }: Told): number => {
    const at = written.indexOf(column);
    return at < 0 ? written.length : at;
  };
  const byName = (one: Told, two: Told): number =>
    one.column === two.column ? 0 : one.column < two.column ? -1 : 1;
  return told.toSorted((one, two) => rank(one) - rank(two) || byName(one, two));
}

/** Everything about one row that needs a person; of a row that cannot be read, the reader has told. */
export function problemsOfRow(
  row: Row,
  store: RowStore,
  settings: UnitSettings,
): readonly Problem[] {
  if (row.source.broken) return [];
  const told: { readonly column: string; readonly problem: Problem }[] = [];
  for (const cell of row.cells.values()) {
    if (!isTroubled(cell)) continue;
    for (const problem of ofCell(cell)) told.push({ column: cell.column, problem });
  }
  const cells = inOrderOfText(told, row).map(({ problem }) => problem);
  return [...ofRow(row, store), ...cells, ...brokenRules(row, settings)];
}
