import type { Problem } from '../problems.ts';
import { bookProblem } from './book-problems.ts';
import type { Kind } from './book.ts';
import type { LaidRow } from './layers.ts';
import { isTableKind } from './read-kinds.ts';

type Rows = ReadonlyMap<string, LaidRow>;

const forms = ['sheet', 'roll', 'strip', 'liquid', 'aerosol', 'piece'];

function textOf(row: LaidRow, key: string): string {
  return row.cells.get(key)?.text ?? '';
}

/** Materials whose form nobody can buy. */
export function materialProblems(materials: Rows): readonly Problem[] {
  return [...materials.values()].flatMap((row) => {
    const text = textOf(row, 'form');
    if (forms.includes(text)) return [];
    const form = text === '' ? 'no form' : `the form “${text}”`;
    const details = { id: row.id, form, choices: forms.join(', ') };
    const place = { table: 'material', row: row.id, column: 'form' };
    return [bookProblem('material-form-unknown', details, { place })];
  });
}

function packCurrency(row: LaidRow, currency: string): readonly Problem[] {
  return ['price', 'rate'].flatMap((column) => {
    const code = /(?<![A-Za-z])([A-Z]{3})(?![A-Za-z])/.exec(textOf(row, column))?.[1];
    if (code === undefined || code === currency) return [];
    const place = { table: 'pack', row: row.id, column };
    return [
      bookProblem('pack-currency-differs', { id: row.id, column, code, currency }, { place }),
    ];
  });
}

/** Packs of nothing, packs without a price, prices in another currency than the book's. */
export function packProblems(packs: Rows, materials: Rows, currency: string): readonly Problem[] {
  return [...packs.values()].flatMap((row) => {
    const { id } = row;
    const place = { table: 'pack', row: id };
    const material = textOf(row, 'material');
    const stray = materials.has(material)
      ? []
      : [bookProblem('pack-material-unknown', { id, material }, { place })];
    const has = (key: string): boolean => row.cells.has(key);
    // What is on the shelf may have been paid for by another job.
    const costs = has('price') || has('have');
    const priced = (has('holds') && costs) || (has('step') && has('rate'));
    const bare = priced ? [] : [bookProblem('pack-incomplete', { id }, { place })];
    return [...stray, ...bare, ...packCurrency(row, currency)];
  });
}

/** Constants and bands with a gap. */
export function figureProblems(constants: Rows, bands: Rows): readonly Problem[] {
  const blank = [...constants.values()]
    .filter((row) => textOf(row, 'value') === '')
    .map(({ id }) =>
      bookProblem(
        'constant-blank',
        { id },
        { place: { table: 'constant', row: id, column: 'value' } },
      ),
    );
  const gaps = [...bands.values()].flatMap((row) =>
    ['chart', 'from', 'to', 'value']
      .filter((column) => textOf(row, column) === '')
      .map((column) =>
        bookProblem(
          'band-incomplete',
          { id: row.id, chart: textOf(row, 'chart'), column },
          { place: { table: 'band', row: row.id, column } },
        ),
      ),
  );
  return [...blank, ...gaps];
}

/** Materials that a kind takes by default and the book does not have. */
export function takenMaterialProblems(kinds: readonly Kind[], materials: Rows): readonly Problem[] {
  return kinds
    .filter((kind) => !isTableKind(kind))
    .flatMap((kind) => {
      const taken = [
        ['material', kind.defaults.get('material')] as const,
        ...kind.draws.map(({ name, cells }) => [`draw.${name}`, cells.get('material')] as const),
      ];
      return taken.flatMap(([column, material]) =>
        material === undefined || material === 'none' || materials.has(material)
          ? []
          : [
              bookProblem(
                'material-unknown',
                { id: kind.id, material, column },
                { severity: 'warning', place: { table: 'kind', row: kind.id } },
              ),
            ],
      );
    });
}
