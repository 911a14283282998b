import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { smallJob, testWorld } from '../helpers/test-world.ts';

function json(text: string): unknown {
  return JSON.parse(text);
}

const checkedJob =
  smallJob +
  `
[[check]]
id = "edge"

name = "Edge at the seal"

value = "3/4 in"
most = "5/8 in"

[[check]]
id = "room"

name = "Room behind"

value = "1 in"
least = "1/4 in"
`;

describe('run check', () => {
  const checked = (text: string, ...more: readonly string[]) => {
    const world = testWorld({ 'jobs/checked.paneljob': text });
    const code = run(['check', 'jobs/checked.paneljob', ...more], world);
    return { code, ...world.written() };
  };

  test('tells each check with its figures, and ends with 1 where one that must hold fails', () => {
    const { code, out } = checked(checkedJob);
    expect(code).toBe(1);
    expect(out).toContain('2 checks: 1 fail, 1 pass\n');
    expect(out).toContain(
      '  FAIL   Edge at the seal: 3/4 in, but at most 5/8 in is allowed: 1/8 in too much.\n',
    );
    expect(out).toContain('  pass   Room behind: 1 in; at least 1/4 in is wanted');
  });

  test('one that only should hold is told as such', () => {
    const { code, out } = checked(
      checkedJob.replace('most = "5/8 in"', 'most = "5/8 in"\n\nlevel = "should"'),
    );
    expect(out).toContain('1/8 in too much. (should)');
    expect(code).toBe(1);
  });

  test('programs get figures with their base', () => {
    expect(json(checked(checkedJob, '--json').out)).toMatchObject({
      files: [
        {
          checks: [
            {
              id: 'edge',
              level: 'must',
              outcome: 'fail',
              value: { base: 19.05, text: '3/4 in' },
              most: { base: 15.875, text: '5/8 in' },
              least: null,
              margin: { base: -3.175, text: '-1/8 in' },
            },
            { id: 'room', outcome: 'pass' },
          ],
        },
      ],
    });
  });
});
