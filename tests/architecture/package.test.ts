import { existsSync } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createVSIX, listFiles, PackageManager } from '@vscode/vsce';
import { describe, expect, test } from 'vitest';
import { repository, sourceText } from '../helpers/source-files.ts';

/** All that a user gets; a file more or less is a decision. */
const shipped = [
  'CHANGELOG.md',
  'LICENSE',
  'README.md',
  'dist/NOTICES.txt',
  'dist/extension.cjs',
  'dist/merge-driver.cjs',
  'dist/ui-kit.js',
  'dist/webview.css',
  'dist/webview.js',
  'dist/worker.js',
  'docs/images/icon.png',
  'extension/language/language-configuration.json',
  'extension/language/panelwright-book.tmLanguage.json',
  'extension/language/panelwright.tmLanguage.json',
  'package.json',
];

interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly icon: string;
  readonly engines: { readonly vscode: string };
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly contributes: {
    readonly commands: readonly { readonly command: string }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string }[]>>;
    readonly keybindings: readonly { readonly command: string; readonly when?: string }[];
    readonly languages: readonly { readonly configuration: string }[];
    readonly grammars: readonly { readonly path: string }[];
  };
}

const limits = JSON.parse(sourceText('.config/limits.json')) as Readonly<Record<string, number>>;
const manifest = JSON.parse(sourceText('package.json')) as Manifest;

describe('the package', () => {
  test('holds exactly the files that a user needs', async () => {
    const files = await listFiles({ cwd: repository, packageManager: PackageManager.None });
    expect([...files].sort()).toEqual(shipped);
  });

  test('is no larger than its limit', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'panelwright-package-'));
    const packagePath = join(folder, 'panelwright.vsix');
    await createVSIX({
      cwd: repository,
      packagePath,
      dependencies: false,
      allowMissingRepository: true,
      rewriteRelativeLinks: false,
    });
    const { size } = await stat(packagePath);
    await rm(folder, { recursive: true });
    expect(size).toBeLessThanOrEqual(limits['panelwright.vsix'] ?? 0);
  });
});

describe('the manifest', () => {
  test('points only at files that are there', () => {
    const { contributes } = manifest;
    const named = [
      manifest.main,
      manifest.browser,
      manifest.icon,
      ...contributes.languages.map((language) => language.configuration),
      ...contributes.grammars.map((grammar) => grammar.path),
    ];
    expect(named.filter((path) => !existsSync(join(repository, path)))).toEqual([]);
  });

  test('puts only its own commands into menus and keybindings', () => {
    const { commands, menus, keybindings } = manifest.contributes;
    const known = new Set(commands.map(({ command }) => command));
    const used = [...Object.values(menus).flat(), ...keybindings].map(({ command }) => command);
    expect(used.filter((command) => !known.has(command))).toEqual([]);
  });

  test('has each command registered by the host', () => {
    const host = ['commands', 'reuse-commands', 'compare/compare-commands', 'activate']
      .map((file) => sourceText(`extension/host/${file}.ts`))
      .join('');
    const missing = manifest.contributes.commands
      .map(({ command }) => command)
      .filter(
        (command) => !host.includes(command) && !host.includes(command.replace('panelwright.', '')),
      );
    expect(missing).toEqual([]);
  });

  test('binds no key outside the grid', () => {
    const loose = manifest.contributes.keybindings.filter(
      ({ when }) => when?.includes("activeCustomEditorId == 'panelwright.grid'") !== true,
    );
    expect(loose).toEqual([]);
  });

  test('is typed against the oldest VS Code it runs in', () => {
    expect(`^${manifest.devDependencies['@types/vscode'] ?? ''}`).toBe(manifest.engines.vscode);
  });
});
