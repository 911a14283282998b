import { describe, expect, test } from 'vitest';
import { openSession, type Session, type Snapshot } from '../../../extension/engine/index.ts';
import { demoBook, doorPair } from '../../helpers/sample-session.ts';

function type(session: Session, column: string, text: string): Snapshot {
  const row = { table: 'part', id: 'mid_ring' };
  const planned = session.plan([{ kind: 'set-cell', row, column, text }]);
  if (!planned.ok) throw new Error(planned.problem.message);
  session.take(planned.value);
  return session.snapshot();
}

const said = ({ problems, checks }: Snapshot): unknown => [
  problems.map(({ problem, line }) => [problem.message, line]),
  checks.map(({ id, outcome, message }) => [id, outcome, message]),
];

describe('problems and checks, which are worked out when they are read first', () => {
  test('are those of the moment they are read of, however late and in what order', () => {
    const session = openSession(doorPair, demoBook);
    const moments = [
      session.snapshot(),
      type(session, 'depth', '1/4 in'),
      type(session, 'depth', '=1 qt'),
      type(session, 'depth', '=RING.DEPTH(size, tilt)'),
      type(session, 'tilt', '40 deg'),
    ];
    for (const moment of [...moments.slice(1), ...moments].reverse()) {
      const fresh = openSession(moment.reading.text, demoBook).snapshot();
      expect(said(moment)).toEqual(said(fresh));
    }
    expect(new Set(moments.map((moment) => JSON.stringify(said(moment)))).size).toBeGreaterThan(3);
  });

  test('are the same lists again where an edit changed nothing in them', () => {
    const session = openSession(doorPair, demoBook);
    const { checks } = type(session, 'depth', '2 in');
    type(session, 'note', 'as measured');
    expect(type(session, 'note', 'measured again').checks).toBe(checks);
  });

  test('what would be is worked out beside them', () => {
    const session = openSession(doorPair, demoBook);
    const now = type(session, 'tilt', '14 deg');
    const row = { table: 'part', id: 'mid_ring' };
    session.whatIf([{ kind: 'set-cell', row, column: 'tilt', text: '44 deg' }]);
    const fresh = openSession(now.reading.text, demoBook).snapshot();
    expect(said(now)).toEqual(said(fresh));
  });
});
