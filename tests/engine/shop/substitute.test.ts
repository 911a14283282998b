import { beforeAll, describe, expect, test, vi } from 'vitest';
import { openSession, type Session, type Snapshot } from '../../../extension/engine/index.ts';
import {
  cellsTaking,
  substituteEdits,
  substituteEffect,
  substitutesFor,
} from '../../../extension/engine/shop/substitute.ts';
import { demoBook, doorPair } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let session: Session;
let before: Snapshot;

beforeAll(() => {
  session = openSession(doorPair, demoBook);
  before = session.snapshot();
});

function after(from: string, to: string): Snapshot {
  const tried = session.trial(substituteEdits(from, to, before));
  if (!tried.ok) throw new Error(tried.problem.message);
  return tried.value;
}

describe('cellsTaking', () => {
  test('finds a material where it is written and where a kind takes it', () => {
    const cells = cellsTaking('panelboard_3', before);
    expect(cells.map(({ id }) => id)).toContain('mid_ring');
    const drawn = cellsTaking('catalyst', before);
    expect(drawn.length).toBeGreaterThan(0);
    expect(drawn.every(({ column, typed }) => column === 'draw.catalyst.material' && !typed)).toBe(
      true,
    );
  });
});

describe('substituteEffect', () => {
  test('a thicker base board moves what hangs on its thickness, told figure by figure', () => {
    const effect = substituteEffect('hardboard_6', before, after('hardboard_6', 'mdf_12'));
    expect(effect.cells.length).toBeGreaterThan(0);
    const base = effect.figures.find(
      ({ id, column }) => id === 'door_base' && column === 'thickness',
    );
    expect(base?.before).not.toBe(base?.after);
    expect(effect.charge.before).not.toBe(effect.charge.after);
  });

  test('nothing of the job itself changes while it is tried', () => {
    after('hardboard_6', 'mdf_12');
    expect(session.snapshot()).toBe(before);
  });

  test('once accepted, nothing takes the old material any more', () => {
    expect(cellsTaking('hardboard_6', after('hardboard_6', 'mdf_12'))).toEqual([]);
  });

  test('a material for itself moves nothing', () => {
    const effect = substituteEffect('hardboard_6', before, after('hardboard_6', 'hardboard_6'));
    expect(effect).toMatchObject({ figures: [], come: [], gone: [] });
    expect(effect.price.before).toBe(effect.price.after);
  });
});

describe('substitutesFor', () => {
  test('what a material names comes first, then what comes in its form', () => {
    const others = substitutesFor('hardboard_6', before);
    expect(others).not.toContain('hardboard_6');
    expect(others).toContain('mdf_12');
    expect(others).not.toContain('acetone');
  });
});
