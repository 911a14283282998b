/** Where a figure of the book is from. */
export type Provenance = 'published' | 'common practice' | 'shop must calibrate';

const published = /^published: \S/;

/**
 * How far a figure's `source` text bears: printed by somebody who can be named, what most shops do, or
 * an example that each shop replaces by its own. Undefined where the text says none of these.
 */
export function provenanceOf(source: string | undefined): Provenance | undefined {
  if (source === undefined) return undefined;
  if (published.test(source)) return 'published';
  if (source.startsWith('common practice, no source')) return 'common practice';
  return source.startsWith('shop must calibrate') ? 'shop must calibrate' : undefined;
}
