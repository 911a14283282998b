import {
  moneyText,
  substituteEdits,
  substituteEffect,
  substitutesFor,
  type Snapshot,
  type SubstituteEffect,
} from '../engine/index.ts';
import { refused, unreadable } from './endings.ts';
import { readJob } from './job.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';
import { inColumn, writeEdits } from './write-edits.ts';

function effectLines(effect: SubstituteEffect, currency: string): readonly string[] {
  const money = (label: string, both: SubstituteEffect['price']): string =>
    `${inColumn(label, 24)} ${moneyText(both.before, currency)} → ${moneyText(both.after, currency)}`;
  return [
    ...effect.cells.map(({ name, column }) => `takes it: ${name} (${column})`),
    ...effect.figures.map(
      ({ name, column, before, after }) =>
        `${inColumn(`${name}: ${column}`, 40)} ${before === '' ? 'blank' : before} → ${after === '' ? 'blank' : after}`,
    ),
    money('materials in the price', effect.charge),
    money('to buy', effect.buy),
    money('price before tax', effect.price),
    ...effect.come.map((sentence) => `comes: ${sentence}`),
    ...effect.gone.map((sentence) => `goes: ${sentence}`),
  ];
}

function fault(from: string, to: string, snapshot: Snapshot): string | undefined {
  const { materials } = snapshot.book;
  if (!materials.has(from)) return `There is no material ${from} in the book.`;
  if (materials.has(to)) return undefined;
  const some = substitutesFor(from, snapshot).slice(0, 6).join(', ');
  return `There is no material ${to} in the book. In the place of ${from} may stand: ${some}.`;
}

/** Puts another material in the place of one, and tells first what that does. */
export function substitute(
  request: Extract<ReuseRequest, { command: 'substitute' }>,
  world: World,
): ExitCode {
  const { file, from, to, write } = request;
  const job = readJob(file, world);
  if (job === undefined) return refused(unreadable(file), world);
  const session = job.again();
  const before = session.snapshot();
  const wrong = fault(from, to, before);
  if (wrong !== undefined) return refused(wrong, world);
  const edits = substituteEdits(from, to, before);
  if (edits.length === 0) {
    world.out(`Nothing in this job takes ${from}.\n`);
    return exitCodes.fine;
  }
  const after = session.trial(edits);
  if (!after.ok) {
    world.err(`panelwright: ${after.problem.message}\n`);
    return exitCodes.problems;
  }
  const effect = substituteEffect(from, before, after.value);
  for (const line of effectLines(effect, before.bill.currency)) world.out(`${line}\n`);
  return writeEdits({ file, reading: before.reading, write }, edits, world);
}
