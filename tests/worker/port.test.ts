import { describe, expect, test } from 'vitest';
import type { FromWorker, ToWorker } from '../../extension/worker/messages.ts';
import { workerPort } from '../../extension/worker/port.ts';

const job: ToWorker = { job: { kind: 'echo', text: 'grille', steps: 1 } };
const progress: FromWorker = { kind: 'progress', share: 1 };

describe('workerPort', () => {
  test('uses the parent of a worker thread where there is one', () => {
    const posted: FromWorker[] = [];
    const heard: ToWorker[] = [];
    const parentPort = {
      postMessage: (message: FromWorker) => posted.push(message),
      on: (_event: 'message', hear: (message: ToWorker) => void) => {
        hear(job);
      },
    };
    const port = workerPort({ process: { getBuiltinModule: () => ({ parentPort }) } });
    port.post(progress);
    port.listen((message) => heard.push(message));
    expect({ posted, heard }).toEqual({ posted: [progress], heard: [job] });
  });

  test('uses the globals of a browser worker otherwise', () => {
    const posted: FromWorker[] = [];
    const heard: ToWorker[] = [];
    const port = workerPort({
      postMessage: (message) => posted.push(message),
      addEventListener: (_event, hear) => {
        hear({ data: job });
      },
    });
    port.post(progress);
    port.listen((message) => heard.push(message));
    expect({ posted, heard }).toEqual({ posted: [progress], heard: [job] });
  });
});
