import { describe, expect, test } from 'vitest';
import { readChange, readFile } from '../../../extension/engine/job/read-file.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { openWants, wantedOutlines } from '../../../extension/engine/session/wants.ts';

function job(shape: string, more = ''): string {
  return `format = 1

[job]
units = "in"
currency = "USD"

[[panel]]
id = "door"

name = "Front door"
hands = "pair"

[[part]]
id = "base"

kind = "base"
panel = "door"

shape = ${shape}

[[part]]
id = "cover"

kind = "vinyl"

on = "base"
${more}`;
}

const left = `'path("outlines/door.svg#left")'`;

function svg(width: number): string {
  return `<svg width="30in" viewBox="0 0 30 20"><rect id="left" width="${String(width)}" height="15"/></svg>`;
}

function area(session: ReturnType<typeof openSession>): number {
  const result = session.snapshot().workbook.row('part', 'base')?.cell('area').result;
  return result?.state === 'value' && result.value.kind === 'quantity'
    ? result.value.base / 25.4 ** 2
    : NaN;
}

describe('openWants', () => {
  test('a job wants each outline file once, of cells and formulas, and no others', () => {
    const text = job(
      left,
      `\nnote = "see path("\nshape = '=SHAPE.GROW(path("a/b.dxf#L", 1mm), 1in)'\n`,
    );
    expect(wantedOutlines(readFile(text))).toEqual(['a/b.dxf', 'outlines/door.svg']);
    expect(wantedOutlines(readFile(job(`'path("../out.svg")'`)))).toEqual([]);
    expect(wantedOutlines(readFile(job('"circle(8 in)"')))).toEqual([]);
  });

  test('the list stays the same one while no other files are wanted', () => {
    const wants = openWants();
    const first = readFile(job(left));
    const list = wants.update(first);
    expect(wants.update(readChange(first, job(left).replace('Front', 'Rear')))).toBe(list);
    expect(wants.update(readChange(first, job(`'path("b.svg")'`)))).toEqual(['b.svg']);
  });
});

describe('outlines of a session', () => {
  test('a path waits for its file, then has its area, and follows the file as it changes', () => {
    const session = openSession(job(left));
    expect(session.snapshot().wants).toEqual(['outlines/door.svg']);
    const waiting = session.snapshot().problems.map(({ problem }) => problem.code);
    expect(waiting).toContain('outline-on-its-way');
    session.setOutlines(new Map([['outlines/door.svg', svg(24)]]));
    expect(area(session)).toBeCloseTo(360, 6);
    session.setOutlines(new Map([['outlines/door.svg', svg(20)]]));
    expect(area(session)).toBeCloseTo(300, 6);
    session.setOutlines(new Map([['outlines/door.svg', undefined]]));
    const missing = session
      .snapshot()
      .problems.find(({ problem }) => problem.code === 'outline-missing');
    expect(missing?.place).toMatchObject({ table: 'part', row: 'base', column: 'shape' });
    expect(missing?.problem.message).toContain('outlines/door.svg cannot be read');
  });

  test('texts that are the same change nothing', () => {
    const texts = new Map([['outlines/door.svg', svg(24)]]);
    const session = openSession(job(left), undefined, texts);
    const before = session.snapshot();
    expect(session.setOutlines(new Map(texts)).whole).toBe(false);
    expect(session.snapshot()).toBe(before);
  });

  test('blanks, covering and bill follow the outline', () => {
    const texts = new Map([['outlines/door.svg', svg(24)]]);
    const session = openSession(job(left), undefined, texts);
    const { workbook, bill } = session.snapshot();
    const inches = (id: string, column: string): number => {
      const result = workbook.row('part', id)?.cell(column).result;
      return result?.state === 'value' && result.value.kind === 'quantity'
        ? result.value.base / 25.4
        : NaN;
    };
    expect(inches('base', 'length')).toBeCloseTo(24, 9);
    expect(inches('base', 'width')).toBeCloseTo(15, 9);
    expect(inches('base', 'perimeter')).toBeCloseTo(78, 9);
    expect(inches('cover', 'length')).toBeGreaterThan(24);
    expect(bill.lines.some(({ id }) => id === 'hardboard_6')).toBe(true);
  });

  test('a formula grows an outline that is in a file, and calculates anew with the file', () => {
    const grown = `'=SHAPE.GROW(path("outlines/door.svg#left"), 1in)'`;
    const session = openSession(job(grown), undefined, new Map([['outlines/door.svg', svg(24)]]));
    expect(area(session)).toBeCloseTo(24 * 15 + 78 + Math.PI, 2);
    session.setOutlines(new Map([['outlines/door.svg', svg(20)]]));
    expect(area(session)).toBeCloseTo(20 * 15 + 70 + Math.PI, 2);
  });

  test('a drawing without a unit asks for it once, and the answer is written in the cell', () => {
    const bare = '<svg viewBox="0 0 600 400"><rect width="600" height="400"/></svg>';
    const session = openSession(
      job(`'path("door.svg")'`),
      undefined,
      new Map([['door.svg', bare]]),
    );
    const asked = session
      .snapshot()
      .problems.find(({ problem }) => problem.code === 'outline-without-unit');
    const fix = asked?.problem.fixes?.[0];
    expect(fix?.text).toBe('path("door.svg", 1mm)');
    const planned = session.plan([
      {
        kind: 'set-cell',
        row: { table: 'part', id: 'base', occurrence: 0 },
        column: 'shape',
        text: fix?.text,
      },
    ]);
    if (planned.ok) session.take(planned.value);
    expect(area(session)).toBeCloseTo(240_000 / 25.4 ** 2, 6);
  });

  test('points typed from one zero are an outline', () => {
    const session = openSession(job('"polygon(0 in, 0 in, 24 in, 0 in, 24 in, 15 in)"'));
    expect(area(session)).toBeCloseTo(180, 9);
  });
});
