import { echo } from './echo.ts';
import type { ToWorker } from './messages.ts';
import { workerPort, type WorkerGlobals } from './port.ts';

const port = workerPort(globalThis as WorkerGlobals);

function work({ job }: ToWorker): void {
  try {
    const answer = echo(job, (share) => {
      port.post({ kind: 'progress', share });
    });
    port.post({ kind: 'done', answer });
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    port.post({ kind: 'fault', message: fault.message });
  }
}

port.listen(work);
