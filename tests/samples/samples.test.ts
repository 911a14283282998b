import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readFile } from '../../extension/engine/job/read-file.ts';
import { openSession } from '../../extension/engine/session/session.ts';
import { wantedOutlines } from '../../extension/engine/session/wants.ts';
import type { Snapshot } from '../../extension/engine/session/snapshot.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.paneljob'));

function textOf(path: string): string {
  return readFileSync(new URL(path, folder), 'utf8');
}

function opened(name: string): Snapshot {
  const text = textOf(name);
  const book = /^book = "(.+)"$/m.exec(text)?.[1];
  const outlines = wantedOutlines(readFile(text)).map((path) => [path, textOf(path)] as const);
  const session = openSession(
    text,
    book === undefined ? undefined : textOf(book),
    new Map(outlines),
  );
  return session.snapshot();
}

const tables = ['panel', 'driver', 'measure', 'part', 'task', 'check', 'charge'];

describe('sample jobs', () => {
  test('there are a front pair, two pairs in millimetres, a larger job, and three on drawn outlines', () => {
    expect(names).toEqual([
      'door-pod-pair-mm.paneljob',
      'five-panel-sedan.paneljob',
      'front-door-pair.paneljob',
      'kick-panel-pair-mm.paneljob',
      'traced-kick-panel-mm.paneljob',
      'tweeter-pod-mm.paneljob',
      'two-ring-door.paneljob',
    ]);
  });

  test.each(names)('%s reads, calculates and bills without a problem', (name) => {
    const { problems, bill, reading, workbook } = opened(name);
    const told = problems.filter(({ problem }) => problem.severity !== 'note');
    expect(told.map(({ problem }) => problem.message)).toEqual([]);
    expect(reading.state).toBe('readable');
    expect(bill.totals.complete).toBe(true);
    expect(bill.totals.buy).toBeGreaterThan(30_000);
    expect(bill.totals.charge).toBeLessThan(bill.totals.buy);
    const unanswered = tables
      .flatMap((table) => workbook.rows(table))
      .flatMap((row) =>
        [...(reading.tables.get(row.table) ?? [])]
          .filter(({ id }) => id === row.id)
          .flatMap(({ cells }) => [...cells.keys()])
          .filter((column) => row.cell(column).result.state !== 'value')
          .map((column) => `${row.id}.${column}`),
      );
    expect(unanswered).toEqual([]);
  });

  test.each(names)(
    '%s has one key a line, at most three in a group, rows in the order of ids',
    (name) => {
      const text = textOf(name);
      for (const group of text.split('\n\n')) {
        const keys = group.split('\n').filter((line) => / = /.test(line));
        expect(keys.length, group).toBeLessThanOrEqual(3);
      }
      const heads = [...text.matchAll(/^\[\[(\w+)\]\]\nid = "(\w+)"$/gm)];
      const ids = new Map<string, string[]>();
      for (const [, table = '', id = ''] of heads) ids.set(table, [...(ids.get(table) ?? []), id]);
      for (const list of ids.values()) expect(list).toEqual([...list].sort());
      expect([...ids.keys()].filter((table) => tables.includes(table))).toEqual(tables);
    },
  );

  test.each([
    ['two-ring-door.paneljob', 'door_base', 'outlines/door.dxf'],
    ['traced-kick-panel-mm.paneljob', 'kick_base', 'outlines/kick.svg'],
    ['tweeter-pod-mm.paneljob', 'pod_base', 'outlines/pod.svg'],
  ])('%s is built on the outline of %s in %s', (name, base, file) => {
    const { wants, workbook } = opened(name);
    expect(wants).toEqual([file]);
    const shape = workbook.row('part', base)?.cell('shape').result;
    expect(
      shape?.state === 'value' && shape.value.kind === 'shape' ? shape.value.shape.kind : '',
    ).toBe('path');
  });

  test('the shop book prices all that the demo book sells', () => {
    const bare = openSession('format = 1\n\n[job]\ncurrency = "USD"\n').snapshot().book;
    const shop = openSession(
      'format = 1\n\n[job]\ncurrency = "USD"\n',
      textOf('books/demo-shop.panelbook'),
    ).snapshot().book;
    const sold = new Set(shop.packs.map(({ cells }) => cells.get('material')));
    expect([...bare.materials.keys()].filter((id) => !sold.has(id))).toEqual([]);
    expect(shop.problems).toEqual([]);
    expect(shop.origin).toBe('file');
  });

  test('the sedan has five panels, more than sixty parts, and doors that differ left and right', () => {
    const { bill, workbook, reading } = opened('five-panel-sedan.paneljob');
    expect(bill.totals.panels).toBe(5);
    expect(workbook.rows('part').length).toBeGreaterThan(60);
    const hands = (reading.tables.get('part') ?? []).map(({ cells }) => cells.get('hand')?.text);
    expect(hands.filter((hand) => hand === 'left').length).toBeGreaterThan(3);
    expect(hands.filter((hand) => hand === 'right').length).toBeGreaterThan(3);
    const mid = bill.lines.find(({ id }) => id.endsWith('mid'));
    expect(mid?.need?.base).toBe(2);
    const centre = bill.lines.find(({ id }) => id.endsWith('centre'));
    expect(centre?.buy).toBe(0);
  });
});
