import { describe, expect, test } from 'vitest';
import { kindsPage } from '../../../extension/engine/book/kinds-page.ts';
import { bookOf } from '../../helpers/book-of.ts';

const demo = bookOf();
const page = kindsPage(demo);

describe('kindsPage', () => {
  test('every kind stands on it once, with its help', () => {
    for (const { id, name, table, help } of demo.kinds.values()) {
      if (id === table) continue;
      expect(page.split(`### ${name} (\`${id}\`)`).length, id).toBe(2);
      expect(page, id).toContain(help);
    }
  });

  test('a kind tells its columns with defaults, draws, tasks and cautions', () => {
    const from = page.indexOf('### Bent ring');
    const ring = page.slice(from, page.indexOf('\n### ', from + 1));
    expect(ring).toContain('| `depth` | Depth | `=ROUNDUPTO(shallowest, book.ring_step)` |');
    expect(ring).toContain('(`draw.glue`): material `wood_glue`, use `=book.ring_glue`');
    expect(ring).toContain('Tasks: `bend`, `aim`.');
    expect(ring).toContain('Hazards: `dust`.');
  });

  test('every constant stands on it with where it is from', () => {
    for (const [id, { cells }] of demo.constants) {
      expect(page, id).toContain(`| \`${id}\` | ${cells.get('name') ?? ''} |`);
      expect(page, id).toContain(cells.get('source') ?? '?');
    }
  });

  test('a kind with figures of its own says where they are from', () => {
    expect(page).toContain(
      'Its own figures: shop must calibrate: minutes are invented; time your own.',
    );
    expect(page).toMatch(/### Deposit[\s\S]{0,600}Its own figures: published: 50 % deposit/);
  });

  test('a shop’s own kind would stand on the page of its book', () => {
    const own = bookOf(undefined, '[[kind]]\nid = "glow"\nname = "Glow"\nhelp = "A lamp."\n');
    expect(kindsPage(own)).toContain('### Glow (`glow`)\n\nA lamp.');
  });
});
