import { describe, expect, test, vi } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { demoBook, doorPair, replaced } from '../helpers/sample-session.ts';
import { testWorld } from '../helpers/test-world.ts';

vi.setConfig({ testTimeout: 60_000 });

const job = 'jobs/door.paneljob';
const book = 'jobs/books/demo-shop.panelbook';

function ran(args: readonly string[], more: Readonly<Record<string, string>> = {}, piped = '') {
  const world = testWorld({ [job]: doorPair, [book]: demoBook, ...more }, piped);
  const code = run(args, world);
  return { code, ...world.written(), file: (name: string) => String(world.files.get(name) ?? '') };
}

describe('run freeze', () => {
  test('lists the prices and writes them only where that is asked for', () => {
    const shown = ran(['freeze', job, '--date', '2026-11-25']);
    expect(shown.code).toBe(0);
    expect(shown.out).toMatch(/^board_sheet +18 USD$/m);
    expect(shown.out).toContain('Nothing is written; --write writes jobs/door.paneljob.');
    expect(shown.file(job)).toBe('');
    const { file } = ran(['freeze', job, '--date', '2026-11-25', '--write']);
    expect(file(job)).toContain('[[price]]\nid = "board_sheet"');
    const frozen = file(job);
    expect(ran(['freeze', job, '--release', '--write'], { [job]: frozen }).file(job)).toBe(
      doorPair,
    );
  });

  test('a price that rose since is told by bom, with what it does to the materials', () => {
    const frozen = ran(['freeze', job, '--date', '2026-11-25', '--write']).file(job);
    const dearer = replaced(
      demoBook,
      'holds = "1536 sqin"\nprice = "18 USD"',
      'holds = "1536 sqin"\nprice = "27 USD"',
    );
    const { out, err } = ran(['bom', job], { [job]: frozen, [book]: dearer });
    expect(err).toContain('[price-drifted]');
    expect(out).toMatch(/prices frozen on 2026-11-25: .* at today’s prices/);
  });

  test('a day is needed', () => {
    expect(ran(['freeze', job])).toMatchObject({ code: 2 });
  });
});

describe('run prices', () => {
  test('a list is held against the book; certain matches are written', () => {
    const list = 'name,holds,price\nAcetone,1 qt,13.25\nMoon rock,,5\n';
    const { out, file } = ran(['prices', book, '--date', '2026-12-01', '--write'], {}, list);
    expect(out).toContain('12 USD → 13.25 USD  +10.4 %');
    expect(out).toContain('No pack of the book is like it.');
    expect(out).toContain('1 of 2 prices are news.');
    expect(file(book)).toContain('price = "13.25 USD"');
    expect(file(book)).toContain('date = 2026-12-01');
  });
});

describe('run substitute', () => {
  test('tells what follows the thickness, the money and the problems before it is written', () => {
    const { code, out, file } = ran(['substitute', job, 'hardboard_6', 'mdf_12']);
    expect(code).toBe(0);
    expect(out).toMatch(/^takes it: .*\(material\)$/m);
    expect(out).toMatch(/thickness +1\/4 in → 1\/2 in/);
    expect(out).toMatch(/materials in the price +\d+\.\d\d USD → \d+\.\d\d USD/);
    expect(file(job)).toBe('');
    const written = ran(['substitute', job, 'hardboard_6', 'mdf_12', '--write']).file(job);
    expect(written).toContain('material = "mdf_12"');
    expect(written).not.toContain('hardboard_6');
  });

  test('a material that is not there is refused with what may stand in its place', () => {
    const { code, err } = ran(['substitute', job, 'hardboard_6', 'oak']);
    expect(code).toBe(2);
    expect(err).toContain('In the place of hardboard_6 may stand: ');
  });
});

describe('run bookout', () => {
  test('offcuts and rests go into the book that the job names', () => {
    const { code, out, file } = ran(['bookout', job, '--write']);
    expect(code).toBe(0);
    expect(out).toMatch(/offcut of .* to the shelf/);
    expect(file(book)).toMatch(/\[\[pack\]\]\nid = "\w+_off"/);
  });

  test('a job without a book has no shelf', () => {
    const alone = doorPair.replace(/^book = .*\n/m, '');
    expect(ran(['bookout', job], { [job]: alone })).toMatchObject({ code: 2 });
  });
});
