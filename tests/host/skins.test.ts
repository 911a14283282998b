import { describe, expect, test } from 'vitest';
import type { HeavyQuestion, SkinReply } from '../../extension/engine/index.ts';
import type { HeavyWork, HeavyWorkOptions } from '../../extension/host/heavy-work.ts';
import { Skins } from '../../extension/host/skins.ts';

function question(key: string, about = 'base'): HeavyQuestion {
  return { kind: 'skin', key, about, body: {} };
}

interface Running {
  readonly key: string;
  readonly finish: (reply: SkinReply | Error) => void;
}

/** Workers that end when the test says so, or when they are cancelled. */
function bench(): { readonly skins: Skins; readonly running: Running[] } {
  const running: Running[] = [];
  const work = (
    job: { readonly kind: 'skin'; readonly question: HeavyQuestion },
    { token }: HeavyWorkOptions = {},
  ): Promise<SkinReply | undefined> =>
    new Promise((resolve, reject) => {
      token?.onCancellationRequested(() => {
        resolve(undefined);
      });
      running.push({
        key: job.question.key,
        finish: (reply) => {
          if (reply instanceof Error) reject(reply);
          else resolve(reply);
        },
      });
    });
  return { skins: new Skins(work as HeavyWork), running };
}

describe('Skins', () => {
  test('one skin is worked out once, whoever asks', async () => {
    const { skins, running } = bench();
    const [first, second] = [skins.of(question('a')), skins.of(question('a'))];
    running[0]?.finish({});
    expect(await Promise.all([first, second])).toEqual([{}, {}]);
    expect(running).toHaveLength(1);
    await skins.of(question('a'));
    expect(running).toHaveLength(1);
  });

  test('a newer question about the same panel ends the older one, which can be asked again', async () => {
    const { skins, running } = bench();
    const older = skins.of(question('a'));
    const newer = skins.of(question('b'));
    expect(await older).toBeUndefined();
    running[1]?.finish({});
    expect(await newer).toEqual({});
    const again = skins.of(question('a'));
    running[2]?.finish({});
    expect(await again).toEqual({});
  });

  test('questions about two panels are worked out beside each other', async () => {
    const { skins, running } = bench();
    const both = [skins.of(question('a', 'door')), skins.of(question('b', 'kick'))];
    for (const { finish } of running) finish({});
    expect(await Promise.all(both)).toEqual([{}, {}]);
  });

  test('a fault is told, and the next asking tries again', async () => {
    const { skins, running } = bench();
    const broken = skins.of(question('a'));
    running[0]?.finish(new Error('broke'));
    await expect(broken).rejects.toThrow('broke');
    const again = skins.of(question('a'));
    running[1]?.finish({});
    expect(await again).toEqual({});
  });
});
