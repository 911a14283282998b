import { describe, expect, test } from 'vitest';
import { cutDrawings, rowName } from '../../../extension/engine/export/cut-drawings.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import { openSession, type Session } from '../../../extension/engine/session/session.ts';
import { outlineFaults } from '../../helpers/outline-checker.ts';

/** Two baffles of 560 mm on boards of 600 × 600 mm, and four small bases; all nested by outline. */
function job(openings: string, cutout = '430 mm'): string {
  const disc = (id: string, size: number): string => `
[[part]]
id = "${id}"

kind = "base"
panel = "door"

material = "board"

shape = "circle(${String(size)} mm)"

length = "${String(size)} mm"
width = "${String(size)} mm"

qty = 2
`;
  return `format = 1

[job]
title = "Openings"
units = "mm"
currency = "USD"

[[panel]]
id = "door"

hands = "left"

[[driver]]
id = "sub"

name = "Woofer"
frame = "480 mm"
cutout = "${cutout}"

supply = "client"

[[part]]
id = "baffle"

kind = "baffle"
panel = "door"

driver = "sub"
material = "board"

shape = "circle(560 mm)"

length = "560 mm"
width = "560 mm"

qty = 2
${disc('pod', 190)}${disc('tweeter', 120)}
[[material]]
id = "board"

name = "Board"
form = "sheet"

length = "600 mm"
width = "600 mm"

kerf = "3 mm"
method = "outline"

${openings}
[[pack]]
id = "whole"

material = "board"
holds = "0.36 m2"
price = "10 USD"
`;
}

function opened(text: string): Session {
  const session = openSession(text);
  settleNow(session);
  return session;
}

function lineOf(session: Session) {
  const line = session.snapshot().bill.lines.find(({ id }) => id === 'board');
  if (line?.laid?.order.instance.kind !== 'outlines') throw new Error('not nested');
  return { line, laid: line.laid, instance: line.laid.order.instance };
}

describe('cutOpenings', () => {
  test('small bases fall out of the baffles’ openings: two boards do where three were bought', () => {
    const used = lineOf(opened(job('')));
    expect(used.laid.answer.unplaced).toEqual([]);
    expect(outlineFaults(used.instance, used.laid.answer)).toEqual([]);
    expect(used.line.packs.map(({ count }) => count)).toEqual([2]);
    const unused = lineOf(opened(job('openings = "no"\n')));
    expect(unused.laid.answer.unplaced).toEqual([]);
    expect(unused.line.packs.map(({ count }) => count)).toEqual([3]);
  });

  test('a smaller driver leaves a smaller opening, and the parts no longer lie in it', () => {
    const session = opened(job(''));
    const planned = session.plan([
      {
        kind: 'set-cell',
        row: { table: 'driver', id: 'sub', occurrence: 0 },
        column: 'cutout',
        text: '100 mm',
      },
    ]);
    if (!planned.ok) throw new Error(planned.problem.message);
    session.take(planned.value);
    settleNow(session);
    expect(lineOf(session).line.packs.map(({ count }) => count)).toEqual([3]);
  });

  test('openings are drawn as openings', () => {
    const session = opened(job(''));
    const { settings, workbook, bill } = session.snapshot();
    const line = bill.lines.find(({ id }) => id === 'board');
    const drawings = line ? cutDrawings({ line, settings, name: rowName(workbook) }) : [];
    const rings = drawings.flatMap(({ marks }) =>
      marks.filter((mark) => mark.kind === 'line' && (mark.holes?.length ?? 0) > 0),
    );
    expect(rings).toHaveLength(2);
  });
});
