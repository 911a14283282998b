import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { testWorld } from '../helpers/test-world.ts';
import { charge, cost, task } from '../helpers/priced-job.ts';

const job = [
  'format = 1\n\n[job]\ntitle = "One shelf"\n\nunits = "in"\ncurrency = "USD"\n\n',
  cost('goods', '100 USD'),
  task('work', '60 min'),
  charge('hours', 'labour', { rate: '50 USD/h' }),
].join('');

describe('papers', () => {
  test.each(['quote', 'shopping', 'shopsheet', 'mixcards', 'safety'])(
    '%s prints a page to the standard output, or writes it',
    (command) => {
      const world = testWorld({ 'shelf.paneljob': job });
      expect(run([command, 'shelf.paneljob'], world)).toBe(0);
      expect(world.written().out).toMatch(/^<!DOCTYPE html>[\s\S]*One shelf[\s\S]*<\/html>\n$/);
      const writing = testWorld({ 'shelf.paneljob': job });
      expect(run([command, 'shelf.paneljob', '--out', 'paper.html'], writing)).toBe(0);
      expect(writing.written().out).toBe('paper.html\n');
      expect(writing.files.get('paper.html')).toBe(world.written().out);
    },
  );

  test('a name that ends in .pdf brings a PDF, on the sheets of the job’s units or those named', () => {
    const boxes = [[], ['--paper', 'a4']].map((more) => {
      const world = testWorld({ 'shelf.paneljob': job });
      expect(run(['quote', 'shelf.paneljob', '--out', 'quote.pdf', ...more], world)).toBe(0);
      const bytes = world.files.get('quote.pdf');
      return new TextDecoder('latin1')
        .decode(bytes as Uint8Array)
        .match(/MediaBox \[[^\]]*\]/)?.[0];
    });
    expect(boxes).toEqual(['MediaBox [0 0 612 792]', 'MediaBox [0 0 595.2756 841.8898]']);
  });

  test('letters that the PDF cannot show are told, and sheets that are none', () => {
    const world = testWorld({ 'shelf.paneljob': job.replace('One shelf', 'Półka') });
    expect(run(['quote', 'shelf.paneljob', '--out', 'quote.pdf'], world)).toBe(0);
    expect(world.written().err).toContain('written otherwise: ł as l');
    for (const more of [
      ['--out', 'a.pdf', '--paper', 'a3'],
      ['--paper', 'a4'],
    ])
      expect(run(['quote', 'shelf.paneljob', ...more], testWorld({ 'shelf.paneljob': job }))).toBe(
        2,
      );
  });

  test('a file that is not there ends with 2', () => {
    expect(run(['quote', 'nowhere.paneljob'], testWorld({}))).toBe(2);
    expect(run(['quote'], testWorld({}))).toBe(2);
  });
});

describe('costdrivers', () => {
  test('lists cells with what a tenth less and a tenth more do, or as JSON', () => {
    const world = testWorld({ 'shelf.paneljob': job });
    expect(run(['costdrivers', 'shelf.paneljob'], world)).toBe(0);
    expect(world.written().out).toMatch(/^goods\.price +100 USD +−10\.00 USD +\+10\.00 USD/m);
    const read = testWorld({ 'shelf.paneljob': job });
    expect(run(['costdrivers', 'shelf.paneljob', '--json'], read)).toBe(0);
    expect(JSON.parse(read.written().out)).toMatchObject({
      drivers: [
        { id: 'goods', column: 'price', more: { minor: 1000, currency: 'USD' } },
        { id: 'hours', column: 'rate', less: { minor: -500 } },
        { id: 'work', column: 'minutes' },
      ],
    });
  });
});
