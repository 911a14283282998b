import * as vscode from 'vscode';
import type { FromWorker, HeavyAnswers, HeavyJob, ToWorker } from '../worker/messages.ts';

/** A worker of either host, reduced to what both can do. */
export interface Hand {
  readonly send: (message: ToWorker) => void;
  readonly end: () => void;
}

export interface Ears {
  readonly heard: (message: FromWorker) => void;
  readonly broke: (reason: string) => void;
}

interface NodeWorker {
  readonly postMessage: (message: ToWorker) => void;
  readonly terminate: () => Promise<number>;
  on(event: 'message', hear: (message: FromWorker) => void): void;
  on(event: 'error', hear: (fault: Error) => void): void;
}

interface BrowserWorker {
  readonly postMessage: (message: ToWorker) => void;
  readonly terminate: () => void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
}

/** As much of Node's and the browser's globals as is used here; one bundle runs on both. */
interface HostGlobals {
  readonly process?: {
    readonly getBuiltinModule?: (name: 'node:worker_threads') => {
      readonly Worker: new (source: string, options: { readonly eval: true }) => NodeWorker;
    };
  };
  readonly Worker?: new (url: string) => BrowserWorker;
  readonly Blob?: new (parts: readonly string[], options: { readonly type: string }) => object;
  readonly URL?: {
    readonly createObjectURL: (blob: object) => string;
    readonly revokeObjectURL: (url: string) => void;
  };
}

export interface HeavyWorkOptions {
  /** Hears the share of the work that is done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly token?: vscode.CancellationToken;
}

/** Runs a job in a worker; `undefined` when it was cancelled. */
export type HeavyWork = <Kind extends HeavyJob['kind']>(
  job: Extract<HeavyJob, { kind: Kind }>,
  options?: HeavyWorkOptions,
) => Promise<HeavyAnswers[Kind] | undefined>;

function nodeHand(source: string, ears: Ears): Hand | undefined {
  const threads = (globalThis as HostGlobals).process?.getBuiltinModule?.('node:worker_threads');
  if (threads === undefined) return undefined;
  const worker = new threads.Worker(source, { eval: true });
  worker.on('message', ears.heard);
  worker.on('error', (fault) => {
    ears.broke(fault.message);
  });
  return {
    send: (message) => {
      worker.postMessage(message);
    },
    end: () => void worker.terminate(),
  };
}

function browserHand(source: string, ears: Ears): Hand | undefined {
  const { Worker, Blob, URL } = globalThis as HostGlobals;
  if (Worker === undefined || Blob === undefined || URL === undefined) return undefined;
  const address = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
  const worker = new Worker(address);
  worker.onmessage = (event) => {
    ears.heard(event.data);
  };
  worker.onerror = (event) => {
    ears.broke(event.message ?? 'The worker could not be started.');
  };
  return {
    send: (message) => {
      worker.postMessage(message);
    },
    end: () => {
      worker.terminate();
      URL.revokeObjectURL(address);
    },
  };
}

/** Starts a worker with this program; undefined where this host has none. */
export function startWorker(source: string, ears: Ears): Hand | undefined {
  return nodeHand(source, ears) ?? browserHand(source, ears);
}

/** The worker's program, as dist holds it. */
export async function workerSource(extensionUri: vscode.Uri): Promise<string> {
  const place = vscode.Uri.joinPath(extensionUri, 'dist', 'worker.js');
  return new TextDecoder().decode(await vscode.workspace.fs.readFile(place));
}

/**
 * Gives the way to run heavy jobs. Each job has a worker of its own, started from the bytes of
 * dist/worker.js, so cancelling can simply end it, however deep in a loop it is.
 */
export function heavyWork(extensionUri: vscode.Uri): HeavyWork {
  return async <Kind extends HeavyJob['kind']>(
    job: Extract<HeavyJob, { kind: Kind }>,
    { onProgress, token }: HeavyWorkOptions = {},
  ): Promise<HeavyAnswers[Kind] | undefined> => {
    const source = await workerSource(extensionUri);
    if (token?.isCancellationRequested === true) return undefined;
    return new Promise((resolve, reject) => {
      const close = (): void => {
        cancelling?.dispose();
        hand?.end();
      };
      const ears: Ears = {
        heard: (message) => {
          if (message.kind === 'progress') {
            onProgress?.(message.share);
            return;
          }
          close();
          // Each job has a worker of its own, so the answer is to this one.
          if (message.kind === 'done') resolve(message.answer as HeavyAnswers[Kind]);
          else reject(new Error(message.message));
        },
        broke: (reason) => {
          close();
          reject(new Error(reason));
        },
      };
      const hand = startWorker(source, ears);
      const cancelling = token?.onCancellationRequested(() => {
        close();
        resolve(undefined);
      });
      if (hand === undefined) reject(new Error('No worker can be started here.'));
      else hand.send({ job });
    });
  };
}
