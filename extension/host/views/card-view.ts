import {
  columnsOf,
  completingUnit,
  rowKey,
  type AnsweredRow,
  type Column,
  type Kind,
  type Snapshot,
} from '../../engine/index.ts';
import type { CheckView } from '../../protocol/check-view.ts';
import type { CardField, CardView, CellView } from '../../protocol/views.ts';
import { cellView } from './cell-view.ts';
import { checkView, inUnitOfKind } from './check-view.ts';
import { editorOf, labelText } from './column-plan.ts';
import { amountText, moneyText } from './money.ts';
import { problemView } from './problem-view.ts';
import { shownProblems } from './problem-words.ts';
import type { SheetContext } from './sheet-context.ts';
import { gridCell, toldOf } from './sheet-view.ts';
import { shapeInWords } from './size-words.ts';

interface CardContext {
  readonly row: AnsweredRow;
  readonly kind: Kind | undefined;
  readonly columns: ReadonlyMap<string, Column>;
  readonly sheet: SheetContext;
  readonly pinned: ReadonlySet<string>;
}

function unitText(column: Column | undefined, snapshot: Snapshot): string {
  if (column?.type.kind !== 'quantity' || column.type.dimension === 'any') return '';
  return completingUnit(column.type.dimension, snapshot.settings) ?? '';
}

function lastWord(key: string): string {
  return key.slice(key.lastIndexOf('.') + 1);
}

/** Titles of what would mend the problems of a cell. */
function fixesOf(key: string, { row, sheet }: CardContext): readonly string[] {
  return sheet.snapshot.problems
    .filter(
      ({ place }) =>
        place?.column === key &&
        place.row === row.id &&
        place.table === row.table &&
        (place.occurrence ?? 0) === row.occurrence,
    )
    .flatMap(({ problem }) => (problem.fixes ?? []).map((fix) => fix.title));
}

/** A cell as the card shows it: materials and kinds by name, everything else as it is. */
function cardCell(key: string, { row, sheet }: CardContext): CellView {
  if (['material', 'kind'].includes(lastWord(key))) return gridCell(key, row, sheet);
  const view = cellView(row.cell(key), sheet.snapshot.settings, toldOf(key, row, sheet));
  return inUnitOfKind(view, key, row, sheet.snapshot);
}

/** Column of a key; keys of a draw are of the column their last word names. */
function columnOfKey(key: string, { columns }: CardContext): Column | undefined {
  return columns.get(key) ?? (key.startsWith('draw.') ? columns.get(lastWord(key)) : undefined);
}

/** What a field is called and what it is for: as its kind says, else as its column does. */
function wording(key: string, context: CardContext): Pick<CardField, 'label' | 'help'> {
  const column = columnOfKey(key, context);
  const words = column?.label ?? lastWord(key).replaceAll('_', ' ');
  return {
    label: labelText(context.kind?.labels.get(key) ?? words),
    help: context.kind?.helps.get(key) ?? column?.help ?? '',
  };
}

function field(key: string, context: CardContext): CardField {
  const { row, kind, sheet, pinned } = context;
  const column = columnOfKey(key, context);
  return {
    key,
    ...wording(key, context),
    cell: cardCell(key, context),
    fallback: kind?.defaults.get(key) ?? '',
    unit: unitText(column, sheet.snapshot),
    editor: column === undefined ? 'text' : editorOf(column),
    pinned: pinned.has(`${rowKey(row)}/${key}`),
    fixes: fixesOf(key, context),
  };
}

/** A result: read only, so that a shape may be said in words. */
function resultField(key: string, context: CardContext): CardField {
  const { row, sheet } = context;
  const { result } = row.cell(key);
  const made: CardField = { ...field(key, context), editor: 'none' };
  if (result.state !== 'value' || result.value.kind !== 'shape') return made;
  const shown = shapeInWords(result.value.shape, sheet.snapshot.settings);
  return { ...made, cell: { ...made.cell, shown } };
}

/** Columns of the card: the kind's own, then whatever else the row says. */
function cardKeys(context: CardContext): readonly string[] {
  const { row, kind, columns, sheet } = context;
  const source = (sheet.snapshot.shown.tables.get(row.table) ?? []).find(
    (one) => one.id === row.id && one.occurrence === row.occurrence,
  );
  const typed = [...(source?.cells.keys() ?? [])].filter((key) => !key.startsWith('draw.'));
  const own =
    kind?.columns ??
    [...columns.values()].filter((c) => c.computed === undefined).map((c) => c.key);
  const first = kind === undefined ? ['name'] : ['name', 'kind'];
  return [...new Set([...first, ...own, ...typed])].filter(
    (key) => key !== 'id' && key !== 'order' && columns.get(key)?.computed === undefined,
  );
}

const drawKeys = ['material', 'use', 'percent', 'qty', 'per', 'waste'];

function drawViews(context: CardContext): CardView['draws'] {
  return context.row.draws.map((name) => ({
    name,
    label:
      context.kind?.draws.find((draw) => draw.name === name)?.label ??
      labelText(name.replaceAll('_', ' ')),
    fields: drawKeys
      .map((key) => field(`draw.${name}.${key}`, context))
      .filter(
        (one) =>
          one.key.endsWith('.material') || one.key.endsWith('.use') || one.cell.look !== 'blank',
      ),
  }));
}

function amountViews(row: AnsweredRow, snapshot: Snapshot): CardView['amounts'] {
  return (snapshot.needs.get(rowKey(row)) ?? []).map((need) => ({
    label: snapshot.book.materials.get(need.material)?.cells.get('name') ?? need.material,
    value: `${amountText(need.need, snapshot.settings)} · ${moneyText(need.charge, snapshot.settings)}`,
    steps: need.steps.map((step) => step.text),
  }));
}

/** Checks that look at a row; of a check, itself. */
function rowChecks(row: AnsweredRow, { checks }: Snapshot): readonly CheckView[] {
  const { table, id, occurrence } = row;
  return checks
    .filter((check) =>
      table === 'check' ? check.id === id && check.occurrence === occurrence : check.on === id,
    )
    .map(checkView);
}

/** Everything about one row: its own columns, results, draws, amounts, problems, how it is made. */
export function cardView(
  row: AnsweredRow,
  sheet: SheetContext,
  pinned: ReadonlySet<string>,
): CardView {
  const { snapshot } = sheet;
  const kind = snapshot.book.kinds.get(row.kind);
  const columns = new Map(
    columnsOf(snapshot.shown, row.table).map((column) => [column.key, column]),
  );
  const context: CardContext = { row, kind, columns, sheet, pinned };
  const name = row.cell('name').text;
  return {
    table: row.table,
    id: row.id,
    occurrence: row.occurrence,
    title: name ?? row.id,
    kind: kind?.name ?? '',
    kindHelp: kind?.help ?? '',
    fields: cardKeys(context).map((key) => field(key, context)),
    results: [...(kind?.results.keys() ?? [])].map((key) => resultField(key, context)),
    draws: drawViews(context),
    amounts: amountViews(row, snapshot),
    checks: rowChecks(row, snapshot),
    problems: shownProblems(snapshot)
      .filter(
        ({ place, problem }) =>
          place?.table === row.table &&
          place.row === row.id &&
          (place.occurrence ?? 0) === row.occurrence &&
          // Its outcome says it already.
          !(row.table === 'check' && problem.code.startsWith('check-')),
      )
      .map((one) => problemView(one, snapshot)),
    steps: kind?.steps ?? [],
    cautions: kind?.cautions ?? [],
  };
}
