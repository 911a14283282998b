import { describe, expect, test } from 'vitest';
import { jobCautions } from '../../extension/engine/index.ts';
import { numberOf } from '../helpers/calculated.ts';
import { jobWith, row } from '../helpers/priced-job.ts';

// Limits are quoted on the pane and on paper, never advised. What is held here is that each figure is
// the printed one and stands with the body that printed it.

const job = jobWith(
  {},
  row('part', 'base', { kind: 'base', shape: 'rect(24 in, 12 in)' }),
  row('part', 'skin', { kind: 'skin', on: 'base' }),
  row('part', 'coat', { kind: 'resin', on: 'skin', use: '1 pt' }),
  row('part', 'cover', { kind: 'vinyl', on: 'skin' }),
);

function quoted(id: string): string {
  const found = jobCautions(job).find(({ hazard }) => hazard.id === id);
  const limits = found?.hazard.limits ?? [];
  return limits.map(({ text, source }) => `${text} [${source}]`).join('; ');
}

describe('limits that a panel with resin and vinyl is printed with', () => {
  test('styrene: 100, 200 and 600 ppm (OSHA), 50 and 100, 700 at once (NIOSH); OSHA chemical sampling information', () => {
    expect(quoted('styrene')).toMatch(/OSHA: 100 ppm over 8 h, ceiling 200 ppm, 600 ppm for 5 min/);
    expect(quoted('styrene')).toMatch(/NIOSH: 50 ppm, 100 ppm for 15 min; 700 ppm/);
  });

  test('styrene in the United Kingdom: 100 and 250 ppm (HSE, plastics: frequently asked questions)', () => {
    expect(quoted('styrene')).toMatch(/100 ppm over 8 h, 250 ppm over 15 min \[HSE/);
  });

  test('MEK peroxide: ceiling 0.2 ppm = 1.5 mg/m³ (NIOSH’s 1988 OSHA PEL project), stored at 25 °C or below', () => {
    expect(quoted('peroxide')).toMatch(/0\.2 ppm \(1\.5 mg\/m³\) \[ACGIH and NIOSH/);
    expect(quoted('peroxide')).toMatch(/25 °C or below/);
    // A ppm is molar mass ÷ 24.45 mg/m³ at 25 °C; MEK peroxide 176.2 (definition).
    expect(numberOf('0.2*176.2/24.45')).toBeCloseTo(1.44, 2);
  });

  test('wood dust: 15 and 5 mg/m³ (OSHA), 1 mg/m³ (NIOSH); OSHA, wood dust: evaluating exposure', () => {
    expect(quoted('dust')).toMatch(/15 mg\/m³ total, 5 mg\/m³ respirable \[OSHA/);
    expect(quoted('dust')).toMatch(/NIOSH: 1 mg\/m³ \[OSHA, wood dust/);
  });

  test('formaldehyde: MDF 0.11, thin MDF 0.13, plywood 0.05, particleboard 0.09 ppm (compositepanel.org, TSCA Title VI)', () => {
    expect(quoted('dust')).toMatch(
      /MDF 0\.11 ppm, up to 8 mm 0\.13 ppm, hardwood plywood 0\.05 ppm, particleboard 0\.09 ppm \[TSCA Title VI/,
    );
    // At 25 °C a ppm of formaldehyde (30.03) is 1.228 mg/m³: 0.11 ppm is 0.135 mg/m³ (worked).
    expect(numberOf('0.11*30.03/24.45')).toBeCloseTo(0.135, 3);
  });

  test('formaldehyde in the European Union: 0.062 mg/m³, in cars from 2027-08-06 (Regulation (EU) 2023/1464)', () => {
    expect(quoted('dust')).toMatch(
      /0\.062 mg\/m³ from wood articles after 2026-08-06, inside road vehicles after 2027-08-06 \[Regulation \(EU\) 2023\/1464/,
    );
  });

  test('spraying glue is spray finishing (OSHA, letter of 1983); a workshop may not disable a safety device (49 USC 30122)', () => {
    expect(quoted('adhesive')).toContain('29 CFR 1910.107');
    expect(quoted('airbag')).toContain('49 USC 30122(b)');
    expect(quoted('airbag')).toContain('calibrated to the air volume inside the door');
  });

  test('noise: 85 dBA 8 h and 3 dB halve it (NIOSH); 90 dBA 8 h and 5 dB halve it (OSHA)', () => {
    const niosh = [88, 91, 94, 97, 100].map((level) => 480 / 2 ** ((level - 85) / 3));
    expect(niosh).toEqual([240, 120, 60, 30, 15]);
    expect(quoted('noise')).toContain('85 dBA 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min');
    expect(quoted('noise')).toContain('90 dBA 8 h, 95 4 h, 100 2 h');
  });
});
