import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { brokenJob, smallJob, testWorld } from '../helpers/test-world.ts';

const files = {
  'jobs/shelf.paneljob': smallJob,
  'jobs/broken.paneljob': brokenJob,
  'jobs/lost.paneljob': smallJob.replace(
    'currency = "USD"',
    'currency = "USD"\nbook = "../no.panelbook"',
  ),
};

function ran(...args: readonly string[]) {
  const world = testWorld(files);
  const code = run(args, world);
  return { code, ...world.written() };
}

function json(text: string): unknown {
  return JSON.parse(text);
}

describe('run calc', () => {
  test('prints what a formula comes to', () => {
    expect(ran('calc', '=BEARING.OFFSET(1 3/8in, 1 1/8in)')).toEqual({
      code: 0,
      out: '1/8 in\n',
      err: '',
    });
  });

  test('says it to programs on one line', () => {
    expect(ran('calc', '=BEARING.OFFSET(1 3/8in, 1 1/8in)', '--json').out).toBe(
      '{"ok":true,"dimension":"length","base":3.175,"text":"1/8 in"}\n',
    );
  });

  test('the equals sign may be left out, and lengths may be shown in millimetres', () => {
    expect(ran('calc', '2in + 1/4in', '--units', 'mm').out).toBe('57.2 mm\n');
  });

  test.each([
    ['=1in > 2mm', '{"ok":true,"type":"yes-no","text":"yes"}\n'],
    ['=circle(2in)', '{"ok":true,"type":"shape","text":"circle(2 in)"}\n'],
    ['=SHOW(2in, mm)', '{"ok":true,"type":"text","text":"50.8 mm"}\n'],
  ])('answers of other types say their type: %s', (formula, out) => {
    expect(ran('calc', formula, '--json').out).toBe(out);
  });

  test('a formula that has no answer ends with 1 and says why', () => {
    const told = ran('calc', '=1in + 2qt');
    expect([told.code, told.out]).toEqual([1, '']);
    expect(told.err).toContain('a length and a volume cannot be added');
    expect(json(ran('calc', '=1in + 2qt', '--json').out)).toEqual({
      ok: false,
      problem: expect.stringContaining('cannot be added') as string,
    });
  });
});

describe('run estimate', () => {
  test('ends with a short list of cautions; the JSON has their limits, sources and rows', () => {
    const { out } = ran('estimate', 'jobs/shelf.paneljob');
    expect(out).toMatch(
      /\nCautions\. Labels, .*\n {2}Dust of board and filler: .*\n {2}Noise: .*\n {2}Airbags .*\n$/,
    );
    const { cautions } = json(ran('estimate', 'jobs/shelf.paneljob', '--json').out) as {
      readonly cautions: readonly object[];
    };
    expect(cautions).toMatchObject([
      {
        id: 'dust',
        rows: ['board'],
        limits: [{ source: expect.stringContaining('OSHA') as string }, {}, {}, {}],
      },
      { id: 'noise', rows: ['board'] },
      { id: 'airbag', rows: ['board'] },
    ]);
  });

  test('the headline says first that there is no labour in it', () => {
    const { code, out } = ran('estimate', 'jobs/shelf.paneljob');
    expect(code).toBe(0);
    expect(out.split('\n').slice(0, 4)).toEqual([
      'One shelf',
      'Demo client',
      expect.stringMatching(/^Charge \d+\.\d\d USD, buy \d+\.\d\d USD, 2 panels$/),
      'Materials only, no charges yet; prices are those of the built-in demo book',
    ]);
    expect(out).toMatch(/^ {2}Freight .* 18\.50 USD +18\.50 USD$/m);
    expect(out).toMatch(/^ {2}Hardboard.* 4\.4 sqft /m);
  });

  test('the totals of the JSON are those of its lines', () => {
    const { code, out } = ran('estimate', 'jobs/shelf.paneljob', '--json');
    expect(code).toBe(0);
    const read = json(out) as {
      readonly materials: readonly {
        readonly id: string;
        readonly group: string;
        readonly need: { readonly base: number; readonly unit: string; readonly text: string };
        readonly buy: { readonly minor: number; readonly currency: string };
        readonly charge: { readonly minor: number };
        readonly rows: readonly { readonly charge: { readonly minor: number } }[];
      }[];
      readonly totals: {
        readonly buy: { readonly minor: number };
        readonly charge: { readonly minor: number };
        readonly materials: { readonly minor: number };
        readonly complete: boolean;
      };
      readonly problems: readonly { readonly severity: string }[];
    };
    const sum = (pick: (line: (typeof read.materials)[number]) => number): number =>
      read.materials.reduce((total, line) => total + pick(line), 0);
    expect(read.totals.buy.minor).toBe(sum(({ buy }) => buy.minor));
    expect(read.totals.charge.minor).toBe(sum(({ charge }) => charge.minor));
    expect(read.totals.charge.minor).toBe(
      sum(({ rows }) => rows.reduce((total, { charge }) => total + charge.minor, 0)),
    );
    expect(read.totals.complete).toBe(true);
    expect(read.problems.filter(({ severity }) => severity !== 'note')).toEqual([]);
    const board = read.materials.find(({ id }) => id === 'hardboard_6');
    expect(board?.need).toEqual({ base: 408773.376, unit: 'sqft', text: '4.4 sqft' });
    expect(board?.buy.currency).toBe('USD');
    expect(board?.group).toBe('structure');
  });

  test('a job with a fault ends with 1, and the fault has its line', () => {
    const { code, out } = ran('estimate', 'jobs/broken.paneljob');
    expect(code).toBe(1);
    const line = brokenJob.split('\n').findIndex((text) => text.startsWith('price')) + 1;
    expect(out).toContain(`jobs/broken.paneljob:${String(line)}: `);
    expect(out).toContain('incomplete: 1 line without a price or an amount');
    const read = json(ran('estimate', 'jobs/broken.paneljob', '--json').out) as {
      readonly problems: readonly {
        readonly row: string;
        readonly column: string;
        readonly line: number;
      }[];
      readonly totals: { readonly complete: boolean };
    };
    expect(read.problems).toContainEqual(
      expect.objectContaining({ row: 'freight', column: 'price', line }),
    );
    expect(read.totals.complete).toBe(false);
  });

  test('a book that is not there is a problem at the line that names it', () => {
    const { code, out } = ran('estimate', 'jobs/lost.paneljob');
    expect(code).toBe(1);
    expect(out).toContain(
      'jobs/lost.paneljob:9: The shop book ../no.panelbook cannot be read, so the built-in demo book is used.',
    );
  });

  test('the book is looked for beside the job', () => {
    const book = `format = 1

[book]
title = "Shop"
currency = "USD"

[[pack]]
id = "hardboard_6_whole"

material = "hardboard_6"
holds = "32 sqft"
price = "1.00 USD"
`;
    const job = smallJob.replace(
      'currency = "USD"',
      'currency = "USD"\nbook = "../books/shop.panelbook"',
    );
    const world = testWorld({ 'jobs/a.paneljob': job, 'books/shop.panelbook': book });
    expect(run(['estimate', 'jobs/a.paneljob'], world)).toBe(0);
    expect(world.written().out).toMatch(/Hardboard.* 1\.00 USD/);
    expect(world.written().out).not.toContain('demo book');
  });
});

describe('run bom', () => {
  test('each material has the rows that need it below it', () => {
    expect(ran('bom', 'jobs/shelf.paneljob').out).toMatch(
      /^ {2}Hardboard.*\n {4}board +4\.4 sqft/m,
    );
  });

  test('as CSV it is nothing but the bill', () => {
    const { out, code } = ran('bom', 'jobs/broken.paneljob', '--csv');
    expect(code).toBe(1);
    expect(out.split('\r\n')[0]).toMatch(/^Group,Id,Name,Need,Need unit/);
    expect(out.split('\r\n').at(-2)).toMatch(/^Total,/);
    expect(out).not.toContain('cannot be added');
  });
});

describe('run check', () => {
  test('lists the problems of every job', () => {
    const { code, out } = ran('check', 'jobs/shelf.paneljob', 'jobs/broken.paneljob');
    expect(code).toBe(1);
    expect(out).toMatch(/^jobs\/shelf\.paneljob/m);
    expect(out).toMatch(/^jobs\/broken\.paneljob:\d+: .*\[[a-z-]+\]$/m);
  });

  test('says it to programs too', () => {
    const read = json(ran('check', 'jobs/broken.paneljob', '--json').out) as {
      readonly files: readonly { readonly file: string; readonly problems: readonly unknown[] }[];
    };
    expect(read.files.map(({ file }) => file)).toEqual(['jobs/broken.paneljob']);
    expect(read.files[0]?.problems.length).toBeGreaterThan(0);
  });

  test('a text that is no job at all is problems, never a crash', () => {
    for (const text of ['', '<<<<<<< ours\n', '[[part]\nid =', '\u0000\u0001', 'format = 99\n']) {
      const world = testWorld({ a: text });
      expect([0, 1]).toContain(run(['check', 'a'], world));
      expect(world.written().out).not.toBe('');
    }
  });
});

describe('run functions', () => {
  test('lists every function with its example', () => {
    const { out } = ran('functions');
    expect(out).toMatch(/^ {2}BEARING\.OFFSET\(.*\)$/m);
    const read = json(ran('functions', '--json').out) as {
      readonly functions: readonly { readonly name: string; readonly help: string }[];
    };
    expect(read.functions.length).toBeGreaterThan(60);
    expect(read.functions.every(({ help }) => help !== '')).toBe(true);
  });
});

describe('run', () => {
  test('help and version go to the first stream and end with 0', () => {
    expect(ran('--version')).toEqual({ code: 0, out: 'panelwright 1.2.3\n', err: '' });
    expect(ran('--help').out).toContain('panelwright estimate FILE [--json]');
    expect(ran('help', 'calc').out).toContain('--units');
  });

  test('a wrong call goes to the second stream and ends with 2', () => {
    expect(ran('estimat')).toEqual({
      code: 2,
      out: '',
      err: 'panelwright: There is no command estimat. Try panelwright --help.\n',
    });
    expect(ran('estimate', 'nowhere.paneljob').code).toBe(2);
    expect(ran('check', 'jobs/shelf.paneljob', 'nowhere').code).toBe(2);
  });
});
