import { describe, expect, test } from 'vitest';
import { settledLayout } from '../../../extension/engine/cutting/settled-layout.ts';
import type { CutInstance } from '../../../extension/engine/cutting/instance.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { workedOut } from '../../../extension/engine/session/worked-out.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';

/** Baffles of a job on MDF that is cut as told. */
function job(cutting: string, parts: string): string {
  return `format = 1

[job]
title = "Baffles"
units = "mm"
currency = "USD"

[[panel]]
id = "door"

hands = "pair"

[[material]]
id = "board"

name = "Board"
form = "sheet"

length = "1200 mm"
width = "600 mm"

${cutting}

[[pack]]
id = "whole"

material = "board"
holds = "0.72 m2"
price = "20 USD"

${parts}`;
}

function baffle(id: string, size: number, more = ''): string {
  return `
[[part]]
id = "${id}"

kind = "base"
panel = "door"

material = "board"

${more}
length = "${size} mm"
width = "${size} mm"
`;
}

function lineOf(text: string) {
  const session = openSession(text);
  settleNow(session);
  const line = session.snapshot().bill.lines.find(({ id }) => id === 'board');
  if (line === undefined) throw new Error('no line');
  return { line, snapshot: session.snapshot() };
}

describe('cutOrder', () => {
  test('a kerf makes the difference between two and three across', () => {
    const three = [baffle('a', 400), baffle('b', 400), baffle('c', 400)].join('');
    expect(lineOf(job('', three)).line.packs[0]?.count).toBe(2);
    // 3 × 400 mm are 1,200 mm; with two kerfs of 3 mm they are 1,206 mm.
    expect(lineOf(job('kerf = "3 mm"', three)).line.packs[0]?.count).toBe(3);
  });

  test('what is bought is the layout, and nothing waits any more', () => {
    const { line, snapshot } = lineOf(job('kerf = "3 mm"', baffle('a', 290) + baffle('b', 190)));
    expect(line.approximate).toBe(false);
    expect(line.laid?.settled).toBe(true);
    expect(line.laid?.answer.sheets.length).toBe(line.packs[0]?.count);
    expect(snapshot.bill.waits).toEqual([]);
  });

  test('round baffles nest by their outline where the board is cut so', () => {
    const round = baffle('a', 400, 'shape = "circle(400 mm)"');
    const { line } = lineOf(job('method = "outline"\nkerf = "3 mm"', round));
    const instance = line.laid?.order.instance;
    expect(instance?.kind).toBe('outlines');
    expect(line.laid?.answer.count).toBe(1);
  });

  test('boards cut by outline are shown soon and counted when they are settled', () => {
    const round = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']
      .map((id, at) => baffle(id, 230 + 30 * at, `shape = "circle(${String(230 + 30 * at)} mm)"`))
      .join('');
    const session = openSession(job('method = "outline"\nkerf = "3 mm"', round));
    const line = () => session.snapshot().bill.lines.find(({ id }) => id === 'board');
    const ask = (): CutInstance | undefined => {
      const [question] = session.snapshot().heavy;
      if (question === undefined) return undefined;
      const answer = workedOut(question);
      session.settle(new Map([[question.key, { question, answer }]]));
      return question.body as CutInstance;
    };
    expect(line()?.laid).toBeUndefined();
    expect(ask()).toMatchObject({ effort: 'live' });
    const soon = line()?.laid;
    expect(soon?.answer.count).toBeGreaterThan(0);
    expect(line()?.approximate).toBe(!soon?.answer.proven);
    const last = ask();
    expect(last === undefined ? undefined : 'effort' in last).toBe(
      soon?.answer.proven === true ? undefined : false,
    );
    expect(line()?.laid?.settled).toBe(true);
    expect(session.snapshot().heavy).toEqual([]);
  });

  test('a renamed row asks the same question', () => {
    const text = job('', baffle('a', 290));
    const before = lineOf(text).line.laid?.order.question.key;
    const applied = applyEdits(readFile(text), [
      { kind: 'rename-row', row: { table: 'part', id: 'a', occurrence: 0 }, id: 'z' },
    ]);
    const after = applied.ok ? lineOf(applied.value.reading.text).line : undefined;
    expect(after?.laid?.order.question.key).toBe(before);
  });

  test('the settled layout is the same however it is come by', () => {
    const { line } = lineOf(job('kerf = "3 mm"', baffle('a', 290) + baffle('b', 410)));
    const body = line.laid?.order.question.body as CutInstance;
    expect(JSON.stringify(settledLayout(body))).toBe(JSON.stringify(line.laid?.answer));
  });
});
