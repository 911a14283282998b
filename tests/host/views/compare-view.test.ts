import { describe, expect, test, vi } from 'vitest';
import { compareSnapshots } from '../../../extension/engine/index.ts';
import { compareView } from '../../../extension/host/views/compare-view.ts';
import type { CompareView } from '../../../extension/protocol/compare-view.ts';
import { doorPair, doorSession, replaced } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000 });

function viewOf(after: string, tried = false): CompareView {
  const [before, then] = [doorSession(), doorSession(after)];
  const again = tried ? doorSession() : undefined;
  const found = compareSnapshots(before.snapshot(), then.snapshot(), again);
  if (!found.ok) throw new Error(found.problem.message);
  const { settings } = then.snapshot();
  return compareView(found.value, { against: 'HEAD', note: '' }, settings);
}

const leant = replaced(doorPair, 'tilt = "15 deg"', 'tilt = "18 deg"');

describe('compareView', () => {
  test('a changed cell: where, both texts, what the row takes now and what it did alone', () => {
    const { changes, figures } = viewOf(leant, true);
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({
      kind: 'changed',
      table: 'part',
      id: 'mid_ring',
      column: 'tilt',
      there: true,
      place: 'Midbass ring: lean',
      before: '15 deg',
      after: '18 deg',
      told: 'was 15 deg',
    });
    expect(changes[0]?.effect).toMatch(
      /^alone \+\d+\.\d\d USD before tax; need \S+ sqin → \S+ sqin/,
    );
    const price = figures.find(({ label }) => label === 'Price before tax');
    expect(price?.change).toMatch(/^\+\d+\.\d\d USD$/);
  });

  test('a new row, and seen from there a row taken out: nowhere to go', () => {
    const badge = `${doorPair}\n[[part]]\nid = "badge"\n\nname = "Badge"\nkind = "extra"\n\nprice = "45 USD"\n`;
    expect(viewOf(badge).changes).toMatchObject([
      { kind: 'added', id: 'badge', column: '', there: true, place: 'Badge', told: 'new row' },
    ]);
    const clips = /\[\[part\]\]\nid = "door_clips"\n[\s\S]*?(?=\n\[\[)/;
    const removed = viewOf(doorPair.replace(clips, '')).changes.find(
      ({ kind }) => kind === 'removed',
    );
    expect(removed).toMatchObject({ id: 'door_clips', there: false, told: 'row taken out' });
    expect(removed?.effect).toMatch(/charge \d+\.\d\d USD → —/);
  });

  test('a setting stands on the sheet of the job', () => {
    const warm = viewOf(replaced(doorPair, 'temperature = "68 degF"', 'temperature = "80 degF"'));
    expect(warm.changes[0]).toMatchObject({
      table: 'job',
      id: 'temperature',
      column: 'value',
      before: '68 degF',
      after: '80 degF',
    });
  });

  test('rows that take more without being touched are told apart from what was changed', () => {
    const { followers } = viewOf(replaced(doorPair, 'roundrect(26 in', 'roundrect(27 in'));
    expect(followers.join('\n')).toMatch(/^Cloth skin: need \S+ sqft → \S+ sqft/m);
  });

  test('a job that says the same has no changes', () => {
    expect(viewOf(doorPair)).toMatchObject({ changes: [], followers: [] });
  });
});
