import { readFileSync } from 'node:fs';

/** Lets vitest import a `.toml` file as its text, as the bundles do. */
export function tomlAsText() {
  return {
    name: 'toml-as-text',
    enforce: 'pre',
    load(id) {
      if (!id.endsWith('.toml')) return undefined;
      return { code: `export default ${JSON.stringify(readFileSync(id, 'utf8'))};`, map: null };
    },
  };
}
