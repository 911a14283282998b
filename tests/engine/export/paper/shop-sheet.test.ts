import { describe, expect, test } from 'vitest';
import { htmlPage, type PaperGround } from '../../../../extension/engine/export/paper/paper.ts';
import { jobWith, row, task } from '../../../helpers/priced-job.ts';
import { paperOf } from '../../../helpers/paper-of.ts';

function pageOf(ground: PaperGround): string {
  return htmlPage(paperOf('shopsheet', ground));
}

/** Rows of the table below a heading, cell by cell. */
function tableOf(page: string, heading: string): readonly (readonly string[])[] {
  const from = page.indexOf(`<h2>${heading}</h2>`);
  const table = page.slice(page.indexOf('<table>', from), page.indexOf('</table>', from));
  return [...table.matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/g)].map(([, cells = '']) =>
    [...cells.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, text = '']) =>
      text
        .replaceAll('<span class="box"></span>', '☐')
        .replaceAll(/<[^>]+>/g, ' ')
        .replaceAll(/\s+/g, ' ')
        .trim(),
    ),
  );
}

const pair = row('panel', 'door', { name: 'Front door', hands: 'pair' });
const base = row('part', 'base', {
  name: 'Base',
  kind: 'base',
  panel: 'door',
  shape: 'rect(24 in, 12 in)',
});

function ring(id: string, more: Readonly<Record<string, string>>): string {
  return row('part', id, {
    ...{ name: id, kind: 'ring', on: 'base', material: 'panelboard_3', size: '8 in' },
    ...{ depth: '2 in', tilt: '15 deg', turn: '45 deg', ...more },
  });
}

const both = jobWith({}, pair, base, ring('Driver_side', { hand: 'left' }), ring('Other', {}));

describe('shopSheetPaper', () => {
  test('left and right stand in columns of their own, each with a box to tick', () => {
    const cuts = tableOf(pageOf(both), 'Cut list');
    expect(cuts[0]).toEqual(['Piece', 'Left', 'Right', 'Blank', 'Outline']);
    expect(cuts).toContainEqual(['Base', '☐ 1', '☐ 1', '24 in × 12 in', '24 in × 12 in']);
    const left = cuts.find(([piece]) => piece === 'Driver_side');
    expect(left?.slice(0, 3)).toEqual(['Driver_side', '☐ 1', '—']);
  });

  test('a lean is told for each side on the clock: its mirror image on the left', () => {
    const rings = tableOf(pageOf(both), 'Rings');
    expect(rings.find(([name]) => name === 'Other')?.at(-1)).toBe(
      '15 deg, to 45 deg clock: left 10:30, right 1:30',
    );
    expect(rings.find(([name]) => name === 'Driver_side')?.at(-1)).toBe(
      '15 deg, to 45 deg clock: left 10:30',
    );
  });

  test('panels that are alike have no sides', () => {
    const alike = row('panel', 'door', { name: 'Shelf', hands: 'alike', count: '3' });
    const cuts = tableOf(pageOf(jobWith({}, alike, base)), 'Cut list');
    expect(cuts[0]).toEqual(['Piece', 'How many', 'Blank', 'Outline']);
    expect(cuts).toContainEqual(['Base', '☐ 3', '24 in × 12 in', '24 in × 12 in']);
  });

  test('what is drawn beside a part is cut to length, not to the outline of the part', () => {
    const baffle = row('part', 'baffle', {
      ...{ name: 'Baffle', kind: 'baffle', on: 'Other', driver: 'mid', shape: 'circle(7 in)' },
    });
    const driver = row('driver', 'mid', { name: 'Midbass', cutout: '5 in', frame: '6 in' });
    const ground = jobWith({}, pair, driver, base, ring('Other', {}), baffle);
    const cuts = tableOf(pageOf(ground), 'Cut list');
    expect(cuts.find(([piece]) => piece === 'Baffle')?.at(-1)).toBe('7 in across');
    expect(cuts.find(([piece]) => piece === 'Baffle (gasket)')?.at(-1)).toBe('');
  });

  test('the bearing to fit stands beside each grille, with its bit and the gap it leaves', () => {
    const rows = [
      row('part', 'baffle', { name: 'Baffle', kind: 'baffle', on: 'Other', shape: 'circle(7 in)' }),
      row('part', 'grille', {
        ...{ name: 'Grille', kind: 'grille', on: 'baffle', shape: 'circle(6 13/16 in)' },
      }),
    ];
    const bearings = tableOf(
      pageOf(jobWith({}, pair, ring('Other', {}), ...rows)),
      'Bearing to fit',
    );
    expect(bearings).toEqual([
      ['Piece', 'Runs along', 'Bit', 'Bearing', 'Each side'],
      // 7 in in a mouth of 7 3/4 in leaves 3/8 in; 6 13/16 in in 7 in leaves 3/32 in.
      ['Baffle', 'Other', '1 3/8 in', '5/8 in', '3/8 in'],
      [
        'Grille',
        'Baffle',
        '1 3/8 in',
        '1 3/16 in no usual size: 1 1/8 in leaves 1/8 in',
        '≈ 1/8 in',
      ],
    ]);
  });

  test('tasks of one name are told apart by their panels', () => {
    const ground = jobWith(
      { date: '2026-11-25' },
      row('panel', 'front', { name: 'Front door', hands: 'pair' }),
      row('panel', 'rear', { name: 'Rear door', hands: 'pair' }),
      task('one', '30 min', { name: 'Sand', on: 'front' }),
      task('two', '30 min', { name: 'Sand', on: 'rear' }),
    );
    const order = tableOf(pageOf(ground), 'Order of work');
    expect(order.slice(1).map((cells) => cells[1])).toEqual([
      'Sand Front door.',
      'Sand Rear door.',
    ]);
  });
});
