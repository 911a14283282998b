import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { processWorld } from '../../extension/command-line/files.ts';
import { run } from '../../extension/command-line/run.ts';
import { charge, cost, task } from '../helpers/priced-job.ts';
import { readPdf } from '../helpers/read-pdf.ts';

const folder = mkdtempSync(join(tmpdir(), 'panelwright-git-'));
const jobs = join(folder, 'jobs');
const door = join(jobs, 'door.paneljob');

function git(...args: readonly string[]): string {
  const person = ['-c', 'user.name=Demo Shop', '-c', 'user.email=shop@example.invalid'];
  return execFileSync('git', [...person, ...args], { cwd: folder, encoding: 'utf8' });
}

function committed(file: string, text: string, subject: string): void {
  writeFileSync(file, text);
  git('add', '-A');
  git('commit', '-q', '-m', subject);
}

function ran(...args: readonly string[]): { code: number; out: string; err: string } {
  const streams = { out: '', err: '' };
  const code = run(args, {
    ...processWorld(),
    out: (text) => {
      streams.out += text;
    },
    err: (text) => {
      streams.err += text;
    },
  });
  return { code, ...streams };
}

const head = 'format = 1\n\n[job]\ntitle = "Door"\n\nunits = "in"\ncurrency = "USD"\n\n';

// 2 h at 50 and 100 of goods, 10 % on both: 220. 3 h: 275. Goods of 120: 297.
const first = [
  head,
  cost('goods', '100 USD'),
  task('work', '120 min'),
  charge('hours', 'labour', { rate: '50 USD/h' }),
  charge('spare', 'contingency', { percent: '10 %' }),
].join('');
const second = first.replace('120 min', '180 min');
const third = second.replace("'100 USD'", "'120 USD'");

beforeAll(() => {
  git('init', '-q', '-b', 'main');
  mkdirSync(jobs);
  committed(join(jobs, 'old-name.paneljob'), first, 'Quote the door');
  git('tag', 'quoted');
  committed(join(jobs, 'old-name.paneljob'), second, 'An hour more');
  renameSync(join(jobs, 'old-name.paneljob'), door);
  committed(door, second, 'Call it door');
  committed(door, third, 'Better goods');
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('diff', () => {
  test('two files, with what each change does and what all come to', () => {
    const other = join(folder, 'other.paneljob');
    writeFileSync(other, first);
    const { code, out } = ran('diff', other, door);
    expect(code).toBe(1);
    expect(out).toContain('~ part goods');
    expect(out).toMatch(/time +120 min → 180 min +\+55\.00 USD/);
    expect(out).toMatch(/Price before tax +220\.00 USD +297\.00 USD +\+77\.00 USD/);
    expect(out).toMatch(/Hours +2 h +3 h +\+1 h/);
    rmSync(other);
  });

  test('a revision and the file as it is now', () => {
    const { code, out } = ran('diff', `HEAD~1:${door}`, door);
    expect(code).toBe(1);
    expect(out).toMatch(/price +100 USD → 120 USD +\+22\.00 USD/);
    expect(out).not.toContain('180 min');
    expect(ran('diff', `HEAD:${door}`, door)).toMatchObject({ code: 0, out: 'No cell differs.\n' });
  });

  test('a file that is called otherwise in the revision is named as it was', () => {
    const was = `quoted:${join(jobs, 'old-name.paneljob')}`;
    const { code, out } = ran('diff', was, door, '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      same: false,
      booksDiffer: false,
      rows: [
        { id: 'goods', cells: [{ column: 'price', price: { minor: 2200, currency: 'USD' } }] },
        { id: 'work', before: { minutes: 120 }, after: { minutes: 180 } },
      ],
      follow: [{ id: 'hours' }, { id: 'spare' }],
    });
  });

  test('what is missing is told, and ends with 2', () => {
    const faults = [
      [`nowhere:${door}`, 'has no revision nowhere'],
      [`quoted:${door}`, `quoted has no file ${door}`],
      [join(folder, 'none.paneljob'), 'cannot be read'],
      [`--output=x:${door}`, '--output'],
    ] as const;
    for (const [name, told] of faults) {
      const { code, err } = ran('diff', '--', name, door);
      expect(code).toBe(2);
      expect(err).toContain(told);
    }
  });

  test('without git, and outside of a repository', () => {
    const lone = mkdtempSync(join(tmpdir(), 'panelwright-lone-'));
    const file = join(lone, 'lone.paneljob');
    writeFileSync(file, first);
    expect(ran('diff', `HEAD:${file}`, file).err).toContain('is in no git repository');
    rmSync(lone, { recursive: true });
    let err = '';
    const world = {
      ...processWorld(),
      git: () => ({ status: -1, out: '' }),
      err: (text: string) => {
        err += text;
      },
    };
    expect(run(['diff', `HEAD:${door}`, door], world)).toBe(2);
    expect(err).toContain('git cannot be run here');
  });

  test('a version with conflict markers is refused', () => {
    const torn = join(folder, 'torn.paneljob');
    writeFileSync(torn, `${first}<<<<<<< a\n=======\n>>>>>>> b\n`);
    expect(ran('diff', torn, door).code).toBe(2);
    rmSync(torn);
  });
});

describe('history', () => {
  test('who changed a cell, when, in which commit, and the price each time', () => {
    const { code, out } = ran('history', door, 'work.minutes');
    expect(code).toBe(0);
    const [, now = '', was = ''] = out.split('\n');
    expect(now).toMatch(
      /^180 min +275\.00 USD +\d{4}-\d\d-\d\d \d\d:\d\d +Demo Shop +\w{10} +An hour more$/,
    );
    expect(was).toMatch(/^120 min +220\.00 USD .+ Quote the door$/);
  });

  test('a change that is not committed stands first', () => {
    writeFileSync(door, third.replace('120 USD', '130 USD'));
    const { out } = ran('history', door, 'goods.price', '--json');
    writeFileSync(door, third);
    expect(JSON.parse(out)).toMatchObject({
      cell: 'goods.price',
      changes: [
        { text: '130 USD', commit: null, price: { minor: 30800 } },
        { text: '120 USD', subject: 'Better goods', price: { minor: 29700 } },
        { text: '100 USD', subject: 'Quote the door', author: 'Demo Shop' },
      ],
    });
  });

  test('a cell that is not there is refused', () => {
    const { code, err } = ran('history', door, 'nobody.size');
    expect(code).toBe(2);
    expect(err).toContain('has no cell nobody.size');
  });
});

describe('changeorder', () => {
  const since = ['--since', 'HEAD~1'] as const;

  test('the client’s copy tells the price before and after, and no hours', () => {
    const { code, out } = ran('changeorder', door, ...since);
    expect(code).toBe(0);
    expect(out).toContain('Change order');
    expect(out).toContain('+22.00 USD');
    expect(out).not.toContain('Hours');
  });

  test('the shop’s copy has hours; it is written where it is wanted', () => {
    const page = join(folder, 'order.html');
    expect(ran('changeorder', door, ...since, '--shop', '--out', page).out).toBe(`${page}\n`);
    expect(processWorld().read(page)).toContain('Hours (shop copy)');
    rmSync(page);
  });

  test('a name that ends in .pdf brings a PDF, on the sheets that are named; it tells the commit', async () => {
    const file = join(folder, 'order.pdf');
    const asked = ['changeorder', door, ...since, '--out', file] as const;
    expect(ran(...asked, '--paper', 'a4').out).toBe(`${file}\n`);
    const { title, pages } = await readPdf(new Uint8Array(readFileSync(file)));
    rmSync(file);
    expect(title).toContain('Change order');
    expect(pages.map(({ width }) => Math.round(width))).toEqual([595]);
    const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(said).toContain('+22.00 USD');
    expect(said.replace(/\s+/g, ' ')).toMatch(/Version of the file: [0-9a-f]{10}(?! ?,)/);
    expect(ran(...asked, '--paper', 'a3').code).toBe(2);
  });

  test('without what it changes there is none', () => {
    expect(ran('changeorder', door).err).toContain('--since');
    expect(ran('changeorder', door, '--since', 'nowhere').code).toBe(2);
  });
});
