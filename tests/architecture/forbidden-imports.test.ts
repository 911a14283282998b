import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseResult, type IForbiddenRuleType } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const repository = fileURLToPath(new URL('../../', import.meta.url));
const rules = createRequire(import.meta.url)('../../.config/dependency-cruiser.cjs') as {
  readonly forbidden: IForbiddenRuleType[];
  readonly options: Readonly<Record<string, unknown>>;
};

let copy: string;

beforeAll(async () => {
  copy = await mkdtemp(join(tmpdir(), 'panelwright-layers-'));
  for (const part of ['extension', 'webview', 'package.json', 'tsconfig.json']) {
    await cp(join(repository, part), join(copy, part), { recursive: true });
  }
  await symlink(join(repository, 'node_modules'), join(copy, 'node_modules'), 'junction');
  await mkdir(join(copy, 'tests/helpers'), { recursive: true });
  await writeFile(join(copy, 'tests/helpers/trial.ts'), 'export const trial = 1;\n');
});

afterAll(async () => {
  await rm(copy, { recursive: true, force: true });
});

/** Names of the rules that refuse a file with these lines in a folder. */
async function refusals(folder: string, lines: readonly string[]): Promise<readonly string[]> {
  const file = join(folder, 'trial-import.ts');
  await mkdir(dirname(join(copy, file)), { recursive: true });
  await writeFile(join(copy, file), [...lines, 'export const trialImport = 1;', ''].join('\n'));
  try {
    const { output } = await cruise(
      [file],
      {
        ...rules.options,
        baseDir: copy,
        preserveSymlinks: true,
        validate: true,
        ruleSet: { forbidden: rules.forbidden },
      },
      {},
      { tsConfig: extractTSConfig(join(copy, 'tsconfig.json')) },
    );
    const { violations } = (output as ICruiseResult).summary;
    return violations.filter((one) => one.from === file).map((one) => one.rule.name);
  } finally {
    await rm(join(copy, file));
  }
}

function importOf(folder: string, target: string): string {
  if (!target.includes('/') || target.startsWith('@') || target.startsWith('node:')) {
    return `import * as used from '${target}';\nvoid used;`;
  }
  const path = relative(folder, target).split('\\').join('/');
  return `import * as used from '${path.startsWith('.') ? path : `./${path}`}';\nvoid used;`;
}

const engine = 'extension/engine';

/** A few plain files of the tree, to be imported where they must not be. */
const base = `${engine}/problems.ts`;
const units = `${engine}/units/dimension.ts`;
const geometry = `${engine}/geometry/shape.ts`;
const formula = `${engine}/formula/value.ts`;
const job = `${engine}/job/source.ts`;
const book = `${engine}/book/book.ts`;
const answers = `${engine}/workbook/answers.ts`;
const workbook = `${engine}/workbook/workbook.ts`;
const bill = `${engine}/estimate/bill.ts`;
const session = `${engine}/session/snapshot.ts`;
const front = `${engine}/index.ts`;
const messages = 'extension/protocol/messages.ts';

describe('an import that crosses a layer is refused', () => {
  test.each([
    ['units', geometry, 'engine-units'],
    ['units', front, 'engine-units'],
    ['geometry', job, 'engine-geometry'],
    ['geometry', formula, 'engine-geometry'],
    ['formula', job, 'engine-formula'],
    ['job', geometry, 'engine-job'],
    ['job', book, 'engine-job'],
    ['sharing', book, 'engine-sharing'],
    ['book', workbook, 'engine-book'],
    ['trade', job, 'engine-trade'],
    ['trade', answers, 'engine-trade'],
    ['skin', job, 'engine-skin'],
    ['cutting', job, 'engine-cutting'],
    ['workbook', bill, 'engine-workbook'],
    ['estimate', session, 'engine-estimate'],
    ['export', workbook, 'engine-export'],
    ['export', formula, 'engine-export'],
    ['session', front, 'engine-session'],
    ['cloth', base, 'engine-new-folder'],
    ['units', 'vscode', 'engine-inside'],
    ['units', 'node:fs', 'engine-inside'],
    ['units', 'fast-check', 'engine-inside'],
    ['trade', messages, 'engine-inside'],
    ['estimate', 'hyperformula', 'hyperformula-in-workbook'],
    ['book', 'smol-toml', 'toml-in-job'],
    ['units', 'tests/helpers/trial.ts', 'tests-unseen'],
  ])('engine/%s does not import %s', async (folder, target, rule) => {
    const place = `${engine}/${folder}`;
    expect(await refusals(place, [importOf(place, target)])).toContain(rule);
  });

  test.each([
    ['extension/protocol', units, 'protocol'],
    ['extension/protocol', front, 'protocol-types-only'],
    ['extension/protocol', 'vscode', 'vscode-in-host'],
    ['extension/worker', messages, 'worker'],
    ['extension/worker', 'node:worker_threads', 'worker'],
    ['extension/host', job, 'host'],
    ['extension/host', 'webview/state.ts', 'host'],
    ['extension/host', 'node:fs', 'host'],
    ['extension/host', 'extension/worker/echo.ts', 'host'],
    ['extension/command-line', messages, 'command-line'],
    ['extension/command-line', job, 'command-line'],
    ['extension/command-line', 'vscode', 'vscode-in-host'],
    ['webview', front, 'webview'],
    ['webview/grid', 'extension/host/activate.ts', 'webview'],
    ['webview', 'node:fs', 'webview'],
    ['webview', 'vscode', 'vscode-in-host'],
    ['webview/grid', '@vscode/webview-ui-toolkit', 'toolkit-in-controls'],
    ['webview', 'tests/helpers/trial.ts', 'tests-unseen'],
    ['webview', 'esbuild', 'no-dev-in-shipped'],
    ['webview', './nowhere.ts', 'resolvable'],
  ])('%s does not import %s', async (folder, target, rule) => {
    const line = target.startsWith('.') ? `import '${target}';` : importOf(folder, target);
    expect(await refusals(folder, [line])).toContain(rule);
  });

  test('two modules do not wait for each other', async () => {
    const other = join(copy, `${engine}/units/trial-other.ts`);
    await writeFile(other, "import './trial-import.ts';\n");
    expect(await refusals(`${engine}/units`, ["import './trial-other.ts';"])).toEqual([
      'no-cycles',
    ]);
    await rm(other);
  });
});

describe('an import within the layers is let through', () => {
  test.each([
    [`${engine}/trade`, units],
    [`${engine}/job`, formula],
    [`${engine}/workbook`, book],
    [`${engine}/workbook`, 'hyperformula'],
    [`${engine}/job`, 'smol-toml'],
    [`${engine}/export`, answers],
    ['extension/worker', units],
    ['extension/host', 'vscode'],
    ['extension/host', messages],
    ['extension/host', 'extension/worker/messages.ts'],
    ['extension/command-line', 'node:fs'],
    ['webview/grid', messages],
  ])('%s imports %s', async (folder, target) => {
    expect(await refusals(folder, [importOf(folder, target)])).toEqual([]);
  });

  test('the protocol imports types of the front door', async () => {
    expect(
      await refusals('extension/protocol', [
        `import type { Bill } from '../engine/index.ts';`,
        'export type Trial = Bill;',
      ]),
    ).toEqual([]);
  });
});
