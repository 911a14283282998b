import { beforeAll, describe, expect, test } from 'vitest';
import type { CutInstance } from '../../extension/engine/cutting/instance.ts';
import { layOut } from '../../extension/engine/cutting/lay-out.ts';
import type { HeavyQuestion } from '../../extension/engine/index.ts';
import { heavyHand } from '../../extension/host/heavy-hand.ts';
import { classInstance } from '../helpers/cut-sets.ts';
import { workerProgram } from '../helpers/worker-program.ts';

let program = '';

beforeAll(async () => {
  program = new TextDecoder().decode(await workerProgram());
});

/** Boards that no quick layout proves the best of, searched for with this effort. */
function question(effort: 'live' | 'refine' | 'long'): HeavyQuestion {
  const body: CutInstance = { ...classInstance(3, 60, 0), effort };
  return { kind: 'layout', key: effort, about: 'layout board', body };
}

describe('heavyHand', () => {
  test.each(['live', 'refine'] as const)(
    'a worker tells how far a %s layout is, and answers as it would here',
    async (effort) => {
      const hand = heavyHand(() => Promise.resolve(program));
      const shares: number[] = [];
      const { body, ...rest } = question(effort);
      const answer = await hand.work({ ...rest, body }, (share) => shares.push(share));
      hand.dispose();
      expect(shares.length).toBeGreaterThan(5);
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
      expect(Math.min(...shares)).toBeLessThan(0.2);
      expect(Math.max(...shares)).toBeLessThanOrEqual(1);
      expect(JSON.stringify(answer)).toBe(JSON.stringify(layOut(body as CutInstance)));
    },
  );

  test.each(['refine', 'long'] as const)(
    'a %s layout that a newer edit has made stale is dropped in the middle, and the next is begun',
    async (effort) => {
      const hand = heavyHand(() => Promise.resolve(program));
      let seen = 0;
      const stale = hand.work(question(effort), (share) => {
        seen = share;
        hand.drop();
      });
      expect(await stale).toBeUndefined();
      expect(seen).toBeGreaterThan(0);
      expect(seen).toBeLessThan(1);
      const small: CutInstance = { ...classInstance(3, 20, 1), effort: 'live' };
      const next = await hand.work({ kind: 'layout', key: 'next', about: 'b', body: small });
      hand.dispose();
      expect(JSON.stringify(next)).toBe(JSON.stringify(layOut(small)));
    },
  );
});
