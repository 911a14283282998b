import type { Edit } from '../job/source.ts';
import type { Snapshot } from '../session/snapshot.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { shownCell } from '../workbook/shown-cell.ts';

/** A cell that takes a material, itself or by the default of its kind. */
export interface MaterialCell {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  readonly column: string;
  /** Written in the job; else it is what the kind takes. */
  readonly typed: boolean;
}

function isMaterialKey(key: string): boolean {
  return key === 'material' || /^draw\.[^.]+\.material$/.test(key);
}

function keysOf(row: AnsweredRow): readonly string[] {
  return ['material', ...row.draws.map((draw) => `draw.${draw}.material`)].filter(isMaterialKey);
}

/** Every cell of the parts of a job that takes this material. */
export function cellsTaking(material: string, { workbook }: Snapshot): readonly MaterialCell[] {
  return workbook.rows('part').flatMap((row) =>
    keysOf(row).flatMap((column): readonly MaterialCell[] => {
      const cell = row.cell(column);
      const { result } = cell;
      const link = result.state === 'value' && result.value.kind === 'link' ? result.value.id : '';
      if (link !== material || row.broken) return [];
      const { table, id, occurrence } = row;
      const name = row.cell('name').text ?? id;
      return [{ table, id, occurrence, name, column, typed: cell.origin === 'typed' }];
    }),
  );
}

/** The edits that put another material in the place of one, in every row that takes it. */
export function substituteEdits(from: string, to: string, snapshot: Snapshot): readonly Edit[] {
  return cellsTaking(from, snapshot).map(({ table, id, occurrence, column }) => ({
    kind: 'set-cell',
    row: { table, id, occurrence },
    column,
    text: to,
  }));
}

/** A figure of a row that is another one after a change of material. */
export interface MovedFigure {
  readonly id: string;
  readonly name: string;
  readonly column: string;
  readonly before: string;
  readonly after: string;
}

/** What a change of material does, before it is accepted. */
export interface SubstituteEffect {
  readonly cells: readonly MaterialCell[];
  /** Figures that follow the thickness and whatever else the material says. */
  readonly figures: readonly MovedFigure[];
  /** Totals in minor units. */
  readonly charge: { readonly before: number; readonly after: number };
  readonly buy: { readonly before: number; readonly after: number };
  readonly price: { readonly before: number; readonly after: number };
  /** Problems that come with it, and those that go, as sentences. */
  readonly come: readonly string[];
  readonly gone: readonly string[];
}

/** Keys of a row whose answers are looked at: all it has, but what names the material itself. */
function figureKeys(row: AnsweredRow, snapshot: Snapshot): readonly string[] {
  const kind = snapshot.book.kinds.get(row.kind);
  const source = snapshot.shown.tables.get(row.table)?.find(({ id }) => id === row.id);
  const keys = [
    ...(kind?.columns ?? []),
    ...(kind?.defaults.keys() ?? []),
    ...(kind?.results.keys() ?? []),
    ...(source?.cells.keys() ?? []),
  ];
  return [...new Set(keys)].filter((key) => !isMaterialKey(key) && !key.startsWith('rule.'));
}

function movedFigures(before: Snapshot, after: Snapshot): readonly MovedFigure[] {
  return ['part', 'task', 'check'].flatMap((table) =>
    before.workbook.rows(table).flatMap((row) => {
      const then = after.workbook.row(table, row.id);
      if (then === undefined) return [];
      return figureKeys(row, before).flatMap((column): readonly MovedFigure[] => {
        const was = shownCell(row.cell(column), before.settings);
        const is = shownCell(then.cell(column), after.settings);
        if (was === is) return [];
        const name = row.cell('name').text ?? row.id;
        return [{ id: row.id, name, column, before: was, after: is }];
      });
    }),
  );
}

function sentences({ problems }: Snapshot): ReadonlySet<string> {
  return new Set(problems.map(({ problem }) => problem.message));
}

/** Holds a job before and after a change of material against each other. */
export function substituteEffect(
  from: string,
  before: Snapshot,
  after: Snapshot,
): SubstituteEffect {
  const [was, is] = [sentences(before), sentences(after)];
  return {
    cells: cellsTaking(from, before),
    figures: movedFigures(before, after),
    charge: { before: before.bill.totals.charge, after: after.bill.totals.charge },
    buy: { before: before.bill.totals.buy, after: after.bill.totals.buy },
    price: { before: before.price.totals.price, after: after.price.totals.price },
    come: [...is].filter((sentence) => !was.has(sentence)),
    gone: [...was].filter((sentence) => !is.has(sentence)),
  };
}

/** Materials that may stand for one: those it names as substitutes first, then others of its form. */
export function substitutesFor(material: string, { book }: Snapshot): readonly string[] {
  const row = book.materials.get(material);
  const listed = (row?.cells.get('substitutes') ?? '').match(/[a-z][a-z0-9_]*/g) ?? [];
  const form = row?.cells.get('form');
  const alike = [...book.materials.values()]
    .filter(({ id, cells }) => id !== material && cells.get('form') === form)
    .map(({ id }) => id);
  return [...new Set([...listed.filter((id) => book.materials.has(id)), ...alike])];
}
