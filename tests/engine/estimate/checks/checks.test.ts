import { describe, expect, test } from 'vitest';
import { openSession, type Check, type Snapshot } from '../../../../extension/engine/index.ts';
import { doorPair, replaced } from '../../../helpers/sample-session.ts';

const parts = `
[[panel]]
id = "door"
name = "Door"
hands = "pair"

[[measure]]
id = "gap"
name = "Room at the seal"
value = "1/2 in"

[[part]]
id = "base"
kind = "base"
panel = "door"
shape = "roundrect(26 in, 15 in, 2 in)"

[[part]]
id = "ring"
kind = "ring"
on = "base"
size = "8 in"
depth = "2 in"
tilt = "10 deg"

[[part]]
id = "skin"
kind = "skin"
on = "base"

[[part]]
id = "soak"
kind = "resin"
on = "skin"
percent = "2 %"
`;

function job(rows: string, head = 'temperature = "65 degF"'): Snapshot {
  return openSession(
    `format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\n${head}\n${parts}\n${rows}`,
  ).snapshot();
}

function row(cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return ['[[check]]', 'id = "it"', ...lines, ''].join('\n');
}

function checked(cells: Readonly<Record<string, string>>, head?: string): Check {
  const [check] = job(row(cells), head).checks;
  if (check === undefined) throw new Error('There is no check.');
  return check;
}

describe('a check', () => {
  test('tells value, limit and what is to spare', () => {
    const check = checked({ name: 'Seal', kind: 'seal', on: 'base', most: '=job.gap' });
    expect(check).toMatchObject({ outcome: 'pass', level: 'must', on: 'base', kind: 'seal' });
    expect(check.message).toBe(
      'Seal: 11/32 in; at most 1/2 in is allowed, so 5/32 in is to spare.',
    );
  });

  test('that fails says by how much, and is an error where it must hold', () => {
    const cells = { kind: 'seal', on: 'base', most: '1/4 in' };
    const must = job(row(cells));
    expect(must.checks[0]?.outcome).toBe('fail');
    expect(must.problems).toMatchObject([
      {
        problem: { code: 'check-failed', severity: 'error' },
        place: { table: 'check', row: 'it', column: 'value' },
      },
    ]);
    expect(must.problems[0]?.problem.message).toContain('too much');
    const should = job(row({ ...cells, level: 'should' }));
    expect(should.problems).toMatchObject([{ problem: { severity: 'warning' } }]);
  });

  test('without a name is called by its kind and what it looks at', () => {
    const { name } = checked({ kind: 'seal', on: 'base', most: '1 in' });
    expect(name).toBe('Edge at the door seal (base)');
  });

  test.each([
    [{ kind: 'clearance', most: '1 in' }, 'its value is blank'],
    [{ kind: 'clearance', value: '1 in' }, 'at least and at most are both blank'],
    [{ kind: 'clearance', value: '1 in', most: '2 lb' }, 'cannot be compared with the value'],
    [{ kind: 'clearance', value: '1 in', most: '2 in', near: '-1/4 in' }, 'not below nothing'],
    [{ kind: 'clearance', value: '=job.nothing', most: '2 in' }, 'nothing'],
  ])('%j says what is missing', (cells, words) => {
    const check = checked(cells);
    expect(check.outcome).toBe('no-answer');
    expect(check.message).toContain(words);
  });

  test('a job that names no unit of its own comes out alike in millimetres', () => {
    const cells = row({ kind: 'seal', on: 'base', most: '=job.gap' });
    const text = `format = 1\n\n[job]\nunits = "mm"\ncurrency = "USD"\n${parts}\n${cells}`;
    const [check] = openSession(text).snapshot().checks;
    expect(check?.outcome).toBe('pass');
    expect(check?.message).toContain('12.7 mm');
  });

  test('stays the same object while nothing it looks at changes', () => {
    const session = openSession(doorPair);
    const before = session.snapshot().checks;
    session.setText(replaced(doorPair, 'client = "Demo client"', 'client = "Another client"'));
    expect(session.snapshot().checks).toBe(before);
  });
});

describe('kinds of check', () => {
  // The chart's bands end at 5, 13, 16, 20 and 35 °C: East Coast Fibreglass, catalyst addition chart.
  test.each([
    ['18 degC', 'pass'],
    ['18.9 degC', 'pass'],
    ['19 degC', 'decide'],
    ['20 degC', 'decide'],
    ['21 degC', 'decide'],
    ['15.1 degC', 'decide'],
    ['17.4 degC', 'pass'],
  ])('catalyst at %s: %s', (temperature, outcome) => {
    const check = checked({ kind: 'catalyst_range', on: 'soak' }, `temperature = "${temperature}"`);
    expect(check.outcome).toBe(outcome);
    expect(check.message).toContain('2 %');
    expect(check.message.includes('decide which side')).toBe(outcome === 'decide');
  });

  // Composites Manufacturing, February 2017, page 3: preferred 1.25 to 2.0 %.
  test.each([
    ['1 %', 'fail'],
    ['1.25 %', 'decide'],
    ['1.5 %', 'pass'],
    ['2 %', 'pass'],
    ['2.1 %', 'fail'],
  ])('a coat with %s of catalyst', (percent, outcome) => {
    const text = parts.replace('percent = "2 %"', `percent = "${percent}"`);
    const cells = row({ kind: 'catalyst_range', on: 'soak' });
    const [check] = openSession(
      `format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\ntemperature = "65 degF"\n${text}\n${cells}`,
    ).snapshot().checks;
    expect(check).toMatchObject({ outcome, level: 'should' });
  });

  // The same chart says 1 % from 20 °C, which the shop's range holds at 1.25 %; half a percent is
  // common practice, no source.
  test('2 % in the warm is for somebody to decide, with what the chart says', () => {
    const warm = checked({ kind: 'catalyst_range', on: 'soak' }, 'temperature = "25 degC"');
    expect(warm.outcome).toBe('decide');
    expect(warm.message).toContain(
      'Chart: 1 % at 77 degF; the shop keeps to 1.25 % to 2 %. Decide whether 2 % is meant',
    );
  });

  // Great Midwest Yacht Company: not below about 65 °F; 90 °F is common practice, no source.
  test.each([
    ['50 degF', 'decide'],
    ['62 degF', 'decide'],
    ['64 degF', 'pass'],
  ])('a shop at %s: %s', (temperature, outcome) => {
    const check = checked({ kind: 'catalyst_range', on: 'soak' }, `temperature = "${temperature}"`);
    expect(check.outcome).toBe(outcome);
    const told = check.message.includes('polyester is mixed from 65 degF to 90 degF');
    expect(told).toBe(outcome === 'decide');
  });

  test('what the kind takes for the temperature itself needs no decision', () => {
    const text = parts.replace('percent = "2 %"\n', '');
    const cells = row({ kind: 'catalyst_range', on: 'soak' });
    for (const celsius of [18, 25, 30]) {
      const head = `temperature = "${String(celsius)} degC"`;
      const [check] = openSession(
        `format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\n${head}\n${text}\n${cells}`,
      ).snapshot().checks;
      expect(check?.outcome, head).toBe('pass');
    }
  });

  test('a coat that is measured by volume is weighed for its pot', () => {
    const spread = (use: string): number => {
      const text = parts.replace('percent = "2 %"', `percent = "2 %"\nuse = "${use}"`);
      const cells = row({ kind: 'pot_life', on: 'soak' });
      const [check] = openSession(
        `format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\ntemperature = "65 degF"\n${text}\n${cells}`,
      ).snapshot().checks;
      return check?.value?.base ?? Number.NaN;
    };
    // 200 ml at 1.10 g/cm3 are 220 g: 2 min to stir and 220/60 min to spread.
    expect(spread('200 ml')).toBeCloseTo(2 + 220 / 60, 9);
    expect(spread('220 g')).toBeCloseTo(2 + 220 / 60, 9);
    // More than a pot of 500 g is spread pot by pot.
    expect(spread('1 l')).toBeCloseTo(2 + 500 / 60, 9);
  });

  test('mat with its resin in one row is checked by its resin', () => {
    const patch = '\n[[part]]\nid = "patch"\nkind = "mat_layer"\non = "skin"\n';
    for (const kind of ['pot_life', 'catalyst_range']) {
      const [check] = job(`${patch}${row({ kind, on: 'patch' })}`).checks;
      expect(check?.outcome, kind).toBe('pass');
    }
  });

  test.each([
    ['vinyl_54', 'near'],
    ['carpet_54', 'fail'],
  ])('a grille with 1/8 in all round, covered with %s: %s', (material, outcome) => {
    const front = [
      ['baffle', 'kind = "baffle"', 'on = "ring"'],
      ['front', 'kind = "grille"', 'on = "baffle"'],
      ['cover', 'kind = "vinyl"', 'on = "skin"', `material = "${material}"`],
    ].map(([id = '', ...cells]) => `\n[[part]]\nid = "${id}"\n${cells.join('\n')}\n`);
    const [check] = job(`${front.join('')}${row({ kind: 'grille_gap', on: 'front' })}`).checks;
    expect(check).toMatchObject({ outcome, level: 'must' });
    // The covering and 3/64 in for cloth and play.
    const covering = material === 'vinyl_54' ? 0.05 : 3 / 16;
    expect(check?.least?.base).toBeCloseTo((covering + 3 / 64) * 25.4, 9);
  });

  test('a coat goes on before it gels in the cool and not in the heat', () => {
    const cells = { kind: 'pot_life', on: 'soak' };
    expect(checked(cells, 'temperature = "65 degF"').outcome).toBe('pass');
    const hot = checked(cells, 'temperature = "104 degF"');
    expect(hot).toMatchObject({ outcome: 'fail', level: 'should' });
    expect(hot.message).toMatch(/min/);
  });

  test('a base of 26 × 15 in takes 31.25 % of the width of a 4 × 8 ft sheet', () => {
    const check = checked({ kind: 'sheet_size', on: 'base' });
    expect(check.message).toContain('31.25 %; at most 100 % is allowed, so 68.75 % is to spare.');
    expect(check.value?.base).toBeCloseTo(Math.max(26 / 96, 15 / 48), 9);
    expect(check.outcome).toBe('pass');
  });

  test('resin past half a year is told', () => {
    const old = checked({ kind: 'shelf_life', on: 'soak', value: '200 day' });
    expect(old).toMatchObject({ outcome: 'fail', level: 'should' });
    expect(old.message).toContain('20 day too much');
    expect(checked({ kind: 'shelf_life', on: 'soak' }).outcome).toBe('no-answer');
  });

  test('a strip bends, and a ring stands clear of its base', () => {
    expect(checked({ kind: 'strip_bend', on: 'ring' }).outcome).not.toBe('no-answer');
    expect(checked({ kind: 'ring_low', on: 'ring' }).outcome).toBe('pass');
  });

  test.each(['dash', 'seat', 'glove_box'])('%s counts everything that lies at a ring', (kind) => {
    const tight = checked({ kind, on: 'ring', most: '1 in' });
    expect(tight.outcome).toBe('fail');
    expect(checked({ kind, on: 'ring', most: '6 in' }).outcome).toBe('pass');
  });

  test('moulding and seal count what lies on the board', () => {
    for (const kind of ['moulding', 'seal'])
      expect(checked({ kind, on: 'base', most: '1 in' }).outcome).toBe('pass');
  });
});
