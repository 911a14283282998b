import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readChange, readFile } from '../../../extension/engine/job/read-file.ts';
import { anyFile, mutated, sample } from './arbitrary-files.ts';

const severalChanges = (text: string): fc.Arbitrary<readonly string[]> =>
  mutated(text).chain((second) =>
    mutated(second).chain((third) => fc.constant([text, second, third])),
  );

describe('readFile', () => {
  test('[J1] the blocks of any text put together are the text, letter by letter', () => {
    fc.assert(
      fc.property(fc.oneof(anyFile, fc.string(), mutated(sample)), (text) => {
        const { blocks } = readFile(text);
        expect(blocks.map((block) => block.text).join('')).toBe(text);
        expect(blocks.every((block) => text.startsWith(block.text, block.start))).toBe(true);
      }),
    );
  });

  test('[J17] any change of a real file gives problems, never an exception', () => {
    fc.assert(
      fc.property(mutated(sample).chain(mutated).chain(mutated), (text) => {
        const reading = readFile(text);
        for (const { fileSpan, message } of reading.problems) {
          // A word in braces is a place that was not filled in, unless the file itself says it.
          const open = message.match(/\{\w+\}/g) ?? [];
          expect(open.filter((word) => !text.includes(word))).toEqual([]);
          if (fileSpan === undefined) continue;
          expect(fileSpan.start).toBeGreaterThanOrEqual(0);
          expect(fileSpan.end).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('[J6] each value stands in the file where its span says', () => {
    fc.assert(
      fc.property(anyFile, (text) => {
        const { blocks, tables } = readFile(text);
        for (const row of [...tables.values()].flat()) {
          const block = blocks[row.block]?.text ?? '';
          for (const [key, cell] of row.cells) {
            const before = block.slice(0, cell.span.start);
            expect(before.slice(before.lastIndexOf('\n') + 1)).toBe(`${key} = `);
            expect('"\'').toContain(block[cell.span.start]);
            expect('"\'').toContain(block[cell.span.end - 1]);
          }
        }
      }),
    );
  });
});

describe('readChange', () => {
  test('[J23] reading a change gives what reading the whole text gives', () => {
    const texts = fc.oneof(severalChanges(sample), anyFile.chain(severalChanges));
    fc.assert(
      fc.property(texts, ([first = '', second = '', third = '']) => {
        const changed = readChange(readFile(first), second);
        expect(changed).toEqual(readFile(second));
        expect(readChange(changed, third)).toEqual(readFile(third));
        expect(readChange(changed, first)).toEqual(readFile(first));
      }),
      { numRuns: 150 },
    );
  });
});
