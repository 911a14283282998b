import { describe, expect, test } from 'vitest';
import { doorPair, replaced } from '../../../helpers/sample-session.ts';
import { only, told } from '../../../helpers/told-traps.ts';

describe('nominal against measured driver size', () => {
  const frame = 'frame = "6 5/8 in"\ncutout = "5 5/8 in"';

  test('a cut-out as large as the frame is an error', () => {
    const found = told(replaced(doorPair, frame, 'frame = "6 5/8 in"\ncutout = "6 5/8 in"'));
    expect(found.find(({ code }) => code === 'cutout-not-below-frame')).toMatchObject({
      severity: 'error',
      at: 'driver/mid.cutout',
    });
  });

  // Speaker size guide: 6 1/2 in drivers have cut-outs of 4.88 to 5.78 in.
  test.each(['Midbass, 6 1/2 in', 'Midbass 6.5"', 'Midbass 165 mm'])(
    'a cut-out that is the size in the name is told: %s',
    (name) => {
      const text = replaced(doorPair, frame, 'frame = "6 5/8 in"\ncutout = "6 1/2 in"').replace(
        'name = "Midbass"',
        `name = '${name}'`,
      );
      const found = told(text).filter(({ at }) => at.startsWith('driver/mid'));
      expect(found.map(({ code }) => code)).toEqual(['driver-size-nominal']);
      expect(found[0]?.message).toContain('4.88 to 5.78 in');
    },
  );

  test('sizes that are guessed or the maker’s are told until they are measured', () => {
    const sure = (word: string): string => replaced(doorPair, frame, `${frame}\nsure = "${word}"`);
    expect(only(sure('guess'))).toMatchObject({ code: 'driver-not-measured', severity: 'warning' });
    expect(only(sure('from_maker'))).toMatchObject({ severity: 'note', at: 'driver/mid.sure' });
    expect(told(sure('measured'))).toEqual([]);
  });
});
