import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { sourceText } from '../helpers/source-files.ts';
import { testWorld } from '../helpers/test-world.ts';

function ran(args: readonly string[]): string {
  const world = testWorld();
  run(args, world);
  const { out, err } = world.written();
  return `${out}${err}`.trimEnd();
}

describe('docs/functions.md', () => {
  const examples = [
    ...sourceText('docs/functions.md').matchAll(/^Example: `(=.+)` gives `(.+)`\.$/gm),
  ].map(([, formula = '', shows = '']) => [formula, shows] as const);

  test('nearly every function has an example that stands alone', () => {
    expect(examples.length).toBeGreaterThan(150);
  });

  test.each(examples)('calc answers %s with %s', (formula, shows) => {
    expect(ran(['calc', formula])).toBe(shows);
  });
});

describe('docs/command-line.md', () => {
  const told = [
    ...sourceText('docs/command-line.md').matchAll(/^\$ panelwright (calc .+)\n(.+)$/gm),
  ].map(([, call = '', answer = '']) => [call, answer] as const);

  test('shows how calc answers', () => {
    expect(told.length).toBeGreaterThan(5);
  });

  test.each(told)('panelwright %s prints %s', (call, answer) => {
    const args = [...call.matchAll(/'([^']*)'|(\S+)/g)].map(
      ([, quoted, plain]) => quoted ?? plain ?? '',
    );
    expect(ran(args)).toBe(answer);
  });
});
