import { describe, expect, test } from 'vitest';
import { readBook } from '../../../extension/engine/book/read-book.ts';
import { bookOf, kindOf } from '../../helpers/book-of.ts';

const demo = bookOf();
const head = '[book]\ntitle = "Shop"\ncurrency = "USD"\n\n';

describe('readBook', () => {
  test('a job without a book runs on the demo book, which has no faults', () => {
    expect(demo.origin).toBe('demo');
    expect(demo.title).toBe('Demo book');
    expect(demo.currency).toBe('USD');
    expect(demo.problems).toEqual([]);
  });

  test('a kind is one row of a file: here a whole one, as a shop may write it', () => {
    const book = bookOf(`${head}[[kind]]
id = "trim_strip"

name = "Trim strip"
table = "part"
group = "finish"

help = "A strip of wood or metal let into the covering."
on = ["vinyl", "base"]
columns = ["on", "material", "length", "width"]

takes = "strip"
words = "{length} long"
knobs = ["length"]

label.length = "Length"
hint.length = "Length along the front."

label.width = "Width"
hint.width = "Width that is seen."

default.material = "dowel_6"
default.width = "1/2 in"

result.area = "=length*width"

draw.glue.label = "Glue behind it"
draw.glue.material = "wood_glue"
draw.glue.use = "0.1 floz"

rule.length = "=length > 0in"
say.length = "{name} has no length."

steps = ["Rout the groove after the covering has set."]
tools = ["router"]
cautions = ["Small pieces: hold them in a jig."]

tasks = ["upholster"]
`);
    expect(book.problems).toEqual([]);
    const kind = kindOf(book, 'trim_strip');
    expect({ ...kind, labels: undefined, helps: undefined }).toEqual({
      id: 'trim_strip',
      name: 'Trim strip',
      table: 'part',
      group: 'finish',
      help: 'A strip of wood or metal let into the covering.',
      on: ['vinyl', 'base'],
      columns: ['on', 'material', 'length', 'width', 'hand', 'qty', 'per', 'waste', 'note'],
      takes: 'strip',
      words: '{length} long',
      knobs: ['length'],
      labels: undefined,
      helps: undefined,
      defaults: new Map([
        ['qty', '1'],
        ['per', 'panel'],
        ['hand', 'both'],
        ['material', 'dowel_6'],
        ['width', '1/2 in'],
      ]),
      results: new Map([['area', '=length*width']]),
      draws: [
        {
          name: 'glue',
          label: 'Glue behind it',
          cells: new Map([
            ['material', 'wood_glue'],
            ['use', '0.1 floz'],
          ]),
        },
      ],
      rules: [{ name: 'length', formula: '=length > 0in', say: '{name} has no length.' }],
      steps: ['Rout the groove after the covering has set.'],
      tools: ['router'],
      cautions: ['Small pieces: hold them in a jig.'],
      hazards: [],
      checks: [],
      tasks: ['upholster'],
      waits: false,
      source: '',
    });
    expect(kind.labels.get('length')).toBe('Length');
    expect(kind.labels.get('hand')).toBe('Hand');
  });

  test('a shop lays its book over the built-in one key by key, a job lays its rows over both', () => {
    const book = bookOf(
      `${head}[[material]]
id = "poly_resin"
density = "1.13 g/cm3"

[[constant]]
id = "fleece_uptake"
value = "2200 g/m2"
source = "own log"

[[kind]]
id = "filler"
default.layers = 3
`,
      `[[constant]]
id = "fleece_uptake"
value = "1800 g/m2"

[[material]]
id = "client_hide"
name = "The client's hide"
form = "sheet"
`,
    );
    const resin = book.materials.get('poly_resin');
    expect(resin?.origin).toBe('book');
    expect(resin?.cells.get('density')).toBe('1.13 g/cm3');
    expect(resin?.cells.get('name')).toBe('Polyester laminating resin');
    const uptake = book.constants.get('fleece_uptake');
    expect(uptake?.cells.get('value')).toBe('1800 g/m2');
    expect(uptake?.cells.get('source')).toBe('own log');
    expect(uptake?.origin).toBe('job');
    expect(book.materials.get('client_hide')?.origin).toBe('job');
    expect(kindOf(book, 'filler').defaults.get('layers')).toBe('3');
    expect(kindOf(book, 'filler').defaults.get('thickness')).toBe('=book.filler_pass');
  });

  test('an empty text takes a built-in default away', () => {
    const book = bookOf(`${head}[[kind]]\nid = "resin"\ndefault.percent = ""\n`);
    expect(kindOf(book, 'resin').defaults.has('percent')).toBe(false);
  });

  test('invented prices go as soon as a shop has a book of its own', () => {
    expect(demo.packs.length).toBeGreaterThan(40);
    const book = bookOf(`${head}[[pack]]
id = "resin_pail"
material = "poly_resin"
holds = "5 gal"
price = "240 USD"
`);
    expect(book.packs.map(({ id }) => id)).toEqual(['resin_pail']);
    expect(book.materials.has('fleece')).toBe(true);
    expect(kindOf(demo, 'labour').defaults.get('rate')).toBe('68 USD/h');
    expect(kindOf(book, 'labour').defaults.has('rate')).toBe(false);
  });

  test.each([
    [
      '[[kind]]\nid = "sub_box"\ntable = "part"\non = ["bass"]\n',
      ['kind-name-missing', 'kind-on-unknown'],
    ],
    ['[[kind]]\nid = "fin"\nname = "Fin"\ngroup = "top"\n', ['kind-word-unknown']],
    ['[[kind]]\nid = "fin"\nname = "Fin"\ncolumns = ["depth"]\n', ['kind-label-missing']],
    ['[[kind]]\nid = "fin"\nname = "Fin"\nrule.low = "=qty > 0"\n', ['kind-rule-unsaid']],
    ['[[kind]]\nid = "fin"\nname = "Fin"\ndraw.glue.use = "1 floz"\n', ['draw-material-missing']],
    ['[[kind]]\nid = "fin"\nname = "Fin"\ndefault.material = "oak"\n', ['material-unknown']],
    ['[[material]]\nid = "oak"\nname = "Oak"\n', ['material-form-unknown']],
    [
      '[[pack]]\nid = "oak_1"\nmaterial = "oak"\nholds = 1\nprice = "3 USD"\n',
      ['pack-material-unknown'],
    ],
    ['[[pack]]\nid = "cloth"\nmaterial = "fleece"\nholds = "1 yd"\n', ['pack-incomplete']],
    [
      '[[pack]]\nid = "cloth"\nmaterial = "fleece"\nstep = "1 yd"\nrate = "9 EUR/yd"\n',
      ['pack-currency-differs'],
    ],
    ['[[constant]]\nid = "drop"\nname = "One drop"\n', ['constant-blank']],
    [
      '[[band]]\nid = "hot"\nchart = "catalyst"\nfrom = "35 degC"\nvalue = "1 %"\n',
      ['band-incomplete'],
    ],
    ['[[question]]\nid = "q"\nkit = "pod"\nkey = "a"\n', ['kit-unknown']],
    [
      '[[kit]]\nid = "pod"\nname = "Pod"\n\n[[kit_row]]\nid = "r"\nkit = "pod"\ntable = "part"\nrow = "{id}_x"\n',
      ['kit-key-unknown'],
    ],
    [
      '[[kit]]\nid = "pod"\nname = "Pod"\n\n[[kit_row]]\nid = "r"\nkit = "pod"\n',
      ['kit-id-missing'],
    ],
  ])('a faulty row is told by name and the rest still serves: %j', (rows, codes) => {
    const book = bookOf(head + rows);
    expect(book.problems.map(({ code }) => code)).toEqual(codes);
    expect(book.kinds.size).toBeGreaterThan(40);
    for (const { message } of book.problems) expect(message).not.toMatch(/\{\w+\}/);
  });

  test('a constant that stands twice in the shop book is told, the last one counts', () => {
    const row = (value: string): string => `[[constant]]\nid = "drop"\nvalue = "${value}"\n\n`;
    const book = bookOf(`${head}${row('0.05 ml')}${row('0.06 ml')}`);
    expect(book.problems.map(({ code }) => code)).toEqual(['book-file-faulty']);
    expect(book.constants.get('drop')?.cells.get('value')).toBe('0.06 ml');
  });

  test('a book in another currency than the job cannot price it', () => {
    const book = readBook({ job: new Map(), currency: 'EUR' });
    expect(book.problems.map(({ message }) => message)).toEqual([
      'This job is in EUR but its shop book is in USD; give the job a book in EUR or change its currency.',
    ]);
  });

  test('a book with a broken block says so in one problem and serves with the rest', () => {
    const book = bookOf(
      `${head}[[constant]]\nid = "drop"\nvalue = 0.05 ml\n\n[[constant]]\nid = "cup"\nvalue = "200 ml"\n`,
    );
    expect(book.problems.map(({ code }) => code)).toEqual(['book-file-faulty']);
    expect(book.constants.get('cup')?.cells.get('value')).toBe('200 ml');
  });
});
