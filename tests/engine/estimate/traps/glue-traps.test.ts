import { describe, expect, test } from 'vitest';
import { more, only, part, told } from '../../../helpers/told-traps.ts';

describe('coated against bonded area', () => {
  test('contact cement reckoned for one face is told', () => {
    const use = '=GLUE.NEED(on.area, 1, book.dry_coat, material.solids)';
    const glue = part('cement', {
      kind: 'adhesive',
      on: 'door_skin',
      material: 'contact_cement',
      use,
    });
    expect(only(more(glue))).toMatchObject({ code: 'glue-one-face', at: 'part/cement.use' });
    expect(told(more(glue.replace('on.area, 1', 'on.area, 2')))).toEqual([]);
  });

  // Wood forum on aerosol coverage: 100 sq ft coated bond 50, for both faces are coated.
  test('an area over a coverage is told', () => {
    const use = '=on.area/GLUE.COVERAGE(1qt*material.density, material.solids, book.dry_coat)*1qt';
    const glue = part('cement', {
      kind: 'adhesive',
      on: 'door_skin',
      material: 'contact_cement',
      use,
    });
    const found = only(more(glue));
    expect(found.code).toBe('glue-coated-area');
    expect(found.message).toContain('100 sq ft of coverage bond 50');
  });
});
