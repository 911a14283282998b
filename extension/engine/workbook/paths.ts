import type { Step } from '../formula/expression.ts';
import { failed, ok, type Result } from '../result.ts';
import { suggestion } from '../formula/near-name.ts';
import type { Cell, Row } from './row.ts';
import { cellOf, isLink, rowAtEnd, throughLink, watchNames, type Walk } from './walking.ts';
import { workbookProblem } from './workbook-problems.ts';

/** The one row of table `job`: the settings. */
export const settingsKey = 'job/#0';

function settingOrMeasure(step: Step, walk: Walk): Result<Cell> {
  const { store, columns, watches } = walk;
  const settings = store.byKey(settingsKey);
  const known = columns.known('job');
  watches.add(`name:${step.word}`);
  if (settings !== undefined && (known.has(step.word) || settings.cells.get(step.word)?.text)) {
    return ok(store.cell(settings, step.word));
  }
  if (settings !== undefined) walk.links.add(store.cell(settings, step.word));
  const measures = store.named('measure', step.word);
  if (measures.length > 1) {
    const details = { id: step.word, name: `job.${step.word}` };
    return failed(workbookProblem('path-repeated', details, { span: step.span }));
  }
  const [measure] = measures;
  if (measure !== undefined) return cellOf(measure, { ...step, word: 'value' }, walk);
  watchNames(walk, ['measure']);
  const ids = store.rows('measure').map((row) => row.id);
  const near = suggestion(step.word, [...known, ...ids]);
  const details = { word: step.word, suggestion: near };
  return failed(workbookProblem('setting-unknown', details, { span: step.span }));
}

function constant(step: Step, walk: Walk): Result<Cell> {
  const { store, watches } = walk;
  watches.add(`name:${step.word}`);
  const [found] = store.named('constant', step.word);
  if (found !== undefined) return cellOf(found, { ...step, word: 'value' }, walk);
  watchNames(walk, ['constant']);
  const ids = store.rows('constant').map((row) => row.id);
  const details = { word: step.word, suggestion: suggestion(step.word, ids) };
  return failed(workbookProblem('constant-unknown', details, { span: step.span }));
}

function drawn(row: Row, steps: readonly Step[], walk: Walk): Result<Cell> {
  const [first, name, key, ...rest] = steps;
  if (first === undefined || name === undefined || key === undefined) {
    return failed(
      workbookProblem('draw-short', {}, first === undefined ? {} : { span: first.span }),
    );
  }
  if (!row.draws.includes(name.word)) {
    walk.links.add(walk.store.cell(row, `draw.${name.word}.${key.word}`));
    const details = { row: row.id, word: name.word, suggestion: suggestion(name.word, row.draws) };
    return failed(workbookProblem('draw-unknown', details, { span: name.span }));
  }
  if (!walk.columns.known(row.table).has(key.word)) return cellOf(row, key, walk);
  const column = `draw.${name.word}.${key.word}`;
  if (rest.length === 0) return ok(walk.store.cell(row, column));
  const next = throughLink(row, column, key, walk);
  return next.ok ? alongLinks(next.value, rest, walk) : next;
}

function alongLinks(from: Row, steps: readonly Step[], walk: Walk): Result<Cell> {
  let row = from;
  for (const [index, step] of steps.entries()) {
    if (index === steps.length - 1) return cellOf(row, step, walk);
    const next = throughLink(row, step.word, step, walk);
    if (!next.ok) return next;
    row = next.value;
  }
  return failed(workbookProblem('path-short', { path: row.id }));
}

function oneName(row: Row, step: Step, walk: Walk): Result<Cell> {
  const cell = cellOf(row, step, walk);
  if (!cell.ok || !isLink(row, step.word, walk)) return cell;
  walk.links.add(cell.value);
  return cell;
}

/** The cell that a path of names means in a formula of this row. */
export function cellAtPath(row: Row, steps: readonly Step[], walk: Walk): Result<Cell> {
  const [first, second] = steps;
  const last = steps.at(-1);
  if (first === undefined || last === undefined) return failed(workbookProblem('draw-short'));
  if (first.word === 'draw') return drawn(row, steps, walk);
  if (second === undefined) return oneName(row, first, walk);
  if (first.word === 'job' && steps.length === 2) return settingOrMeasure(second, walk);
  if (first.word === 'book' && steps.length === 2) return constant(second, walk);
  const end = rowAtEnd(row, steps.slice(0, -1), walk);
  return end.ok ? cellOf(end.value, last, walk) : end;
}
