import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { testWorld } from '../helpers/test-world.ts';

/** What `panelwright check` says of a job with these rows in it. */
function checked(...rows: readonly string[]): string {
  const head = 'format = 1\n\n[job]\ntitle = "Traps"\n\nunits = "in"\ncurrency = "USD"\n';
  const world = testWorld({ 'job.paneljob': [head, ...rows].join('\n') });
  run(['check', 'job.paneljob'], world);
  const { out, err } = world.written();
  return `${out}${err}`;
}

function row(table: string, id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `[[${table}]]\nid = "${id}"\n\n${lines.join('\n')}\n`;
}

const base = row('part', 'base', { kind: 'base', shape: 'roundrect(26 in, 15 in, 2 in)' });
const skin = row('part', 'skin', { kind: 'skin', on: 'base' });

// Each trap as a fabricator steps into it: what is named, the value with its unit, and the way out.
describe('panelwright check names the trap', () => {
  test.each<readonly [string, readonly string[], RegExp]>([
    [
      'a bare oz for a liquid',
      [base, skin, row('part', 'coat', { kind: 'resin', on: 'skin', use: '24 oz' })],
      /coat: use says 24 oz\. A bare oz is a weight, 20\.92 floz of .*write 24 floz; weighed, write it in g or lb/,
    ],
    [
      'ounces of the square yard for mat',
      [row('material', 'csm', { name: 'Chopped mat', form: 'roll', weight: '1.5 oz/sqyd' })],
      /Chopped mat weighs 1\.5 oz by the square yard, 50\.86 g\/m2\. Mat is sold by the square foot.*write 1\.5 oz\/sqft/,
    ],
    [
      'a percent by volume where the shop takes it by mass',
      [
        base,
        skin,
        row('part', 'coat', {
          kind: 'resin',
          on: 'skin',
          use: '1 pt',
          'draw.catalyst.use': '=MIX.QUANTITY(use, percent, by_volume, 1.1g/cm3, 1.12g/cm3)',
        }),
      ],
      /takes the percent by volume, but the shop’s book says by mass\. The two differ by 1\.8 %.*Write book\.mix_basis/,
    ],
    [
      'drops that nobody counted',
      [row('measure', 'drops', { value: '=MIX.DROPS(5ml, book.catalyst_drop)' })],
      /counts in drops of 0\.05 ml, which nobody measured here\. Count how many drops fill 2 ml/,
    ],
    [
      'cement for one face',
      [
        base,
        row('part', 'glue', {
          kind: 'adhesive',
          on: 'base',
          material: 'contact_cement',
          use: '=GLUE.NEED(8sqft, 1, book.dry_coat, material.solids)',
        }),
      ],
      /spreads Contact cement, brush on one face\. Contact cement goes on both: write 2 for the faces/,
    ],
    [
      'coated area taken for bonded area',
      [
        base,
        row('part', 'glue', {
          kind: 'adhesive',
          on: 'base',
          material: 'spray_glue',
          use: '=ROUNDUPTO(8sqft/GLUE.COVERAGE(500g, 13%, 0.5g/sqft), 1)',
        }),
      ],
      /divides by a coverage, which counts coated area\..*100 sq ft of coverage bond 50/,
    ],
    [
      'a margin written as a markup',
      [row('charge', 'keep', { name: 'Margin', kind: 'markup', percent: '30 %' })],
      /a markup of 30 % leaves a margin of 23\.1 %\. If 30 % is the margin that is meant, the markup is 42\.9 %/,
    ],
    [
      'the nominal size of a driver',
      [row('driver', 'mid', { name: 'Midbass 6 1/2 in', frame: '7 in', cutout: '6 1/2 in' })],
      /its cut-out of 6 1\/2 in is the nominal size in its name\..*4\.88 to 5\.78 in\. Measure the driver in hand/,
    ],
    [
      'a leaning ring of the wrong build',
      [
        base,
        row('part', 'ring', {
          ...{ kind: 'ring', on: 'base', size: '8 in', depth: '2 in' },
          ...{ tilt: '15 deg', build: 'round_tube' },
        }),
      ],
      /built as round_tube at 15 deg its lip is oval.*build it as round_baffle: the strip is then ≈ 7\/16 in shorter/,
    ],
    [
      'the nominal thickness of a board',
      [base.replace("'\n", "'\nmaterial = 'plywood_6'\nthickness = '1/4 in'\n")],
      /1\/4 in is a nominal thickness; Plywood.* measures 6\.5 mm in the book\. Leave the thickness blank/,
    ],
    [
      'an area where a blank is meant',
      [base, skin, row('part', 'cover', { kind: 'vinyl', on: 'skin', use: '15 sqft' })],
      /15 sqft of Automotive vinyl, 54 in is an area, but it is bought by the length.*give the length and width of the blank/,
    ],
  ])('%s', (_, rows, sentence) => {
    const told = checked(...rows);
    expect(told).toMatch(sentence);
    // Each is told once, with its line.
    const lines = told.split('\n').filter((line) => sentence.test(line));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^job\.paneljob:\d+: warning: /);
  });
});
