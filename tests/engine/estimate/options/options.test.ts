import { describe, expect, test } from 'vitest';
import {
  acceptOption,
  optionProblems,
  optionsOf,
} from '../../../../extension/engine/estimate/options/options.ts';
import { applyEdits } from '../../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../../extension/engine/job/read-file.ts';
import { charge, cost, row } from '../../../helpers/priced-job.ts';

const job = (...rows: readonly string[]): string =>
  `format = 1\n\n[job]\ntemperature = "70 degF"\n\n${rows.join('')}`;

const better = row('option', 'better', {
  name: 'Better goods',
  'set.goods.price': '150 USD',
  'set.job.temperature': '60 degF',
});
const reading = readFile(job(cost('goods', '100 USD'), charge('hours', 'labour'), better));

describe('optionsOf', () => {
  test('an option is a name with a cell a line, held against what stands there', () => {
    expect(reading.problems).toEqual([]);
    expect(optionsOf(reading)).toMatchObject([
      {
        id: 'better',
        name: 'Better goods',
        cells: [
          { cell: 'goods.price', now: '100 USD', then: '150 USD' },
          { cell: 'job.temperature', now: '70 degF', then: '60 degF' },
        ],
      },
    ]);
  });
});

describe('acceptOption', () => {
  test('its cells are the job’s, and it is an option no more', () => {
    const [option] = optionsOf(reading);
    const edits = option === undefined ? [] : acceptOption(option);
    const applied = applyEdits(reading, edits);
    const then = applied.ok ? applied.value.reading : reading;
    expect(then.tables.get('part')?.[0]?.cells.get('price')?.text).toBe('150 USD');
    expect(then.head.get('temperature')?.text).toBe('60 degF');
    expect(optionsOf(then)).toEqual([]);
  });

  test('a row that is given another id keeps its options', () => {
    const target = { table: 'part', id: 'goods' };
    const applied = applyEdits(reading, [{ kind: 'rename-row', row: target, id: 'stuff' }]);
    const then = applied.ok ? applied.value.reading : reading;
    expect(then.text).toContain("set.stuff.price = '150 USD'");
    expect(optionProblems(then)).toEqual([]);
  });
});

describe('optionProblems', () => {
  test('a cell that is not there, and an option of nothing, are told', () => {
    const odd = row('option', 'odd', { 'set.nowhere.price': '1 USD', 'set.goods.colour': 'red' });
    const told = optionProblems(
      readFile(job(cost('goods', '1 USD'), odd, row('option', 'bare', { name: 'Bare' }))),
    );
    expect(told.map(({ code }) => code).sort()).toEqual([
      'option-cell-unknown',
      'option-cell-unknown',
      'option-empty',
    ]);
  });
});
