import { describe, expect, test } from 'vitest';
import { catalogue, functionsPage, kindsPage } from '../../extension/engine/index.ts';
import { bookOf } from '../helpers/book-of.ts';
import { filesBelow, sourceText } from '../helpers/source-files.ts';

const pages = filesBelow('').filter((path) => /^(docs\/.*|[A-Z]+)\.md$/.test(path));

describe('docs', () => {
  test('the page of functions is what the catalogue says', async () => {
    await expect(functionsPage(catalogue)).toMatchFileSnapshot('../../docs/functions.md');
  });

  test('the page of kinds is what the built-in kinds say', async () => {
    await expect(kindsPage(bookOf())).toMatchFileSnapshot('../../docs/kinds.md');
  });

  test('a link within the repository leads somewhere', () => {
    const files = new Set(filesBelow(''));
    const broken = pages.flatMap((page) =>
      [...sourceText(page).matchAll(/\]\((?!https?:|#)([^)#\s]+)[^)]*\)/g)]
        .map(([, target = '']) => new URL(target, `file:///${page}`).pathname.slice(1))
        .filter(
          (target) =>
            !files.has(target) &&
            ![...files].some((one) => one.startsWith(`${target.replace(/\/$/, '')}/`)),
        )
        .map((target) => `${page} → ${target}`),
    );
    expect(broken).toEqual([]);
  });

  test('a command that a page names is in the manifest', () => {
    const { scripts } = JSON.parse(sourceText('package.json')) as {
      readonly scripts: Readonly<Record<string, string>>;
    };
    const unknown = pages.flatMap((page) =>
      [...sourceText(page).matchAll(/npm run (?:-s )?([a-z][a-z:-]*)/g)]
        .map(([, name = '']) => name)
        .filter((name) => scripts[name] === undefined)
        .map((name) => `${page}: npm run ${name}`),
    );
    expect(unknown).toEqual([]);
  });
});
