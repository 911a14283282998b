import { describe, expect, test } from 'vitest';
import { openSession, settleNow, type Session } from '../../extension/engine/index.ts';
import { gestureEdits } from '../../extension/host/gestures.ts';
import { cutView } from '../../extension/host/views/cut-view.ts';

const text = `format = 1

[job]
title = "Two boards"
units = "in"
currency = "USD"

[[panel]]
id = "door"

hands = "pair"

[[part]]
id = "back"

name = "Back board"
kind = "base"
panel = "door"

material = "hardboard_6"

length = "22 in"
width = "15 in"

[[part]]
id = "pod"

kind = "base"
panel = "door"

material = "hardboard_6"

length = "9 in"
width = "5 in"
`;

const wish = { line: 'hardboard_6', sheet: 0, cuts: false };
const row = { table: 'part', id: 'back', occurrence: 0 };

function opened(): Session {
  const session = openSession(text);
  settleNow(session);
  return session;
}

function lock(session: Session, id = 'back', sheet = 0) {
  let count = 0;
  const letters = (): string => `a${String((count += 1))}a`;
  const one = { kind: 'lock', line: wish.line, sheet, row: { ...row, id } } as const;
  return gestureEdits([one], session.snapshot(), letters);
}

function done(session: Session, id = 'back'): void {
  const gesture = lock(session, id);
  if (!gesture.ok) throw new Error(gesture.message);
  const planned = session.plan(gesture.edits);
  if (!planned.ok) throw new Error(planned.problem.message);
  session.take(planned.value);
  settleNow(session);
}

describe('lockEdits', () => {
  test('both pieces of a pair are locked in one gesture, and stay when another part grows', () => {
    const session = opened();
    const lying = (): readonly string[] =>
      cutView(wish, session.snapshot()).words.filter((words) => words.startsWith('Back board'));
    const before = lying();
    expect(before.length).toBeGreaterThan(0);
    done(session);
    const locked = cutView(wish, session.snapshot());
    expect(locked.locked).toEqual(['part/back']);
    const grown = session.plan([
      { kind: 'set-cell', row: { ...row, id: 'pod' }, column: 'length', text: '12 in' },
    ]);
    if (!grown.ok) throw new Error(grown.problem.message);
    session.take(grown.value);
    settleNow(session);
    expect(lying()).toEqual(before.map((words) => words.replace(/\.$/, ', locked.')));
    expect(session.snapshot().bill.problems).toEqual([]);
  });

  test('a second gesture unlocks them: the file is as it was', () => {
    const session = opened();
    done(session);
    expect(session.snapshot().reading.text).toContain('[[lock]]');
    done(session);
    expect(session.snapshot().reading.text).toBe(text);
  });

  test('covers are locked on their roll of vinyl, and stay while the roll takes another', () => {
    const covered = openSession(`${text}
[[part]]
id = "pod_cover"

kind = "vinyl"
on = "pod"

material = "vinyl_54"

[[part]]
id = "cover"

kind = "vinyl"
on = "back"

material = "vinyl_54"
`);
    settleNow(covered);
    const view = () => cutView({ line: 'vinyl_54', sheet: 0, cuts: false }, covered.snapshot());
    const lying = (): readonly string[] => view().words.filter((words) => words.includes('locked'));
    expect(view().lockable).toBe(true);
    const gesture = gestureEdits(
      [{ kind: 'lock', line: 'vinyl_54', sheet: 0, row: { ...row, id: 'cover' } }],
      covered.snapshot(),
      (() => {
        let count = 0;
        return () => `a${String((count += 1))}a`;
      })(),
    );
    if (!gesture.ok) throw new Error(gesture.message);
    const locked = covered.plan(gesture.edits);
    if (!locked.ok) throw new Error(locked.problem.message);
    covered.take(locked.value);
    settleNow(covered);
    expect(view().locked).toEqual(['part/cover']);
    const before = lying();
    expect(before).toHaveLength(2);
    const more = covered.plan([
      { kind: 'set-cell', row: { ...row, id: 'pod' }, column: 'length', text: '16 in' },
    ]);
    if (!more.ok) throw new Error(more.problem.message);
    covered.take(more.value);
    settleNow(covered);
    expect(lying()).toEqual(before);
    expect(covered.snapshot().bill.problems).toEqual([]);
    expect(covered.snapshot().problems.filter(({ place }) => place?.table === 'lock')).toEqual([]);
  });

  test('a part that lies on no such sheet, and a line that is not of sheets, are refused in words', () => {
    const session = opened();
    expect(lock(session, 'back', 7)).toMatchObject({
      message: 'No piece of back lies on sheet 8.',
    });
    const wrong = { kind: 'lock', line: 'nothing', sheet: 0, row } as const;
    expect(gestureEdits([wrong], session.snapshot(), () => 'abc')).toMatchObject({ ok: false });
  });
});
