import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesBelow, repository, sourceText } from '../helpers/source-files.ts';

const everything = filesBelow('');
const code = everything.filter((path) => /\.(ts|js|cjs|css)$/.test(path));
const engine = code.filter((path) => path.startsWith('extension/engine/'));

describe('the tree', () => {
  test('has these names at its top and no other', () => {
    const names = readdirSync(repository, { withFileTypes: true })
      .filter((entry) => !entry.name.startsWith('.'))
      .map((entry) => entry.name)
      .filter((name) => !/^(node_modules|dist|coverage)$|\.vsix$/.test(name));
    const allowed = [
      'CHANGELOG.md',
      'DEVELOPERS.md',
      'LICENSE',
      'README.md',
      'docs',
      'extension',
      'package-lock.json',
      'package.json',
      'sample-jobs',
      'tests',
      'tsconfig.json',
      'webview',
    ];
    expect(names.sort()).toEqual(allowed);
  });

  test('has file names in lower case, their words joined by hyphens', () => {
    const odd = everything
      .filter((path) => /^(extension|webview|tests|docs|\.config)\//.test(path))
      .filter(
        (path) => !/^[a-z0-9./-]+$/.test(path.replace(/\.(tmLanguage|pictures|bench)\b/, '')),
      );
    expect(odd.filter((path) => !/README\.md$|\.(installed|npmrc)/.test(path))).toEqual([]);
  });

  test('has no file called after nothing in particular', () => {
    const vague = code.filter((path) =>
      /(^|\/)(utils?|helpers?|common|misc|types)\.[a-z]+$/.test(path),
    );
    expect(vague).toEqual([]);
  });

  test('has no code file of more than 300 lines', () => {
    const long = code
      .map((path) => ({ path, lines: sourceText(path).split('\n').length - 1 }))
      .filter(({ lines }) => lines > 300);
    expect(long).toEqual([]);
  });
});

/** Where the test of an engine file stands. */
function mirror(path: string): string {
  return path.replace(/^extension\//, 'tests/').replace(/\.ts$/, '.test.ts');
}

function imports(path: string): readonly string[] {
  const folder = dirname(path);
  return [...sourceText(path).matchAll(/ from '(\.[^']+)'/g)].map(([, target = '']) =>
    join(folder, target).split('\\').join('/'),
  );
}

describe('tests mirror the sources', () => {
  test('each engine file that exports a function is tested, by itself or as a part of a file of its folder', () => {
    const users = new Map<string, string[]>();
    for (const path of code.filter((one) => /^(extension|tests)\//.test(one))) {
      for (const target of imports(path)) users.set(target, [...(users.get(target) ?? []), path]);
    }
    const isTested = (path: string, asked: readonly string[] = []): boolean => {
      const callers = users.get(path) ?? [];
      const siblings = callers.filter((caller) => dirname(caller) === dirname(path));
      return (
        existsSync(`${repository}/${mirror(path)}`) ||
        callers.some((caller) => caller.endsWith('.test.ts')) ||
        siblings.some((caller) => !asked.includes(caller) && isTested(caller, [...asked, path]))
      );
    };
    const missing = engine
      .filter((path) => /^export (async )?function /m.test(sourceText(path)))
      .filter((path) => !isTested(path));
    expect(missing).toEqual([]);
  });

  test('each test below tests/engine stands in a folder of the engine', () => {
    const strays = everything
      .filter((path) => /^tests\/engine\/.*\.test\.ts$/.test(path))
      .filter(
        (path) => !existsSync(join(repository, dirname(path).replace(/^tests/, 'extension'))),
      );
    expect(strays).toEqual([]);
  });
});

/** Written in parts, so that this file passes its own rule. */
const foreign = [
  [
    'absolute path of one machine',
    new RegExp(`(^|[\\s'"\`(])/(${['wo' + 'rk', 'ro' + 'ot', 'ho' + 'me'].join('|')})/`, 'm'),
  ],
  ['absolute path of one machine', new RegExp(`[A-Z]:\\\\${'Us' + 'ers'}\\\\`)],
  ['host name of a package registry', new RegExp(['registry', 'npmjs', 'org'].join('\\.'))],
  [
    'mark of something left undone',
    new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X'].join('|')})\\b`),
  ],
] as const;

describe('texts speak of the project alone', () => {
  const texts = everything.filter(
    (path) => !/\.(png|svg)$|^LICENSE$|package-lock\.json$/.test(path),
  );

  test.each(foreign)('no file holds an %s: %s', (_name, pattern) => {
    expect(texts.filter((path) => pattern.test(sourceText(path)))).toEqual([]);
  });

  test('no lockfile names where a package was fetched', () => {
    const lockfiles = everything.filter((path) => path.endsWith('package-lock.json'));
    expect(lockfiles).toHaveLength(2);
    expect(lockfiles.filter((path) => sourceText(path).includes('"resolved"'))).toEqual([]);
  });
});
