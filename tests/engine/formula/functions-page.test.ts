import { describe, expect, test } from 'vitest';
import type { FunctionEntry } from '../../../extension/engine/formula/catalogue.ts';
import { functionsPage } from '../../../extension/engine/formula/functions-page.ts';
import { makeCatalogue } from '../../../extension/engine/formula/make-catalogue.ts';
import { deviations } from '../../../extension/engine/formula/standard/deviations.ts';
import { angle, length, plain } from '../../../extension/engine/units/dimension.ts';
import { catalogue } from '../../helpers/workbook-of.ts';

const lean: FunctionEntry = {
  name: 'SHIM.LEAN',
  group: 'rings',
  help: 'How far a shim leans.',
  parameters: [
    { name: 'size', help: 'Across', type: { kind: 'quantity', dimensions: [length] } },
    {
      name: 'tilt',
      help: 'How far',
      type: { kind: 'quantity', dimensions: [angle, plain] },
      optional: true,
    },
    {
      name: 'side',
      help: 'Which | where',
      type: { kind: 'choice', choices: ['inside', 'outside'] },
    },
  ],
  result: { kind: 'quantity', dimension: length },
  example: { formula: '=SHIM.LEAN(2in, inside)', shows: '1 in' },
  source: 'geometry',
};

describe('functionsPage', () => {
  test('tells of a function what a person needs to call it', () => {
    const page = functionsPage(makeCatalogue([lean]));
    expect(page).toContain('## Rings');
    expect(page).toContain('### `SHIM.LEAN(size, [tilt], side)`');
    expect(page).toContain('| `tilt` | angle or number | How far | optional |');
    expect(page).toContain('| `side` | `inside`, `outside` | Which \\| where |  |');
    expect(page).toContain('Gives: length.');
    expect(page).toContain('Example: `=SHIM.LEAN(2in, inside)` gives `1 in`.');
    expect(page).toContain('Source: geometry.');
  });

  test('names every function once and every deviation from the standard', () => {
    const page = functionsPage(catalogue);
    for (const { name } of catalogue.values()) {
      expect(page.split(`### \`${name}(`)).toHaveLength(2);
    }
    for (const { formula } of deviations) expect(page).toContain(`\`${formula}\``);
  });

  test('leaves out groups without functions', () => {
    expect(functionsPage(makeCatalogue([lean]))).not.toContain('## Resin');
  });
});

describe('makeCatalogue', () => {
  test('finds a function whatever the case it is written in', () => {
    const one = makeCatalogue([{ ...lean, name: 'circle' }]);
    expect(one.get('CIRCLE')?.name).toBe('circle');
  });

  test('two functions of one name are a bug', () => {
    expect(() => makeCatalogue([lean, { ...lean, name: 'shim.lean' }])).toThrow('SHIM.LEAN');
  });
});
