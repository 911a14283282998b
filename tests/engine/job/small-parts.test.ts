import { describe, expect, test } from 'vitest';
import { crc32 } from '../../../extension/engine/job/crc32.ts';
import { writeEmptyJob } from '../../../extension/engine/job/empty-job.ts';
import { freshId, takeId } from '../../../extension/engine/job/fresh-id.ts';
import { nearestWord } from '../../../extension/engine/job/nearest-word.ts';
import { orderNumbers } from '../../../extension/engine/job/order-numbers.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { changedText } from '../../../extension/engine/job/text-changes.ts';
import { upgradeChanges } from '../../../extension/engine/job/upgrade-file.ts';
import { keyText, quotedText, valueText } from '../../../extension/engine/job/write-value.ts';
import { columnOf } from '../../../extension/engine/job/columns.ts';
import type { SourceCell } from '../../../extension/engine/job/source.ts';

describe('crc32', () => {
  test('gives the check value of the standard', () => {
    // CRC-32/ISO-HDLC: check value 0xCBF43926 for "123456789" (catalogue of parametrised CRCs).
    expect(crc32('123456789')).toBe(0xcbf43926);
    expect(crc32('')).toBe(0);
  });
});

describe('takeId', () => {
  test('keeps the word where it is free, else counts on from 2, and takes what it gives', () => {
    const taken = new Set(['ring', 'ring_2']);
    expect([takeId('base', taken), takeId('ring', taken), takeId('ring', taken)]).toEqual([
      'base',
      'ring_3',
      'ring_4',
    ]);
  });
});

describe('freshId', () => {
  test('[J24] three letters, then the kind', () => {
    expect(freshId('ring', new Set(), () => 'kfd')).toBe('kfd_ring');
    expect(freshId('No kind', new Set(), () => 'kfd')).toBe('kfd_row');
  });

  test('[J24] letters that are taken are drawn again, and counted up where none are free', () => {
    const letters = ['abc', 'abc', 'xyz'];
    expect(freshId('ring', new Set(['abc_ring']), () => letters.shift() ?? '')).toBe('xyz_ring');
    expect(freshId('ring', new Set(['abc_ring', 'aaa_ring']), () => 'abc')).toBe('aab_ring');
  });
});

describe('writeEmptyJob', () => {
  test('[J1] a new file reads without a problem and has nothing in it', () => {
    const text = writeEmptyJob({
      title: 'Jo\'s "pair"',
      units: 'mm',
      currency: 'EUR',
      book: 'books/shop.panelbook',
      date: '2026-11-25',
    });
    const reading = readFile(text);
    expect([reading.problems, reading.tables.size]).toEqual([[], 0]);
    expect([...reading.head].map(([key, cell]) => [key, cell.form, cell.text])).toEqual([
      ['title', 'string', 'Jo\'s "pair"'],
      ['date', 'date', '2026-11-25'],
      ['units', 'string', 'mm'],
      ['currency', 'string', 'EUR'],
      ['book', 'string', 'books/shop.panelbook'],
    ]);
  });

  test('a day that is none is written as text', () => {
    const text = writeEmptyJob({ title: 'x', units: 'in', currency: 'USD', date: 'today' });
    expect(text).toBe(
      'format = 1\n\n[job]\ntitle = "x"\n\ndate = "today"\n\nunits = "in"\ncurrency = "USD"\n',
    );
  });
});

describe('quotedText', () => {
  test.each([
    ['8 in', '"8 in"'],
    ["it's", '"it\'s"'],
    ['24 1/2"', "'24 1/2\"'"],
    ['a\\b', "'a\\b'"],
    ['it\'s 8"', '"it\'s 8\\""'],
    ['two\nlines\t\u0001', '"two\\nlines\\t\\u0001"'],
    ['\uD800', '"\uFFFD"'],
    ['', '""'],
  ])('[J11] %j is written %s', (text, written) => {
    expect(quotedText(text)).toBe(written);
  });
});

describe('valueText', () => {
  const cell = (form: SourceCell['form']): SourceCell => ({
    text: '',
    form,
    span: { start: 0, end: 0 },
  });

  test.each([
    ['2', undefined, 'qty', '2'],
    ['2.5', undefined, 'use', '2.5'],
    ['2 in', undefined, 'qty', '"2 in"'],
    ['02', undefined, 'qty', '"02"'],
    ['2 # two', undefined, 'qty', '"2 # two"'],
    ['99999999999999999999', undefined, 'qty', '"99999999999999999999"'],
    ['5', undefined, 'depth', '"5"'],
    ['yes', undefined, 'taxed', '"yes"'],
    ['2', 'string', 'qty', '"2"'],
    ['=1+1', 'integer', 'qty', '"=1+1"'],
    ['2.5', 'integer', 'qty', '2.5'],
    ['false', 'boolean', 'taxed', 'false'],
    ['no', 'boolean', 'taxed', '"no"'],
    ['["a", "b"]', 'array', 'note', '["a", "b"]'],
    ['a, b', 'array', 'note', '"a, b"'],
  ] as const)('[J12] %j over a %s in %s is written %s', (text, form, key, written) => {
    const old = form === undefined ? undefined : cell(form);
    expect(valueText(text, old, columnOf('part', key))).toBe(written);
  });

  test('[J12] dates and lists by their column', () => {
    const date = columnOf('job', 'date');
    expect(valueText('2026-11-25', undefined, date)).toBe('2026-11-25');
    expect(valueText('2026-13-45', undefined, date)).toBe('"2026-13-45"');
    expect(valueText('["base"]', undefined, columnOf('kind', 'on'))).toBe('["base"]');
    expect(valueText('2', undefined, undefined)).toBe('"2"');
  });
});

describe('keyText', () => {
  test('[J22] words that are no bare keys are quoted', () => {
    expect(keyText('draw.glue.use')).toBe('draw.glue.use');
    expect(keyText('set.at x')).toBe('set."at x"');
  });
});

describe('orderNumbers', () => {
  const order = (...orders: readonly (number | undefined)[]): readonly number[] =>
    orderNumbers(orders.map((one, index) => ({ id: `r${String(index)}`, order: one })));

  test('[J9] numbers that stand are kept where the others fit between', () => {
    expect(order(undefined, undefined)).toEqual([1000, 2000]);
    expect(order(1400, undefined, undefined)).toEqual([1400, 2000, 3000]);
    expect(order(1000, undefined, undefined, undefined, 2000)).toEqual([
      1000, 1250, 1500, 1750, 2000,
    ]);
    expect(order(1, undefined, undefined, 2)).toEqual([1, 1 + 1 / 3, 1 + 2 / 3, 2]);
    expect(order(undefined, undefined, 1)).toEqual([-1333, -666, 1]);
  });

  test('[J9] where no number fits the rows behind are numbered anew, all rising', () => {
    const numbers = order(5, undefined, 5, 5, 6);
    expect(numbers[0]).toBe(5);
    expect(numbers.at(-1)).toBe(6);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(new Set(numbers).size).toBe(5);
    const huge = order(Number.MAX_VALUE, undefined, Number.MAX_VALUE);
    expect(huge).toHaveLength(3);
  });
});

describe('nearestWord', () => {
  test('finds what a slip meant and nothing far off', () => {
    const words = ['material', 'width', 'depth', 'tilt'];
    expect(nearestWord('materail', words)).toBe('material');
    expect(nearestWord('tlt', words)).toBe('tilt');
    expect(nearestWord('zebra', words)).toBeUndefined();
    expect(nearestWord('x'.repeat(100), words)).toBeUndefined();
  });
});

describe('upgradeChanges', () => {
  const steps = [
    {
      from: 1,
      changes: ({ text }: { readonly text: string }) => {
        const start = text.indexOf('lean');
        return start === -1 ? [] : [{ start, end: start + 4, text: 'tilt' }];
      },
    },
    { from: 2, changes: () => [] },
  ];
  const old = 'format = 1 # first\n\n[[part]]\nid = "a"\nlean = "5 deg"\n';

  test('[J2] a file of this format needs no step', () => {
    const result = upgradeChanges(readFile(old));
    expect(result.ok && result.value).toEqual([]);
  });

  test('[J2] steps are taken one format at a time and change only what they must', () => {
    const result = upgradeChanges(readFile(old), { steps, format: 3 });
    expect(result.ok && changedText(old, result.value)).toBe(
      old.replace('1', '3').replace('lean', 'tilt'),
    );
    expect(result.ok && result.value).toHaveLength(2);
  });

  test('[J2] a file without a format line gets one', () => {
    const result = upgradeChanges(readFile('[job]\n'), { steps, format: 2 });
    expect(result.ok && changedText('[job]\n', result.value)).toBe('format = 2\n[job]\n');
  });

  test('[J2] a step that is not there is told', () => {
    const result = upgradeChanges(readFile(old), { steps, format: 4 });
    expect(result.ok ? '' : result.problem.message).toContain('from format 3 to 4');
  });
});
