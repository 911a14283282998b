import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Edit } from '../../extension/engine/job/source.ts';
import { openSession } from '../../extension/engine/session/session.ts';
import type { Snapshot } from '../../extension/engine/session/snapshot.ts';
import { enterSteps } from '../helpers/enter-steps.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const pair = readFileSync(new URL('front-door-pair.paneljob', folder), 'utf8');

function insert(id: string, cells: Readonly<Record<string, string>>): Edit {
  return { kind: 'insert-row', table: 'part', id, cells: { name: id, ...cells } };
}

/** The front pair on the demo book with these rows more. */
function withRows(...edits: readonly Edit[]): Snapshot {
  const session = openSession(pair);
  const planned = session.plan(edits);
  if (!planned.ok) throw new Error(planned.problem.message);
  session.setText(planned.value.text);
  return session.snapshot();
}

const before = withRows();

function figure({ workbook }: Snapshot, id: string, column: string): number {
  const result = workbook.row('part', id)?.cell(column).result;
  if (result?.state !== 'value' || result.value.kind !== 'quantity') {
    throw new Error(`${id}.${column} has no figure`);
  }
  return result.value.base;
}

function text({ workbook }: Snapshot, id: string, column: string): string {
  const result = workbook.row('part', id)?.cell(column).result;
  if (result?.state !== 'value') return '';
  const { value } = result;
  return value.kind === 'text' ? value.text : value.kind === 'choice' ? value.word : '';
}

function added(after: Snapshot, material: string): number {
  const need = ({ bill }: Snapshot): number =>
    bill.lines.find(({ id }) => id === material)?.need?.base ?? 0;
  return need(after) - need(before);
}

// Notes tell of what somebody has decided.
/** What a person is told of these rows; the tasks they call for are another sheet's question. */
function messages({ problems }: Snapshot): readonly string[] {
  return problems
    .filter(({ problem }) => problem.severity !== 'note' && problem.code !== 'work-missing')
    .map(({ problem }) => problem.message);
}

const inch = 25.4;

describe('a stiffener', () => {
  test('runs along the base, short of its edges, and draws glue for its face', () => {
    const after = withRows(insert('rib', { kind: 'stiffener', on: 'door_base' }));
    expect(messages(after)).toEqual([]);
    // 26 in of base less 1 1/2 in at each end; 2 in wide.
    expect(figure(after, 'rib', 'length') / inch).toBeCloseTo(23, 9);
    expect(figure(after, 'rib', 'area') / inch ** 2).toBeCloseTo(46, 9);
    expect(added(after, 'plywood_6')).toBeGreaterThan(0);
    // 46 sq in at 6 mil on two panels.
    expect(added(after, 'wood_glue') / inch ** 3).toBeCloseTo(2 * 46 * 0.006, 9);
  });

  test('on a panel shorter than its ends it says so', () => {
    const after = withRows(insert('rib', { kind: 'stiffener', on: 'door_base', length: '-1 in' }));
    expect(messages(after).join(' ')).toMatch(/rib has no length left/);
  });

  test('adds nothing to what is built up in front of the door', () => {
    const after = withRows(insert('rib', { kind: 'stiffener', on: 'door_base' }));
    const edge = (one: Snapshot): unknown => one.workbook.row('check', 'door_edge')?.cell('value');
    expect(edge(after)).toMatchObject({ result: (edge(before) as { result: unknown }).result });
  });
});

describe('clips', () => {
  test('are counted round the edge where nobody counted them', () => {
    const after = withRows(insert('more_clips', { kind: 'clip', on: 'door_base' }));
    expect(messages(after)).toEqual([]);
    // 78.57 in round at 8 in: 10.
    expect(figure(after, 'more_clips', 'qty')).toBe(10);
    expect(added(after, 'clip')).toBe(20);
  });
});

describe('a wiring hole', () => {
  test('takes a grommet a panel and counts as routed', () => {
    const basis = (one: Snapshot): number => {
      const result = one.workbook.row('task', 'door_cutting')?.cell('basis').result;
      return result?.state === 'value' && result.value.kind === 'quantity' ? result.value.base : 0;
    };
    const after = withRows(insert('pass', { kind: 'wiring_hole', on: 'door_base' }));
    expect(messages(after)).toEqual([]);
    expect(added(after, 'grommet')).toBe(2);
    expect((basis(after) - basis(before)) / inch).toBeCloseTo(Math.PI / 2, 9);
  });
});

describe('edge trim', () => {
  test('goes round the panel with an overlap to cut', () => {
    const after = withRows(insert('edging', { kind: 'trim_edge', on: 'door_base' }));
    expect(messages(after)).toEqual([]);
    expect(figure(after, 'edging', 'use') / inch).toBeCloseTo(79.566, 3);
  });
});

describe('a bezel', () => {
  test('covers the frame and clears it inside', () => {
    const after = withRows(insert('trim_ring', { kind: 'bezel', on: 'mid_baffle', driver: 'mid' }));
    expect(messages(after)).toEqual([]);
    // Frame 6 5/8 in: 3/8 in outside it, 1/16 in clear.
    expect(figure(after, 'trim_ring', 'length') / inch).toBeCloseTo(7.375, 9);
    expect(figure(after, 'trim_ring', 'size') / inch).toBeCloseTo(6.75, 9);
    expect(added(after, 'screw_8')).toBe(8);
  });

  test('without a ring left it cannot be made', () => {
    const cells = { kind: 'bezel', on: 'mid_baffle', driver: 'mid', size: '8 in' };
    expect(messages(withRows(insert('trim_ring', cells))).join(' ')).toMatch(/leaves no ring/);
  });
});

describe('a speaker gasket', () => {
  test('lies midway under the frame', () => {
    const after = withRows(insert('seal', { kind: 'gasket', on: 'door_base', driver: 'mid' }));
    expect(messages(after)).toEqual([]);
    // Midway between 6 5/8 and 5 5/8 in.
    expect(figure(after, 'seal', 'use') / inch).toBeCloseTo(Math.PI * 6.125, 6);
  });

  test('outside the frame it seals nothing', () => {
    const cells = { kind: 'gasket', on: 'door_base', driver: 'mid', size: '7 in' };
    expect(messages(withRows(insert('seal', cells))).join(' ')).toMatch(/does not lie under/);
  });
});

describe('a mat layer', () => {
  // UK fibreglass guide: 3 layers of 600 g mat on 1 m2 take 4.5 kg of resin at 2.5 to 1.
  test('brings its resin, catalyst, pot and brush in one row', () => {
    const cells = { kind: 'mat_layer', on: 'door_skin', layers: '3', percent: '2 %' };
    const after = withRows(insert('back', cells));
    expect(messages(after)).toEqual([]);
    const [glass, soak] = [figure(after, 'back', 'glass_mass'), figure(after, 'back', 'soak')];
    expect(soak / glass).toBeCloseTo(2.5, 9);
    expect(figure(after, 'back', 'mass')).toBeCloseTo(glass + soak, 9);
    // Two panels, 15 % of the resin and 5 % of the catalyst lost; 1.10 and 1.12 g/cm3.
    expect(added(after, 'poly_resin') / 1000).toBeCloseTo((2 * soak * 1.15) / 1.1, 6);
    expect(added(after, 'catalyst') / 1000).toBeCloseTo((2 * soak * 1.15 * 0.02 * 1.05) / 1.12, 6);
    expect([added(after, 'mix_pot'), added(after, 'chip_brush')]).toEqual([2, 2]);
  });

  // DER of ISO 12215-5's form with 2.56 and 1.20 g/cm3: 450 g at 2.5 to 1 sets to 1.11 mm a layer.
  test('tells what it sets to', () => {
    const cells = { kind: 'mat_layer', on: 'door_skin', material: 'mat_15', layers: '1' };
    const after = withRows(insert('back', cells));
    expect(figure(after, 'back', 'cured_thickness') / 1.11).toBeCloseTo(457.73 / 450, 2);
  });
});

describe('sanding', () => {
  test('takes whole discs for the surface, pass by pass', () => {
    const cells = {
      kind: 'sanding',
      on: 'door_skin',
      grit: '180',
      layers: '2',
      material: 'disc_180',
    };
    const after = withRows(insert('smooth', cells));
    expect(messages(after)).toEqual([]);
    // 348.3 sq in twice at a square foot a disc: 5 discs; two panels.
    expect(figure(after, 'smooth', 'use')).toBe(5);
    expect(added(after, 'disc_180')).toBe(10);
  });

  test('its minutes go by its own area and passes', () => {
    const row: Edit = {
      kind: 'insert-row',
      table: 'task',
      id: 'smoothing',
      cells: { name: 'Smooth', kind: 'sand', on: 'smooth' },
    };
    const after = withRows(
      insert('smooth', { kind: 'sanding', on: 'door_skin', layers: '2' }),
      row,
    );
    const basis = after.workbook.row('task', 'smoothing')?.cell('basis').result;
    const passes = figure(after, 'smooth', 'area') * figure(after, 'smooth', 'layers');
    const base = basis?.state === 'value' && basis.value.kind === 'quantity' ? basis.value.base : 0;
    expect(base / passes).toBeCloseTo(1, 9);
    expect(passes / figure(after, 'door_skin', 'area')).toBeCloseTo(2, 9);
  });
});

describe('the percent of a coat', () => {
  // East Coast Fibreglass's chart: 1 % from 20 °C; the shop keeps to 1.25 to 2 %.
  test('comes with its reason and with what it is a percentage of', () => {
    expect(text(before, 'door_soak', 'percent_reason')).toBe(
      'Chart: 1 % at 68 degF; the shop keeps to 1.25 % to 2 %',
    );
    expect(text(before, 'door_soak', 'mix_basis')).toBe('by_mass');
  });

  // The chart ends below 35 °C; 100 °F is 37.8 °C.
  test('that somebody typed needs no chart: none beyond its end, no reason without a temperature', () => {
    const reason = (temperature: string): string => {
      const job = openSession(pair.replace('temperature = "68 degF"\n', temperature)).snapshot();
      expect(messages(job).filter((one) => /chart|temperature/.test(one))).toEqual([]);
      return text(job, 'door_soak', 'percent_reason');
    };
    expect(reason('temperature = "100 degF"\n')).toMatch(/^Chart: none at 100 degF/);
    expect(reason('')).toBe('');
  });

  test('is taken by volume where the shop’s book says so', () => {
    const by = (word: string): number => {
      const head = '[[constant]]\nid = "mix_basis"\n\n';
      const job = `${pair}\n${head}value = "${word}"\nsource = "this shop"\n`;
      const { bill, problems } = openSession(job).snapshot();
      const told = problems.filter(({ problem }) => problem.severity !== 'note');
      expect(told.map(({ problem }) => problem.message)).toEqual([]);
      return bill.lines.find(({ id }) => id === 'catalyst')?.need?.base ?? 0;
    };
    // v/v against w/w: the ratio of the densities, 1.12 to 1.10; mL per 100 g: 1.12.
    expect(by('by_volume') / by('by_mass')).toBeCloseTo(1.12 / 1.1, 9);
    expect(by('ml_per_100g') / by('by_mass')).toBeCloseTo(1.12, 9);
  });
});

describe('kits of fittings', () => {
  test('write rows that stand, calculate and bill', () => {
    const steps = [
      { do: 'kit', kit: 'fittings', answers: { edge: 'yes' } },
      { do: 'kit', kit: 'driver_trim', answers: { driver: 'mid', gasket: 'yes' } },
      { do: 'kit', kit: 'second_skin', answers: {} },
    ] as const;
    const { problems, workbook, bill } = openSession(enterSteps(pair, steps)).snapshot();
    const told = problems.filter(({ problem }) => problem.severity !== 'note');
    expect(told.map(({ problem }) => problem.message)).toEqual([]);
    const kinds = new Set(workbook.rows('part').map(({ kind }) => kind));
    for (const kind of ['stiffener', 'trim_edge', 'wiring_hole', 'bezel', 'gasket']) {
      expect([...kinds], kind).toContain(kind);
    }
    for (const kind of ['mat_layer', 'sanding']) expect([...kinds], kind).toContain(kind);
    expect(bill.totals.complete).toBe(true);
  });
});
