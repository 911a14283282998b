import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Kit } from '../../../extension/engine/book/book.ts';
import { kitProblems, kitStart } from '../../../extension/engine/book/kit-answers.ts';
import { kitRows, type WrittenRow } from '../../../extension/engine/book/kit-rows.ts';
import { bookOf, kitOf } from '../../helpers/book-of.ts';

const demo = bookOf();
const inches = { units: 'in', currency: 'USD' } as const;
const midbass = {
  base: 'door_base',
  frame: '6 5/8',
  cutout: '5 5/8"',
  depth: '2 3/4 in',
  magnet: '3 1/2 in',
  behind: '2 1/2 in',
};

function rowsOf(
  kit: Kit,
  answers: Record<string, string>,
  taken: readonly string[] = [],
): readonly WrittenRow[] {
  const rows = kitRows(kit, answers, { taken: new Set(taken), settings: inches });
  if (!rows.ok) throw new Error(rows.problem.message);
  return rows.value;
}

function find(rows: readonly WrittenRow[], id: string): WrittenRow | undefined {
  return rows.find((row) => row.id === id);
}

const small = bookOf(`[book]
currency = "USD"

[[kit]]
id = "pod"
name = "Pod"

[[question]]
id = "pod_id"
kit = "pod"
key = "id"
type = "id"
start = "pod"

[[question]]
id = "pod_lip"
kit = "pod"
key = "lip"
type = "length"

[[kit_row]]
id = "pod_1"
kit = "pod"
table = "part"
row = "{id}"
set.name = "{id} for the {id}"

[[kit_row]]
id = "pod_2"
kit = "pod"
table = "part"
row = "{id}_ring"
set.on = "{id}"
set.depth = "={id}.size + {id}_ring.low + {lip}"
set.note = "goes with {id}_ring"
`);

describe('kitRows', () => {
  test('a driver position is a driver, a measure, its parts, work and checks, linked', () => {
    const rows = rowsOf(kitOf(demo, 'driver_position'), midbass);
    expect(rows.filter(({ table }) => table === 'part').map(({ id }) => id)).toEqual([
      'mid_ring',
      'mid_baffle',
      'mid_sticks',
      'mid_hole',
      'mid_grille',
      'mid_cloth',
      'mid_wire',
      'mid_ends',
    ]);
    expect(find(rows, 'mid')?.cells).toEqual({
      name: 'Midbass',
      frame: '6 5/8 in',
      cutout: '5 5/8 in',
      depth: '2 3/4 in',
      magnet: '3 1/2 in',
      sold: 'pair',
      supply: 'shop',
    });
    expect(find(rows, 'mid_ring')?.cells).toEqual({
      name: 'Midbass ring',
      kind: 'ring',
      on: 'door_base',
      driver: 'mid',
      depth:
        '=ROUNDUPTO(MAX(RING.DEPTH(driver.depth, job.mid_behind, book.driver_clearance, tilt, driver.magnet), shallowest), book.ring_step)',
      tilt: '15 deg',
    });
    expect(find(rows, 'mid_cloth')?.cells['on']).toBe('mid_grille');
  });

  test('defaulted cells stay blank: a baffle says only what it is, where and for which driver', () => {
    const baffle = find(rowsOf(kitOf(demo, 'driver_position'), midbass), 'mid_baffle');
    expect(Object.keys(baffle?.cells ?? {})).toEqual(['name', 'kind', 'on', 'driver']);
  });

  test('a no leaves out the rows that hang on it, and so does 0', () => {
    const rows = rowsOf(kitOf(demo, 'driver_position'), { ...midbass, grille: 'no', tasks: 'no' });
    expect(rows.map(({ id }) => id)).not.toContain('mid_grille');
    expect(rows.filter(({ table }) => table === 'task')).toEqual([]);
    const lay = rowsOf(kitOf(demo, 'lay_up'), { base: 'door_base', layers: '0' });
    expect(lay.map(({ id }) => id)).not.toContain('door_mat');
    expect(lay.map(({ id }) => id)).toContain('door_flow');
  });

  test('rows on a base take their first word from it', () => {
    const rows = rowsOf(kitOf(demo, 'lay_up'), { base: 'rear_left_base' });
    expect(rows[0]?.id).toBe('rear_left_skin');
    expect(find(rows, 'rear_left_soak')?.cells['on']).toBe('rear_left_skin');
  });

  test('a taken id gets a number and everything that refers to the row follows', () => {
    const rows = rowsOf(kitOf(demo, 'driver_position'), midbass, ['mid', 'mid_ring', 'mid_behind']);
    expect(find(rows, 'mid_2')?.table).toBe('driver');
    expect(find(rows, 'mid_baffle')?.cells).toMatchObject({ on: 'mid_ring_2', driver: 'mid_2' });
    expect(find(rows, 'mid_ring_2')?.cells['depth']).toContain('job.mid_behind_2,');
    expect(find(rows, 'mid_hole')?.cells['tilt']).toBe('=mid_ring_2.tilt');
    expect(find(rows, 'mid_room')?.cells['value']).toBe(
      '=DRIVER.CLEARANCE(on.depth, mid_2.depth, mid_2.magnet, on.tilt, job.mid_behind_2)',
    );
  });

  test('an answer that names another row is left alone when a row of the kit has its id', () => {
    const rows = rowsOf(kitOf(demo, 'cover'), { on: 'door_skin' }, ['door_skin', 'door_cover']);
    expect(find(rows, 'door_cover_2')?.cells['on']).toBe('door_skin');
    expect(find(rows, 'door_covering')?.cells['on']).toBe('door_cover_2');
  });

  test('ids change in links and formulas only, never in what people read', () => {
    const rows = rowsOf(kitOf(small, 'pod'), { lip: '5/8' }, ['pod', 'pod_ring']);
    expect(rows).toEqual([
      { table: 'part', id: 'pod_2', cells: { name: 'pod for the pod' } },
      {
        table: 'part',
        id: 'pod_ring_2',
        cells: {
          on: 'pod_2',
          depth: '=pod_2.size + pod_ring_2.low + 5/8in',
          note: 'goes with pod_ring',
        },
      },
    ]);
  });

  test('a formula that waits for an answer nobody gave is not written', () => {
    expect(find(rowsOf(kitOf(small, 'pod'), {}), 'pod_ring')?.cells).not.toHaveProperty('depth');
  });

  test('bare numbers get the unit of the job', () => {
    const metric = {
      taken: new Set<string>(),
      settings: { units: 'mm', currency: 'USD' },
    } as const;
    const rows = kitRows(
      kitOf(demo, 'driver_position'),
      { ...midbass, depth: '68', price: '90' },
      metric,
    );
    if (!rows.ok) throw new Error(rows.problem.message);
    expect(find(rows.value, 'mid')?.cells).toMatchObject({ depth: '68 mm', price: '90 USD' });
    expect(find(rows.value, 'mid_wire')?.cells['use']).toBe('2 m');
  });

  test('nothing is written while an answer is missing', () => {
    const rows = kitRows(kitOf(demo, 'panel'), {}, { taken: new Set() });
    expect(rows.ok ? '' : rows.problem.message).toBe('Outline: an answer is needed.');
  });

  test('whatever ids are taken, every link leads to a row of the kit or to an answer', () => {
    const kits = ['panel', 'driver_position', 'lay_up', 'cover', 'aim'].map((id) =>
      kitOf(demo, id),
    );
    const answers = {
      ...midbass,
      shape: 'rect(20in, 10in)',
      on: 'door_skin',
      ring: 'ring',
      rear: '30',
      up: '28',
      out: '24',
    };
    const ids = kits.flatMap((kit) => rowsOf(kit, answers).map(({ id }) => id));
    fc.assert(
      fc.property(fc.constantFrom(...kits), fc.subarray(ids), (kit, taken) => {
        const given = kit.id === 'aim' ? { ...answers, ring: 'mid_ring' } : answers;
        const rows = rowsOf(kit, given, taken);
        const own = rows.map(({ id }) => id);
        expect(new Set(own).size).toBe(own.length);
        expect(own.filter((id) => taken.includes(id))).toEqual([]);
        const links = rows.flatMap(({ cells }) =>
          ['panel', 'on', 'driver'].flatMap((column) => cells[column] ?? []),
        );
        const known = new Set([...own, ...Object.values(given)]);
        expect(links.filter((id) => !known.has(id))).toEqual([]);
      }),
    );
  });
});

describe('kitProblems', () => {
  const driver = kitOf(demo, 'driver_position');

  test('complete answers have no problem', () => {
    expect(kitProblems(driver, midbass, inches)).toEqual([]);
  });

  test.each([
    [{ frame: '' }, 'frame', 'Frame: an answer is needed.'],
    [{ depth: 'deep' }, 'depth', 'Driver depth: “deep” does not begin with a number'],
    [{ tilt: '15 in' }, 'tilt', 'Tilt: 15 in is a length'],
    [{ ring: 'bent' }, 'ring', 'Ring: “bent” is not offered; choose one of ring, tube_ring'],
    [{ id: '2nd' }, 'id', 'Short name: “2nd” cannot begin an id'],
    [{ id: 'driver' }, 'id', 'Short name: “driver” is a word with a meaning of its own'],
    [{ price: '90 EUR' }, 'price', 'Price: “90 EUR” is in EUR'],
  ])('%j is told at its question', (wrong, key, message) => {
    const problems = kitProblems(driver, { ...midbass, ...wrong }, inches);
    expect(problems.map((problem) => problem.key)).toEqual([key]);
    expect(problems[0]?.message).toContain(message);
  });

  test('an outline that cannot be is told', () => {
    const [problem] = kitProblems(kitOf(demo, 'panel'), { shape: 'rect(20in)' }, inches);
    expect(problem?.key).toBe('shape');
  });
});

describe('kitStart', () => {
  test('a job in millimetres is offered metric starts', () => {
    const wire = kitOf(demo, 'driver_position').questions.find(({ key }) => key === 'wire');
    if (wire === undefined) throw new Error('no question about wire');
    expect(kitStart(wire, inches)).toBe('6 ft');
    expect(kitStart(wire, { units: 'mm', currency: 'USD' })).toBe('2 m');
    expect(kitStart(wire)).toBe('6 ft');
  });
});
