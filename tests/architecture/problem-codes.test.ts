import { describe, expect, test } from 'vitest';
import { filesBelow, sourceText } from '../helpers/source-files.ts';

/** The table given to each `problemMaker`, code by code. */
function codesIn(path: string): readonly string[] {
  const tables = sourceText(path).matchAll(/problemMaker\(\{([\s\S]*?)\n\}\)/g);
  return [...tables].flatMap(([, table = '']) =>
    [...table.matchAll(/^ {2}(?:'([^']+)'|([a-z]\w*)):/gm)].map(
      (found) => found[1] ?? found[2] ?? '',
    ),
  );
}

const codes = filesBelow('extension/engine')
  .filter((path) => path.endsWith('.ts') && !path.endsWith('/problems.ts'))
  .flatMap((path) => codesIn(path).map((code) => ({ path, code })));

describe('problem codes', () => {
  test('are found in the tables of the engine', () => {
    expect(codes.length).toBeGreaterThan(10);
  });

  test('are lower-case words joined by hyphens', () => {
    expect(codes.filter(({ code }) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
  });

  test('stand in one table only, so that a code means one thing', () => {
    const seen = new Map<string, string>();
    const twice = codes.filter(({ path, code }) => {
      const before = seen.get(code);
      seen.set(code, path);
      return before !== undefined;
    });
    expect(twice).toEqual([]);
  });
});
