import type { Catalogue, FunctionEntry } from './catalogue.ts';

/** The functions by name in capitals, which is how the parser writes a call. Two of one name are a bug. */
export function makeCatalogue(entries: readonly FunctionEntry[]): Catalogue {
  const catalogue = new Map<string, FunctionEntry>();
  for (const entry of entries) {
    const key = entry.name.toUpperCase();
    if (catalogue.has(key)) throw new Error(`Two functions are called ${key}`);
    catalogue.set(key, entry);
  }
  return catalogue;
}
