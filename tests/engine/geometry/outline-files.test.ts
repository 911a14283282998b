import { describe, expect, test } from 'vitest';
import { openOutlineFiles } from '../../../extension/engine/geometry/outline-files.ts';

const settings = { units: 'in', currency: 'USD' } as const;
const page = 'width="10in" height="10in" viewBox="0 0 10 10"';

function svg(body: string, root = page): string {
  return `<svg ${root}>${body}</svg>`;
}

function problem(body: string, name = '', root = page) {
  const files = openOutlineFiles(new Map([['outlines/door.svg', svg(body, root)]]));
  const answer = files.source({ address: `outlines/door.svg${name}`, unit: undefined, settings });
  return answer.ok ? { code: 'none', message: '' } : answer.problem;
}

const square = '<rect id="left" x="1" y="1" width="4" height="2"/>';

describe('openOutlineFiles', () => {
  test('an outline is found by its id, its label, or the group it lies in', () => {
    const body = `<g id="pair" inkscape:label="Front doors">${square}</g><rect id="right" width="3" height="3"/>`;
    const files = openOutlineFiles(new Map([['door.svg', svg(body)]]));
    const length = (name: string): number => {
      const answer = files.source({ address: `door.svg#${name}`, unit: undefined, settings });
      return answer.ok ? answer.value.perimeter / 25.4 : NaN;
    };
    expect(length('left')).toBeCloseTo(12, 9);
    expect(length('pair')).toBeCloseTo(12, 9);
    expect(length('front doors')).toBeCloseTo(12, 9);
    expect(length('right')).toBeCloseTo(12, 9);
  });

  test('a size of the unit given in the cell wins over the drawing’s own', () => {
    const files = openOutlineFiles(new Map([['door.svg', svg(square)]]));
    const answer = files.source({ address: 'door.svg#left', unit: 10, settings });
    expect(answer.ok ? answer.value.area : 0).toBeCloseTo(800, 9);
  });

  // The page is 10 in high, so y is counted from its lower edge.
  test.each([
    [
      'an open line',
      '<path d="M1 1H5V3H1V1.5"/>',
      'outline-open',
      'ends at (1 in, 8 1/2 in) and goes on at (1 in, 9 in), 1/2 in away',
    ],
    [
      'a line that crosses itself',
      '<path d="M1 1L5 3H1L5 1Z"/>',
      'outline-crossing',
      '(3 in, 8 in)',
    ],
    [
      'a line drawn twice over',
      '<path d="M1 1H5V3H1Z"/><path d="M1 1V3H5V1Z"/>',
      'outline-doubled',
      'drawn twice over at',
    ],
    [
      'lines that branch',
      '<path d="M1 1H5"/><path d="M5 1V3H1V1"/><path d="M5 1L6 0"/>',
      'outline-branches',
      '(5 in, 9 in)',
    ],
    [
      'a line that comes back on itself',
      '<path d="M1 1H5V3H8H5H1Z"/>',
      'outline-doubled',
      '(8 in, 7 in)',
    ],
    ['a line without width', '<path d="M1 1H5H3Z"/>', 'outline-without-area', 'encloses nothing'],
    ['a tiny outline', '<rect width="0.2" height="0.1"/>', 'outline-tiny', '3/16 in'],
    ['a huge outline', '<rect width="900" height="9"/>', 'outline-huge', '900 in'],
    ['nothing at all', '', 'outline-empty', 'holds no outline'],
    ['words alone', '<text>door</text>', 'outline-empty', 'it has text, which are not read'],
    [
      'two parts',
      `${square}<rect id="right" x="6" width="3" height="3"/>`,
      'outline-several',
      'path("outlines/door.svg#left")',
    ],
  ])('%s is told with its place', (_, body, code, words) => {
    const found = problem(body);
    expect(found.code).toBe(code);
    expect(found.message).toContain(words);
    expect(found.message).not.toMatch(/\{\w+\}/);
  });

  test('a name that is not there is told with those that are', () => {
    const { code, message } = problem(square, '#rigth');
    expect(code).toBe('outline-name-unknown');
    expect(message).toContain('It has: left.');
  });

  test.each([
    ['../door.svg', 'outline-address-wrong'],
    ['/etc/door.svg', 'outline-address-wrong'],
    ['https://example.org/door.svg', 'outline-address-wrong'],
    ['outlines\\door.svg', 'outline-address-wrong'],
    ['door.pdf', 'outline-kind-unknown'],
    ['gone.svg', 'outline-missing'],
    ['coming.svg', 'outline-on-its-way'],
    ['broken.svg', 'outline-unreadable'],
    ['long.svg', 'outline-too-long'],
  ])('%s is refused: %s', (address, code) => {
    const texts = new Map([
      ['gone.svg', undefined],
      ['broken.svg', '<svg'],
      ['long.svg', ' '.repeat(9_000_000)],
    ]);
    const answer = openOutlineFiles(texts).source({ address, unit: undefined, settings });
    expect(answer.ok ? '' : answer.problem.code).toBe(code);
    expect(answer.ok ? '' : answer.problem.message).not.toMatch(/\{\w+\}/);
  });

  test('a file that says the same is not read again, one that changed is', () => {
    const before = openOutlineFiles(new Map([['door.svg', svg(square)]]));
    const asked = { address: 'door.svg#left', unit: undefined, settings };
    before.source(asked);
    const same = openOutlineFiles(new Map([['door.svg', svg(square)]]), before);
    expect(same.readings.get('door.svg')).toBe(before.readings.get('door.svg'));
    const other = openOutlineFiles(new Map([['door.svg', svg(square.replace('4', '5'))]]), same);
    expect(other.readings.size).toBe(0);
    const answer = other.source(asked);
    expect(answer.ok ? answer.value.area / 25.4 ** 2 : 0).toBeCloseTo(10, 9);
  });

  test('gaps finer than a saw’s width are closed', () => {
    expect(problem('<path d="M1 1H5V3H1V1.001"/>').code).toBe('none');
  });
});
