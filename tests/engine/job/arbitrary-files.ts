import fc from 'fast-check';
import { coreColumns } from '../../../extension/engine/job/columns.ts';
import { quotedText } from '../../../extension/engine/job/write-value.ts';

/** The job of docs/job-file.md, as a person keeps it. */
export const sample = `format = 1

# Quoted by telephone, to be measured again.
[job]
title = "Front door pair"
client = "Demo client"
vehicle = "Demo coupe"

date = 2026-11-25

units = "in"
currency = "USD"

book = "../books/demo-shop.panelbook"
temperature = "70 degF"

[[panel]]
id = "door"

name = "Front door"
hands = "pair"

order = 1000

[[driver]]
id = "mid"

name = "Midbass, 6 1/2 in nominal, measured"
frame = "6 5/8 in"
cutout = "5 5/8 in"

depth = "2 3/4 in" # with the terminals
magnet = "3 1/2 in"

order = 1000

[[measure]]
id = "cavity"

name = "Base plane to window track, glass down"
value = "2 1/2 in"
sure = "measured"

order = 1000

# ---- what stands on the door ----

[[part]]
id = "base"

name = "Base panel"
kind = "base"

material = "hardboard_6"

shape = "roundrect(26in, 15in, 2in)"

order = 1000

# The left one needs the wider ring.
[[part]]
id = "mid_ring"

name = "Midbass ring"
kind = "ring"

on = "base"
driver = "mid"
material = "panelboard_3"

size = "8 in"

depth = "=ROUNDUPTO(MAX(RING.DEPTH(driver.depth, job.cavity, 1/4in, tilt, driver.magnet), RING.LEAST(size, tilt, 5/8in)), 1/8in)"
# as the client sits
tilt = "15 deg"

qty = 2

order = 2000

[[part]]
id = "skin"

name = "Cloth skin"
kind = "skin"

on = "base"

draw.staples.use = "=STAPLE.COUNT(base.perimeter, 1in)"

note = '''
Stretch over "mid_ring" first.
# not a remark
'''

order = 3000

[[task]]
id = "fit"

name = "Hang the door"
kind = "fit"

on = "base"

basis = "=mid_ring.depth + SUM(on(base, ring).wall) / 1in"

order = 1000
`;

const word = fc.stringMatching(/^[a-z]{3}_[a-z]{2,6}$/);

const cellText = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('8 in', '15 deg', '=size + 1in', 'base', '2', '1/4 in') },
  { weight: 2, arbitrary: fc.string({ unit: 'grapheme', maxLength: 20 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('a "b" c', "it's", 'both " and \'', '\\', '#', 'a\nb', ''),
  },
);

function valueOf(text: string, style: number): string {
  if (style === 1 && !/['\r\n\p{Cc}]/u.test(text)) return `'${text}'`;
  if (style === 2 && !/["\\\r\p{Cc}]/u.test(text)) return `"""\n${text}"""`;
  return quotedText(text);
}

const remark = fc.constantFrom('# a remark', '  # "quoted" [[part]]', '#');

function keyLines(key: string): fc.Arbitrary<readonly string[]> {
  return fc
    .record({
      text: cellText,
      style: fc.nat(3),
      above: fc.option(remark, { freq: 6 }),
      behind: fc.boolean(),
      blank: fc.nat(2),
    })
    .map(({ text, style, above, behind, blank }) => [
      ...(blank === 0 ? [''] : []),
      ...(above === null ? [] : [above]),
      `${key} = ${valueOf(text, style)}${behind && style === 0 ? ' # why' : ''}`,
    ]);
}

const tables = ['panel', 'driver', 'measure', 'part', 'task', 'check'];

function rowLines(table: string): fc.Arbitrary<readonly string[]> {
  const keys = [...coreColumns(table).map((column) => column.key), 'odd_key', 'draw.glue.use'];
  return fc
    .record({
      id: word,
      keys: fc
        .subarray(keys, { maxLength: Math.min(6, keys.length) })
        .chain((some) => fc.tuple(...some.map(keyLines))),
      order: fc.option(fc.integer({ min: -5, max: 9000 }), { freq: 5 }),
      above: fc.constantFrom([], ['# about this row'], ['', '# set off', '']),
    })
    .map(({ id, keys: lines, order, above }) => [
      '',
      ...above,
      `[[${table}]]`,
      `id = "${id}"`,
      ...lines.flat(),
      ...(order === null ? [] : ['', `order = ${String(order)}`]),
    ]);
}

/** Job files as they may be: any spacing, remarks, quoting, unknown keys, with or without order. */
export const anyFile: fc.Arbitrary<string> = fc
  .record({
    rows: fc.array(fc.constantFrom(...tables).chain(rowLines), { maxLength: 8 }),
    top: fc.constantFrom(['format = 1'], ['# mine', 'format = 1', ''], []),
    head: fc.constantFrom(['', '[job]', 'title = "x"', 'units = "in"'], []),
    newline: fc.constantFrom('\n', '\n', '\r\n'),
    last: fc.boolean(),
  })
  .map(({ rows, top, head, newline, last }) => {
    const lines = [...top, ...head, ...rows.flat()].flatMap((line) => line.split('\n'));
    return lines.join(newline) + (last && lines.length > 0 ? newline : '');
  });

/** A change of a text as hands and merges make it: something cut out, something put in. */
export function mutated(text: string): fc.Arbitrary<string> {
  const bits = [
    '"',
    '"""',
    "'''",
    '[',
    ']',
    '[[part]]\n',
    '\n',
    '=',
    '#',
    'x',
    '\r',
    '\\',
    ' = 1\n',
  ];
  const piece = fc.oneof(
    fc.constantFrom(...bits, '<<<<<<< ours\n', '=======\n', '>>>>>>> theirs\n', 'id = "base"\n'),
    fc.string({ maxLength: 8 }),
    fc
      .record({ from: fc.nat(text.length), length: fc.nat(80) })
      .map(({ from, length }) => text.slice(from, from + length)),
  );
  return fc
    .record({ at: fc.nat(text.length), cut: fc.oneof(fc.nat(3), fc.nat(200)), piece })
    .map((change) => text.slice(0, change.at) + change.piece + text.slice(change.at + change.cut));
}
