import { workedOut } from '../engine/session/worked-out.ts';
import { echo } from './echo.ts';
import type { FromWorker, HeavyJob, ToWorker } from './messages.ts';
import { workerPort, type WorkerGlobals } from './port.ts';

const port = workerPort(globalThis as WorkerGlobals);

function answerTo(job: HeavyJob): (FromWorker & { kind: 'done' })['answer'] {
  if (job.kind !== 'echo') return workedOut(job.question);
  return echo(job, (share) => {
    port.post({ kind: 'progress', share });
  });
}

function work({ job }: ToWorker): void {
  try {
    port.post({ kind: 'done', answer: answerTo(job) });
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    port.post({ kind: 'fault', message: fault.message });
  }
}

port.listen(work);
