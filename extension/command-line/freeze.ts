import { freezeEdits, pricesToFreeze, thawEdits } from '../engine/index.ts';
import { refused, unreadable } from './endings.ts';
import { readJob } from './job.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import type { ExitCode, World } from './world.ts';
import { inColumn, writeEdits } from './write-edits.ts';

/** Holds the prices of today in a job, or lets it follow its book again. */
export function freezePrices(
  request: Extract<ReuseRequest, { command: 'freeze' }>,
  world: World,
): ExitCode {
  const { file, date = '', release, write } = request;
  const job = readJob(file, world);
  if (job === undefined) return refused(unreadable(file), world);
  const { snapshot } = job;
  const at = { file, reading: snapshot.reading, write };
  if (release) {
    const edits = thawEdits(snapshot.shown);
    world.out(`${String(edits.length)} held prices go; the job follows its book again.\n`);
    return writeEdits(at, edits, world);
  }
  for (const { pack, text, held } of pricesToFreeze(snapshot)) {
    const before = held === undefined || held === text ? '' : `, held at ${held} until now`;
    world.out(`${inColumn(pack, 24)} ${text}${before}\n`);
  }
  return writeEdits(at, freezeEdits(snapshot, date), world);
}
