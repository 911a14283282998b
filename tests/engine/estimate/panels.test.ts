import { describe, expect, test } from 'vitest';
import {
  allPanels,
  multiplicity,
  openPanelFinder,
  panelCount,
} from '../../../extension/engine/estimate/panels.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { fakeRow } from '../../helpers/fake-answers.ts';
import { row } from '../../helpers/priced-job.ts';

const pair = fakeRow('panel', { id: 'door', name: 'Front door', hands: 'pair', count: '2' });
const left = fakeRow('panel', { id: 'kick', hands: 'left' });
const alike = fakeRow('panel', { id: 'shelf', hands: 'alike', count: '3' });
const part = fakeRow('part', { id: 'ring', name: 'Ring' });
const rightPart = fakeRow('part', { id: 'ring', name: 'Ring', hand: 'right' });

describe('panelCount', () => {
  test('a pair is a left and a right panel, each as often as its count', () => {
    expect(panelCount(pair)).toEqual({ left: 2, right: 2, alike: 0 });
    expect(panelCount(left)).toEqual({ left: 1, right: 0, alike: 0 });
    expect(panelCount(fakeRow('panel', { id: 'r', hands: 'right' })).right).toBe(1);
  });

  test('a panel that does not say is one of a kind', () => {
    expect(panelCount(fakeRow('panel', { id: 'lid' }))).toEqual({ left: 0, right: 0, alike: 1 });
  });
});

describe('allPanels', () => {
  test('counts every hand', () => {
    expect([allPanels(pair), allPanels(left), allPanels(alike)]).toEqual([4, 1, 3]);
  });
});

describe('multiplicity', () => {
  test('a part is made for each panel', () => {
    expect(multiplicity(part, pair, '')).toEqual({ panels: 4, words: '4 panels' });
    expect(multiplicity(part, left, '')).toEqual({ panels: 1, words: '1 panel' });
  });

  test('a part for the job, or without a panel, is made once', () => {
    expect(multiplicity(part, pair, 'job').panels).toBe(1);
    expect(multiplicity(part, undefined, '').panels).toBe(1);
  });

  test('a part for the right hand is made for half of the pairs', () => {
    expect(multiplicity(rightPart, pair, '')).toEqual({ panels: 2, words: '2 right panels' });
  });

  test('alike panels have no hand', () => {
    expect(multiplicity(rightPart, alike, '').panels).toBe(3);
  });

  test('a right part of a left panel is told', () => {
    const { panels, problem } = multiplicity(rightPart, left, '');
    expect(panels).toBe(0);
    expect(problem?.message).toBe(
      'Ring is for the right hand, but its panel kick is made left-handed only.',
    );
  });
});

describe('openPanelFinder', () => {
  const text = (on: string): string =>
    [
      'format = 1\n\n[job]\nunits = "in"\n\n',
      row('panel', 'door', { name: 'Door' }),
      row('panel', 'kick', { name: 'Kick panel' }),
      row('part', 'board', { kind: 'base', panel: on }),
      row('part', 'ring', { kind: 'ring', on: 'board' }),
      row('task', 'fit', { kind: 'fit', on: 'ring' }),
      row('task', 'clean', { kind: 'clean', on: 'kick' }),
    ].join('');

  test('a part and a task belong to the panel of what they stand on, also after that moved', () => {
    const session = openSession(text('door'));
    const panelsIn = openPanelFinder();
    const found = (): readonly (string | undefined)[] => {
      const panelOf = panelsIn(session.snapshot().workbook);
      return ['ring', 'fit', 'clean', 'none'].map(
        (id) => panelOf(id === 'ring' ? 'part' : 'task', id)?.id,
      );
    };
    expect(found()).toEqual(['door', 'door', 'kick', undefined]);
    expect(found()).toEqual(['door', 'door', 'kick', undefined]);
    session.setText(text('kick'));
    expect(found()).toEqual(['kick', 'kick', 'kick', undefined]);
    session.setText(text('door').replace('id = "kick"', 'id = "lid"'));
    expect(found()).toEqual(['door', 'door', undefined, undefined]);
  });
});
