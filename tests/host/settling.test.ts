import { describe, expect, test, vi } from 'vitest';
import type { HeavyQuestion, HeavyReplies, Snapshot } from '../../extension/engine/index.ts';
import type { DeskServices } from '../../extension/host/desk-panel.ts';
import type { HeavyHand } from '../../extension/host/heavy-hand.ts';
import { openingPause, Settling } from '../../extension/host/settling.ts';

function question(key: string, about = 'base'): HeavyQuestion {
  return { kind: 'skin', key, about, body: {} };
}

interface Running {
  readonly key: string;
  readonly finish: (reply: object | Error) => void;
  readonly tell: (share: number) => void;
}

interface Bench {
  readonly settling: Settling;
  /** What a worker was given, in order; it ends when the test says so, or when it is dropped. */
  readonly running: Running[];
  /** What the cells of the job ask. */
  readonly cells: Map<string, HeavyQuestion>;
  readonly settled: (readonly [string, unknown])[];
  readonly log: string[];
  /** What was told of work, as `key share`. */
  readonly told: string[];
}

function bench(...asked: readonly HeavyQuestion[]): Bench {
  const running: Running[] = [];
  const cells = new Map(asked.map((one) => [one.key, one]));
  const settled: (readonly [string, unknown])[] = [];
  const log: string[] = [];
  const told: string[] = [];
  let dropped: () => void = () => undefined;
  const hand: HeavyHand = {
    work: ({ key }, tell = () => undefined) =>
      new Promise((resolve, reject) => {
        dropped = () => {
          resolve(undefined);
        };
        const finish = (reply: object | Error): void => {
          if (reply instanceof Error) reject(reply);
          else resolve(reply);
        };
        running.push({ key, finish, tell });
      }),
    drop: () => {
      dropped();
    },
    dispose: () => {
      dropped();
    },
  };
  const services = { hand: () => hand, log: { error: (line: string) => log.push(line) } };
  const settling = new Settling(services as unknown as DeskServices, {
    snapshot: () => ({ heavy: [...cells.values()] }) as unknown as Snapshot,
    settle: (replies: HeavyReplies) => {
      for (const [key, { answer }] of replies) {
        settled.push([key, answer]);
        cells.delete(key);
      }
      settling.look();
    },
    told: ({ key }, share) => {
      told.push(`${key} ${String(share)}`);
    },
  });
  return { settling, running, cells, settled, log, told };
}

/** Waits until a worker has been given so many questions. */
async function given(running: readonly Running[], count: number): Promise<void> {
  await vi.waitFor(() => {
    expect(running).toHaveLength(count);
  });
}

describe('Settling of pictures', () => {
  test('one skin is worked out once, whoever asks', async () => {
    const { settling, running } = bench();
    const [first, second] = [settling.of(question('a')), settling.of(question('a'))];
    await given(running, 1);
    running[0]?.finish({});
    expect(await Promise.all([first, second])).toEqual([{}, {}]);
    expect(running).toHaveLength(1);
  });

  test('a skin that cells and a picture ask is worked out once for both', async () => {
    const { settling, running, settled } = bench(question('a'));
    settling.look();
    await given(running, 1);
    const picture = settling.of(question('a'));
    running[0]?.finish({ figures: 1 });
    expect(await picture).toEqual({ figures: 1 });
    expect(settled).toEqual([['a', { figures: 1 }]]);
    expect(running).toHaveLength(1);
  });

  test('a newer question about the same panel ends the older one, which can be asked again', async () => {
    const { settling, running } = bench();
    const older = settling.of(question('a'));
    await given(running, 1);
    const newer = settling.of(question('b'));
    expect(await older).toBeUndefined();
    await given(running, 2);
    running[1]?.finish({});
    expect(await newer).toEqual({});
    const again = settling.of(question('a'));
    await given(running, 3);
    running[2]?.finish({});
    expect(await again).toEqual({});
  });

  test('questions about two panels are both worked out', async () => {
    const { settling, running } = bench();
    const both = [settling.of(question('a', 'door')), settling.of(question('b', 'kick'))];
    await given(running, 1);
    running[0]?.finish({});
    await given(running, 2);
    running[1]?.finish({});
    expect(await Promise.all(both)).toEqual([{}, {}]);
  });

  test('a fault is told, and the next asking tries again', async () => {
    const { settling, running, settled } = bench();
    const broken = settling.of(question('a'));
    await given(running, 1);
    running[0]?.finish(new Error('broke'));
    await expect(broken).rejects.toThrow('broke');
    expect(settled).toEqual([]);
    const again = settling.of(question('a'));
    await given(running, 2);
    running[1]?.finish({});
    expect(await again).toEqual({});
  });
});

test('after a picture’s fault the cells’ questions go on', async () => {
  const { settling, running, settled } = bench(question('a', 'door'));
  const broken = settling.of(question('c', 'pod'));
  await given(running, 1);
  running[0]?.finish(new Error('broke'));
  await expect(broken).rejects.toThrow('broke');
  await given(running, 2);
  running[1]?.finish({});
  await vi.waitFor(() => {
    expect(settled).toEqual([['a', {}]]);
  });
});

describe('Settling of cells', () => {
  test('questions are worked out one after the other, a picture’s first', async () => {
    const { settling, running, settled } = bench(question('a', 'door'), question('b', 'kick'));
    void settling.of(question('c', 'pod'));
    for (const [index, key] of ['c', 'a', 'b'].entries()) {
      await given(running, index + 1);
      expect(running[index]?.key).toBe(key);
      running[index]?.finish({ of: key });
    }
    await vi.waitFor(() => {
      expect(settled.map(([key]) => key)).toEqual(['c', 'a', 'b']);
    });
  });

  test('a first layout goes before one that takes long, whichever material asks', async () => {
    const { settling, running } = bench(question('long'), { ...question('first'), soon: true });
    settling.look();
    await given(running, 1);
    expect(running[0]?.key).toBe('first');
  });

  test('a long job has its page to itself for a while when it is opened', async () => {
    expect(openingPause('x'.repeat(500_000))).toBeGreaterThan(10 * openingPause('[job]'));
    const { settling, running } = bench(question('a'));
    settling.look(openingPause('x'.repeat(500_000)));
    await new Promise((resolve) => setTimeout(resolve, 5 * openingPause('[job]')));
    expect(running).toEqual([]);
    settling.look();
    await given(running, 1);
  });

  test('how far the work is is told from its beginning', async () => {
    const { settling, running, told } = bench(question('a'));
    settling.look();
    await given(running, 1);
    running[0]?.tell(0.4);
    expect(told).toEqual(['a 0', 'a 0.4']);
  });

  test('what is no longer asked is dropped, and the next is begun', async () => {
    const { settling, running, cells, settled } = bench(question('a'));
    settling.look();
    await given(running, 1);
    cells.clear();
    cells.set('b', question('b'));
    settling.look();
    await given(running, 2);
    running[1]?.finish({});
    await vi.waitFor(() => {
      expect(settled).toEqual([['b', {}]]);
    });
  });

  test('a question whose working out broke is answered with nothing, logged, and not asked for ever', async () => {
    const { settling, running, settled, log } = bench(question('a'));
    settling.look();
    await given(running, 1);
    running[0]?.finish(new Error('no saw'));
    await vi.waitFor(() => {
      expect(settled).toEqual([['a', {}]]);
    });
    expect(log).toEqual(['heavy work: no saw']);
  });
});
