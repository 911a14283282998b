import { readFileSync } from 'node:fs';
import { test } from 'vitest';
import { bundled } from './bundled.ts';
import { load, milliseconds, percentile, record, type FigureLine } from './figures.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const warmUps = 20;
const edits = 100;

// While the worker solves, the host's thread does these things and nothing else, each in one go.
test('turns of the host', { timeout: 600_000 }, async () => {
  const { openTimedDesk } = (await bundled('host-program')) as typeof import('./host-program.ts');
  const before = load();
  const outline = 'outlines/door.dxf';
  const desk = openTimedDesk(
    read('two-ring-door.paneljob'),
    read('books/demo-shop.panelbook'),
    new Map([[outline, read(outline)]]),
  );
  const turns = Array.from({ length: warmUps + edits }, (_, index) =>
    // Each tilt is new, or the answer would be remembered.
    desk.edit('mid_ring', 'tilt', `${(8 + index / 20).toFixed(2)} deg`),
  ).slice(warmUps);
  const settled = turns.flatMap((turn) => turn.settled);
  if (settled.length < edits) throw new Error('Some edits were not worked out again.');
  const line = (what: string, times: readonly number[], share: number): FigureLine => ({
    what,
    figure: milliseconds(percentile(times, share)),
    target: share === 1 ? '≤ 50 ms' : '',
  });
  const edited = turns.map((turn) => turn.edit);
  record(
    'host',
    [
      line('An edit planned, taken over and told, p50', edited, 0.5),
      line('The longest of them', edited, 1),
      line('An answer of the worker taken over and told, p50', settled, 0.5),
      line('The longest of them', settled, 1),
    ],
    [before, load()],
  );
});
