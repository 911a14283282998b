import { describe, expect, test } from 'vitest';
import { workedOut } from '../../../extension/engine/skin/heavy-skin.ts';
import {
  foundSkin,
  panelView,
  wished,
  wishedDrawing,
  wishedSkin,
  type SkinFound,
} from '../../../extension/host/views/panel-view.ts';
import type { PanelView, PanelWish } from '../../../extension/protocol/panel-view.ts';
import { openSession } from '../../../extension/engine/index.ts';
import { placedSnapshot, type PlacedJob } from '../../helpers/placed-job.ts';

const plan: PanelWish = { base: '', hand: 'drawn', picture: 'plan', ring: '' };
const none: SkinFound = { skin: undefined, message: '' };

function view(wish: Partial<PanelWish> = {}, job: PlacedJob = {}): PanelView {
  return panelView(wished({ ...plan, ...wish }, placedSnapshot(job)), none, '');
}

describe('panelView', () => {
  test('what is wished for is told as what is shown; names that are gone fall back', () => {
    const { wish, bases, hands, rings } = view({ base: 'gone', ring: 'gone' });
    expect(wish).toMatchObject({ base: 'base', ring: 'ring' });
    expect(bases).toEqual([{ value: 'base', label: 'Base' }]);
    expect(hands.map(({ value }) => value)).toEqual(['drawn', 'left', 'right']);
    expect(rings).toEqual([{ value: 'ring', label: 'Ring' }]);
  });

  test('every row with a mark has words', () => {
    const { drawing, rows } = view();
    const marked = new Set(drawing?.marks.map(({ row }) => row).filter((row) => row !== ''));
    expect([...marked].filter((row) => rows[row] === undefined)).toEqual([]);
    expect(rows['part/ring']).toMatch(/^Ring, bent ring, 7 1\/2 in/);
  });

  test('the plan of a ring, its driver and its opening is a message of at most 40 kB', () => {
    expect(JSON.stringify(view()).length).toBeLessThan(40_000);
  });

  test('a ring can be dragged in sixteenths of an inch; a hole under it goes with it', () => {
    const { movables, step } = view();
    expect(movables.map(({ row }) => row)).toEqual(['part/ring']);
    expect(movables[0]).toMatchObject({ x: -101.6, y: 25.4, held: '' });
    expect(step).toBeCloseTo(25.4 / 16, 9);
  });

  test('while the job is locked nothing moves, and it says why', () => {
    const locked = panelView(wished(plan, placedSnapshot()), none, 'This file is read-only.');
    expect(locked.movables[0]?.held).toBe('This file is read-only.');
  });

  test('each picture without what it needs says what is missing', () => {
    const empty = openSession('format = 1\n').snapshot();
    expect(panelView(wished(plan, empty), none, '').message).toMatch(/^No base yet/);
    const bare = openSession('format = 1\n\n[[part]]\nid = "base"\nkind = "base"\n').snapshot();
    expect(panelView(wished(plan, bare), none, '').message).toContain('no outline yet');
    expect(view({ picture: 'strip', hand: 'right' }, { hand: 'left' }).message).toContain(
      'insert a ring',
    );
  });

  test('only pictures that show the skin ask for it', () => {
    const asked = (picture: PanelWish['picture']): boolean =>
      wishedSkin(wished({ ...plan, picture }, placedSnapshot())) !== undefined;
    expect([asked('plan'), asked('strip'), asked('section'), asked('skin')]).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });

  test('the skin comes as triangles with height and stretch, in a message of at most 100 kB', () => {
    const found = wished({ ...plan, picture: 'skin' }, placedSnapshot());
    const asked = wishedSkin(found);
    if (asked?.state !== 'question') throw new Error('There is no question.');
    const skin = foundSkin(found, workedOut(asked.question));
    const { skin: shown, words, title } = panelView(found, skin, '');
    expect(title).toBe('Base: skin');
    expect(words.length).toBeGreaterThan(2);
    expect(shown?.scales.map(({ key }) => key)).toEqual(['height', 'stretch']);
    if (shown === undefined) throw new Error('There is no skin.');
    const nodes = shown.points.length / 3;
    expect(shown.scales.map(({ values }) => values.length)).toEqual([nodes, nodes]);
    expect(Math.max(...shown.triangles)).toBeLessThan(nodes);
    expect(JSON.stringify(shown).length).toBeLessThan(100_000);
    expect(wishedDrawing(found, skin.skin)?.id).toBe('skin');
  });

  test('a skin that is not there yet, or not at rest, is said to be', () => {
    const found = wished({ ...plan, picture: 'skin' }, placedSnapshot());
    expect(panelView(found, foundSkin(found, undefined), '').message).toBe(
      'The skin is not calculated yet.',
    );
    expect(panelView(found, foundSkin(found, {}), '').message).toContain('does not come to rest');
  });
});
