import { expect, test } from 'vitest';
import { censusAfter, takeCensus } from '../../../extension/engine/job/block-census.ts';
import { resplitText, splitText } from '../../../extension/engine/job/split-blocks.ts';

const text = 'format = 1\n\n[job]\ntitle = "Lids"\n\n[[part]]\nid = "lid"\nname = "Lid"\n';

/** The census after a change, worked out from the one before and from the ground. */
function both(next: string) {
  const split = splitText(text);
  const census = takeCensus(split);
  const resplit = resplitText(split, text, next);
  return {
    census,
    after: censusAfter({ split, census }, resplit),
    fresh: takeCensus(resplit.split),
  };
}

test('tells heads, and whether anything can be shown', () => {
  const census = takeCensus(splitText(text));
  expect(census).toEqual({ heads: [1], conflicted: false, broken: false, shown: true });
});

test('is the same one where a cell changes', () => {
  const { census, after } = both(text.replace('"Lid"', '"Top lid"'));
  expect(after).toBe(census);
});

test.each([
  ['a row cannot be read any more', text.replace('id = "lid"', 'id = lid"')],
  ['conflict markers come', text.replace('name', '<<<<<<< ours\nname')],
  ['a row comes', `${text}\n[[part]]\nid = "ring"\n`],
  ['the head goes', text.replace('[job]\ntitle = "Lids"\n', '')],
  ['a second head comes', `${text}\n[job]\ntitle = "Again"\n`],
])('is taken anew where %s', (_, next) => {
  const { census, after, fresh } = both(next);
  expect(after).toEqual(fresh);
  expect(after).not.toEqual({ ...census, shown: false });
});
