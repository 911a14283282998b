import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { axeFile, type Frame } from './browser.ts';
import { themes, until, type Theme, type Workbench } from './workbench.ts';

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

const colourRules = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] };

export interface Looked {
  /** Part of the page that is looked at; all of it unless told. */
  readonly within?: string;
  /** Only the rules about colours. */
  readonly colours?: boolean;
}

/** What the accessibility checker finds in the page, or within a part of it, one line each. */
export async function findings(
  frame: Frame,
  { within = 'html', colours = false }: Looked = {},
): Promise<readonly string[]> {
  const isThere = await frame.evaluate<boolean>('"axe" in window');
  if (!isThere) await frame.evaluate(await readFile(axeFile(), 'utf8'));
  // Its preloading would ask for the style sheet again, which the page's policy rightly refuses.
  const how = JSON.stringify({ preload: false, ...(colours && { runOnly: colourRules }) });
  const found = await frame.evaluate<readonly Violation[]>(
    `axe.run(${JSON.stringify(within)}, ${how}).then((result) => result.violations)`,
  );
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary = '' }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
  );
}

/** Has the workbench show itself in a theme, and waits until the grid does. */
export async function useTheme(
  { folder }: Pick<Workbench, 'folder'>,
  frame: Frame,
  theme: Theme,
): Promise<void> {
  const settings = join(folder, '.vscode/settings.json');
  const now = JSON.parse(await readFile(settings, 'utf8')) as Record<string, unknown>;
  await writeFile(settings, JSON.stringify({ ...now, 'workbench.colorTheme': themes[theme].name }));
  await until(
    `the ${theme} theme`,
    async () =>
      (await frame.locator('body').getAttribute('data-vscode-theme-kind')) === themes[theme].kind,
  );
}
