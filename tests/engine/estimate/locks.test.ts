import { describe, expect, test } from 'vitest';
import { placementOwners } from '../../../extension/engine/estimate/placement-owners.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import { heldFaults, rectangleFaults } from '../../helpers/cut-checker.ts';

/** Two bases of one size on boards of 1200 × 600 mm, cut with 3 mm. */
function job(locks: string, more = '', length = 400): string {
  const base = (id: string): string => `
[[part]]
id = "${id}"

kind = "base"

material = "board"

length = "${String(length)} mm"
width = "300 mm"
`;
  return `format = 1

[job]
title = "Bases"
units = "mm"
currency = "USD"

[[panel]]
id = "door"

hands = "left"

${base('front')}${base('rear')}${more}
[[material]]
id = "board"

name = "Board"
form = "sheet"

length = "1200 mm"
width = "600 mm"

kerf = "3 mm"

[[pack]]
id = "whole"

material = "board"
holds = "0.72 m2"
price = "20 USD"
${locks}`;
}

function lock(id: string, part: string, at: string): string {
  return `
[[lock]]
id = "${id}"

part = "${part}"
stock = "whole"
sheet = 1

${at}
`;
}

function laidOf(text: string) {
  const session = openSession(text);
  settleNow(session);
  const { bill } = session.snapshot();
  const laid = bill.lines.find(({ id }) => id === 'board')?.laid;
  if (laid === undefined || laid.order.instance.kind !== 'rectangles') throw new Error('not laid');
  return { laid, instance: laid.order.instance, problems: bill.problems };
}

function placesOf(text: string): Readonly<Record<string, string>> {
  const { laid } = laidOf(text);
  return Object.fromEntries(
    [...placementOwners(laid)].map(([one, { row }]) => [row, `${one.x}, ${one.y}`]),
  );
}

describe('locks in the bill', () => {
  test('a locked part stays where it lies, and is its own row’s', () => {
    const text = job(lock('keep', 'rear', 'at_x = "700 mm"\nat_y = "250 mm"'));
    const { laid, instance, problems } = laidOf(text);
    expect(problems).toEqual([]);
    expect(placesOf(text)).toMatchObject({ rear: '700, 250' });
    expect(heldFaults(instance, laid.answer)).toEqual([]);
    expect(rectangleFaults(instance, laid.answer)).toEqual([]);
  });

  test('a job without locks asks the same question as before', () => {
    const { instance } = laidOf(job(''));
    expect('fixed' in instance).toBe(false);
  });

  test('a lock that no longer fits is told with part, size and stock, and left out of account', () => {
    const text = job(lock('keep', 'rear', 'at_x = "700 mm"\nat_y = "250 mm"'), '', 600);
    const { laid, problems } = laidOf(text);
    expect(laid.answer.unplaced).toEqual([]);
    expect(laid.answer.placements.some(({ fixed }) => fixed !== undefined)).toBe(false);
    expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([
      'lock-unheld: keep: rear (600 mm × 300 mm) does not stay at 700 mm, 250 mm of sheet 1 of whole (1200 mm × 600 mm): it would go over the edge. It is laid like any other part; delete keep, or lock the part anew where it lies now.',
    ]);
  });

  test('of two locks that come too near, the first holds and the second is told', () => {
    const { problems } = laidOf(
      job(
        lock('one', 'front', 'at_x = "0 mm"\nat_y = "0 mm"') +
          lock('two', 'rear', 'at_x = "401 mm"\nat_y = "0 mm"'),
      ),
    );
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('it would come nearer than the cut to what one holds'),
    ]);
  });

  test('a lock that does not say where is told', () => {
    const text = job(lock('keep', 'front', 'at_x = "0 mm"'));
    const { problems } = laidOf(text);
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('it does not say which part lies where'),
    ]);
  });

  test('a lock whose part is cut from another board is told', () => {
    const other = job(lock('keep', 'rear', 'at_x = "0 mm"\nat_y = "0 mm"')).replaceAll(
      'material = "board"\n\nlength',
      'material = "none"\n\nlength',
    );
    const session = openSession(other);
    settleNow(session);
    const { problems } = session.snapshot().bill;
    expect(problems.map(({ message }) => message)).toContainEqual(
      expect.stringContaining('the job cuts no more pieces of it from this stock'),
    );
  });
});
