import { workedOut } from '../engine/session/worked-out.ts';
import { echo } from './echo.ts';
import { growing } from './growing.ts';
import type { FromWorker, HeavyJob, ToWorker } from './messages.ts';
import { workerPort, type WorkerGlobals } from './port.ts';

const port = workerPort(globalThis as WorkerGlobals);

function answerTo(job: HeavyJob): (FromWorker & { kind: 'done' })['answer'] {
  const report = growing((share) => {
    port.post({ kind: 'progress', share });
  });
  return job.kind === 'echo' ? echo(job, report) : workedOut(job.question, report);
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
