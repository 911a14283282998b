import { beforeAll, describe, expect, test } from 'vitest';
import * as vscode from 'vscode';
import { heavyWork } from '../../extension/host/heavy-work.ts';
import { workerProgram } from '../helpers/worker-program.ts';

const extension = vscode.Uri.parse('file:/extension');
let source: Uint8Array = new Uint8Array();

function ship(bytes: Uint8Array): Thenable<void> {
  return vscode.workspace.fs.writeFile(vscode.Uri.joinPath(extension, 'dist/worker.js'), bytes);
}

beforeAll(async () => {
  source = await workerProgram();
  await ship(source);
});

/** A token that is cancelled when told so. */
function cancellable(): { token: vscode.CancellationToken; cancel: () => void } {
  const hearers = new Set<() => void>();
  const token = {
    isCancellationRequested: false,
    onCancellationRequested: (hear: () => void) => {
      hearers.add(hear);
      return { dispose: () => hearers.delete(hear) };
    },
  };
  const cancel = (): void => {
    token.isCancellationRequested = true;
    for (const hear of hearers) hear();
  };
  return { token: token as unknown as vscode.CancellationToken, cancel };
}

describe('heavyWork', () => {
  const run = heavyWork(extension);

  test('a worker thread answers and tells ten times how far it is', async () => {
    const shares: number[] = [];
    const answer = await run(
      { kind: 'echo', text: 'ring', steps: 1000 },
      { onProgress: (share) => shares.push(share) },
    );
    expect({ answer, shares }).toEqual({
      answer: { text: 'ring', steps: 1000 },
      shares: [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1],
    });
  });

  test('a job that would never end is ended by cancelling', async () => {
    const { token, cancel } = cancellable();
    const answer = await run(
      { kind: 'echo', text: 'ring', steps: Number.MAX_SAFE_INTEGER },
      // The first report would come after years, so cancel as soon as the worker has begun.
      { token: { ...token, onCancellationRequested: cancelSoon(token, cancel) } },
    );
    expect(answer).toBeUndefined();
  });

  test('a job cancelled before it began starts no worker', async () => {
    const { token, cancel } = cancellable();
    cancel();
    expect(await run({ kind: 'echo', text: 'ring', steps: 1 }, { token })).toBeUndefined();
  });

  test('a worker that breaks is told as a fault, not waited for', async () => {
    await ship(new TextEncoder().encode("throw new Error('no saw');"));
    await expect(run({ kind: 'echo', text: 'ring', steps: 1 })).rejects.toThrow('no saw');
    await ship(source);
  });
});

function cancelSoon(
  token: vscode.CancellationToken,
  cancel: () => void,
): vscode.CancellationToken['onCancellationRequested'] {
  return (hear) => {
    const hearing = token.onCancellationRequested(hear);
    setTimeout(cancel, 50);
    return hearing;
  };
}
