import { describe, expect, test } from 'vitest';
import { takenMaterialProblems } from '../../../extension/engine/book/check-book.ts';
import { foundation } from '../../../extension/engine/book/foundation.ts';
import { isTableKind, kindProblems } from '../../../extension/engine/book/read-kinds.ts';
import { kitTableProblems } from '../../../extension/engine/book/read-kits.ts';
import { bookOf, kindOf } from '../../helpers/book-of.ts';
import { sheet } from '../../helpers/workbook-of.ts';

const demo = bookOf();

function chartAt(temperature: string): string {
  const head = `[job]\ntemperature = "${temperature}"\n`;
  const measure = '[[measure]]\nid = "share"\nvalue = "=MIX.CHART(job.temperature)"\n';
  return sheet(`${head}\n${measure}`).says('measure/share.value');
}

describe('readBuiltIn', () => {
  test('kinds and kits that come with the program have no faults', () => {
    const { kind, kit, question, kit_row, material } = foundation('priced').tables;
    const faults = [
      ...[...kind.values()]
        .filter(({ id }) => !isTableKind(kindOf(demo, id)))
        .flatMap((row) => kindProblems(row, kindOf(demo, row.id), demo.kinds)),
      ...takenMaterialProblems([...demo.kinds.values()], material),
      ...kitTableProblems({ kits: kit, questions: question, rows: kit_row }),
    ];
    expect(kind.size).toBeGreaterThan(50);
    expect(kit_row.size).toBeGreaterThan(50);
    expect(faults).toEqual([]);
  });

  test('every kind of part that such a job takes is built in', () => {
    const parts = [...demo.kinds.values()].filter((kind) => kind.table === 'part');
    expect(parts.filter((kind) => !isTableKind(kind)).map(({ id }) => id)).toEqual([
      'base',
      'existing',
      'hole',
      'ring',
      'tube_ring',
      'stacked_ring',
      'baffle',
      'shim',
      'fasteners',
      'block',
      'limit',
      'skin',
      'resin',
      'mat',
      'filler',
      'vinyl',
      'grille',
      'grille_cloth',
      'adhesive',
      'paint',
      'stiffener',
      'clip',
      'wiring_hole',
      'trim_edge',
      'bezel',
      'gasket',
      'mat_layer',
      'sanding',
      'consumable',
      'wiring',
      'extra',
    ]);
  });

  test('every column and result of a kind has a label and a line of help', () => {
    const silent = [...demo.kinds.values()]
      .filter((kind) => !isTableKind(kind))
      .flatMap((kind) =>
        [...kind.columns, ...kind.results.keys()]
          .filter((key) => !kind.labels.get(key) || !kind.helps.get(key))
          .map((key) => `${kind.id}.${key}`),
      );
    expect(silent).toEqual([]);
  });

  test('whatever can be set wrong at the bench carries a caution', () => {
    const careless = ['base', 'baffle', 'skin', 'resin', 'mat', 'filler', 'vinyl', 'grille_cloth'];
    for (const id of [...careless, 'adhesive', 'paint']) {
      expect(kindOf(demo, id).cautions, id).not.toEqual([]);
      expect(kindOf(demo, id).steps, id).not.toEqual([]);
    }
    expect(kindOf(demo, 'resin').cautions.join(' ')).toMatch(/peroxide.*Styrene/s);
    expect(kindOf(demo, 'base').cautions.join(' ')).toContain('airbag');
  });

  test('every part but a one-off cost has help, steps, tools and cautions for the shop sheet', () => {
    const parts = [...demo.kinds.values()].filter(
      (kind) => kind.table === 'part' && !isTableKind(kind) && kind.id !== 'extra',
    );
    const lacking = parts.flatMap(({ id, help, steps, tools, cautions }) =>
      help !== '' && steps.length > 0 && tools.length > 0 && cautions.length > 0 ? [] : [id],
    );
    expect(parts.length).toBeGreaterThan(25);
    expect(lacking).toEqual([]);
  });

  // Loud or hot tools, and materials with vapour: whoever sets them out is told.
  test.each([
    ['noise', /router|jigsaw|hole saw|(?:disc|belt) sander|^saw$/],
    ['heat_gun', /heat gun/],
    ['peroxide', /catalyst measure/],
  ])('a kind that takes such tools brings %s', (hazard, tool) => {
    const kinds = [...demo.kinds.values()].filter(({ tools }) =>
      tools.some((name) => tool.test(name)),
    );
    expect(kinds.length).toBeGreaterThan(0);
    const silent = kinds.filter(({ hazards }) => !hazards.includes(hazard));
    expect(silent.map(({ id }) => id)).toEqual([]);
  });

  test.each([
    ['styrene', /poly_resin|light_filler/],
    ['peroxide', /^catalyst$|light_filler/],
    ['adhesive', /contact_cement|spray_glue|build_glue/],
    ['paint', /satin_black|sealer/],
    ['glass', /^mat_/],
    ['dust', /mdf_|hardboard_|plywood_|panelboard_|light_filler/],
  ])('a kind that takes such a material, or draws it, brings %s', (hazard, material) => {
    const kinds = [...demo.kinds.values()].filter(({ defaults, draws }) =>
      [defaults, ...draws.map(({ cells }) => cells)].some((cells) =>
        material.test(cells.get('material') ?? ''),
      ),
    );
    expect(kinds.length).toBeGreaterThan(0);
    const silent = kinds.filter(({ hazards }) => !hazards.includes(hazard));
    expect(silent.map(({ id }) => id)).toEqual([]);
  });

  test('checks and tasks that kinds call for exist', () => {
    for (const kind of demo.kinds.values()) {
      for (const check of kind.checks) expect(demo.kinds.get(check)?.table, check).toBe('check');
      for (const task of kind.tasks.flatMap((call) => call.split('/')))
        expect(demo.kinds.get(task)?.table, task).toBe('task');
    }
  });

  test('a kind calls for checks that can be made on it, and every check has kinds that call for it', () => {
    const calls = [...demo.kinds.values()].flatMap(({ id, checks }) =>
      checks.map((check) => [check, id] as const),
    );
    for (const [check, id] of calls) expect(kindOf(demo, check).on, check).toContain(id);
    const called = new Set(calls.map(([check]) => check));
    const checks = [...demo.kinds.values()].filter(
      (kind) => kind.table === 'check' && !isTableKind(kind) && kind.id !== 'clearance',
    );
    expect(checks.length).toBeGreaterThan(14);
    expect(checks.map(({ id }) => id).filter((id) => !called.has(id))).toEqual([]);
  });

  test('every material of the demo book has a pack', () => {
    const sold = new Set(demo.packs.map(({ cells }) => cells.get('material')));
    expect([...demo.materials.keys()].filter((id) => !sold.has(id))).toEqual([]);
  });

  test('constants that formulas of kinds and kits read are there', () => {
    const texts = [...demo.kinds.values()].flatMap((kind) => [
      ...kind.defaults.values(),
      ...kind.results.values(),
      ...kind.draws.flatMap(({ cells }) => [...cells.values()]),
    ]);
    const kitTexts = demo.kits.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => [...cells.values()]),
    );
    const read = [...texts, ...kitTexts].flatMap((text) =>
      [...text.matchAll(/\bbook\.([a-z_]+)/g)].map((found) => found[1] ?? ''),
    );
    expect(read.length).toBeGreaterThan(20);
    expect([...new Set(read)].filter((id) => !demo.constants.has(id))).toEqual([]);
  });

  // East Coast Fibreglass, catalyst addition chart: 4 % at 5 to 13 °C, 3 % to 16, 2 % to 20, 1 % to 35.
  test('the catalyst chart is the published one, without gaps between its bands', () => {
    const bands = demo.bands.filter(({ chart }) => chart === 'catalyst');
    expect(bands.map(({ from, to, value }) => [from, to, value])).toEqual([
      ['5 degC', '13 degC', '4 %'],
      ['13 degC', '16 degC', '3 %'],
      ['16 degC', '20 degC', '2 %'],
      ['20 degC', '35 degC', '1 %'],
    ]);
  });

  // The same chart: 41, 55, 61, 68, 95 °F. A band has its lower edge and not its upper one.
  test.each([
    ['5 degC', '0.04'],
    ['12.99 degC', '0.04'],
    ['13 degC', '0.03'],
    ['16 degC', '0.02'],
    ['68 degF', '0.01'],
    ['19.9 degC', '0.02'],
    ['34.9 degC', '0.01'],
  ])('at %s the chart says %s', (text, share) => {
    expect(chartAt(text)).toBe(share);
  });

  test('beyond its last edge the chart says nothing', () => {
    expect(chartAt('35 degC')).toMatch(/ends below/);
    expect(chartAt('4.9 degC')).toMatch(/begins at/);
  });
});
