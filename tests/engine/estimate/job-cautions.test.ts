import { describe, expect, test } from 'vitest';
import { hazards, hazardWords } from '../../../extension/engine/book/cautions.ts';
import { jobCautions } from '../../../extension/engine/estimate/job-cautions.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { bookOf } from '../../helpers/book-of.ts';
import { doorSnapshot } from '../../helpers/sample-session.ts';

function quoted(id: string): string {
  const limits = hazards.find((one) => one.id === id)?.limits ?? [];
  return limits.map(({ text, source }) => `${text} [${source}]`).join('; ');
}

describe('hazards', () => {
  // NIOSH: 85 dBA for 8 h, each 3 dB halves it; OSHA: 90 dBA for 8 h, each 5 dB halves it.
  test('the times for noise are those of the two exchange rates', () => {
    const minutes = (level: number, base: number, step: number): number =>
      480 / 2 ** ((level - base) / step);
    expect([88, 91, 94, 97, 100].map((level) => minutes(level, 85, 3))).toEqual([
      240, 120, 60, 30, 15,
    ]);
    expect(quoted('noise')).toContain('85 dBA 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min');
    expect([95, 100].map((level) => minutes(level, 90, 5) / 60)).toEqual([4, 2]);
    expect(quoted('noise')).toContain('90 dBA 8 h, 95 4 h, 100 2 h');
  });

  // OSHA chemical sampling information (styrene); HSE plastics FAQ; OSHA wood dust; NIOSH 1988 PEL
  // project (MEK peroxide); 49 USC 30122(b).
  test.each([
    ['styrene', /100 ppm over 8 h, ceiling 200 ppm, 600 ppm for 5 min in any 3 h \[OSHA/],
    ['styrene', /50 ppm, 100 ppm for 15 min; 700 ppm/],
    ['styrene', /100 ppm over 8 h, 250 ppm over 15 min \[HSE/],
    ['dust', /15 mg\/m³ total, 5 mg\/m³ respirable \[OSHA/],
    ['dust', /NIOSH: 1 mg\/m³/],
    ['glass', /10 mg\/m³ \[HSE/],
    ['peroxide', /0\.2 ppm \(1\.5 mg\/m³\) \[ACGIH and NIOSH/],
    ['peroxide', /25 °C/],
    ['adhesive', /29 CFR 1910\.107/],
    ['airbag', /49 USC 30122\(b\)/],
  ])('%s: the printed limit stands with its source', (id, limit) => {
    expect(quoted(id)).toMatch(limit);
  });

  test('every limit names its source, and every hazard is brought by some kind', () => {
    for (const { limits } of hazards) for (const { source } of limits) expect(source).not.toBe('');
    const named = new Set([...bookOf().kinds.values()].flatMap((kind) => kind.hazards));
    expect([...named].sort()).toEqual([...hazardWords].sort());
  });
});

describe('jobCautions', () => {
  test('a door pair with resin has its dangers, the gravest first, with the rows that bring them', () => {
    const found = jobCautions(doorSnapshot());
    expect(found.map(({ hazard }) => hazard.id)).toEqual([
      ...['peroxide', 'styrene', 'exotherm', 'adhesive', 'paint'],
      ...['dust', 'glass', 'noise', 'heat_gun', 'airbag'],
    ]);
    const styrene = found.find(({ hazard }) => hazard.id === 'styrene');
    expect(styrene?.rows.map(({ id }) => id)).toEqual([
      ...['door_soak', 'door_flow', 'door_wet', 'door_fill'],
    ]);
  });

  test('a job without parts has none', () => {
    expect(jobCautions(openSession('format = 1\n').snapshot())).toEqual([]);
  });

  test('a shop’s own kind brings what it names; a word nobody knows is told', () => {
    const kind = `[[kind]]
id = "glow"

name = "Glow"
table = "part"
hazards = ["heat_gun", "dragons"]
`;
    const row = '[[part]]\nid = "lamp"\nkind = "glow"\n';
    const snapshot = openSession(`format = 1\n\n${row}\n${kind}`).snapshot();
    expect(jobCautions(snapshot).map(({ hazard, rows }) => [hazard.id, rows.length])).toEqual([
      ['heat_gun', 1],
    ]);
    expect(snapshot.problems.map(({ problem }) => problem.message).join(' ')).toContain(
      'names the hazard “dragons”',
    );
  });
});
