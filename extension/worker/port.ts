import type { FromWorker, ToWorker } from './messages.ts';

/** The worker's end of the conversation with the host. */
export interface Port {
  readonly post: (message: FromWorker) => void;
  readonly listen: (hear: (message: ToWorker) => void) => void;
}

/** As much of Node's and the browser's worker globals as is used here. */
export interface WorkerGlobals {
  readonly process?: {
    readonly getBuiltinModule?: (name: string) => {
      readonly parentPort: {
        readonly postMessage: (message: FromWorker) => void;
        readonly on: (event: 'message', hear: (message: ToWorker) => void) => void;
      } | null;
    };
  };
  readonly postMessage?: (message: FromWorker) => void;
  readonly addEventListener?: (
    event: 'message',
    hear: (event: { readonly data: ToWorker }) => void,
  ) => void;
}

/** Finds the port in a worker thread of Node and in a worker of a browser alike. */
export function workerPort(globals: WorkerGlobals): Port {
  const thread = globals.process?.getBuiltinModule?.('node:worker_threads').parentPort;
  if (thread) {
    return {
      post: (message) => {
        thread.postMessage(message);
      },
      listen: (hear) => {
        thread.on('message', hear);
      },
    };
  }
  return {
    post: (message) => globals.postMessage?.(message),
    listen: (hear) =>
      globals.addEventListener?.('message', (event) => {
        hear(event.data);
      }),
  };
}
