import { workedOut } from './worked-out.ts';
import type { Session } from './session.ts';

/** Rounds of answers after which nothing new is asked; a skin's figures move no other panel's shape. */
const mostRounds = 8;

/**
 * Works all heavy questions of a job out, here and now: for programs that wait for the answer. A grid
 * has them worked out beside the typing instead.
 */
export function settleNow(session: Session): void {
  for (let round = 0; round < mostRounds; round++) {
    const { heavy } = session.snapshot();
    if (heavy.length === 0) return;
    session.settle(
      new Map(heavy.map((question) => [question.key, { question, answer: workedOut(question) }])),
    );
  }
}
