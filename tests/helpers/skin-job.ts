import { openSession, settleNow, type Session } from '../../extension/engine/index.ts';

/** What a test of a skin changes of the job below: cells of the rings and further rows. */
export interface SkinJob {
  readonly mid?: string;
  readonly tweeter?: string;
  readonly skin?: string;
  readonly more?: string;
}

/**
 * A door of 24 × 16 in with 2 in corners on a base 1/4 in thick; a ring of 7 1/2 in and one of 2 1/2 in,
 * both 2 in over the base's front, leaning 15° to the rear; a fleece skin.
 */
export function skinJob(job: SkinJob = {}): string {
  const { mid = '', tweeter = '', skin = '', more = '' } = job;
  const ring = (id: string, size: string, cells: string): string => `
[[part]]
id = "${id}"
name = "${id}"
kind = "ring"
on = "base"
size = "${size}"
depth = "2 1/4 in"
tilt = "15 deg"
turn = "90 deg"
${cells}
`;
  return `format = 1

[job]
title = "A skin"
units = "in"
currency = "USD"

[[panel]]
id = "door"
hands = "pair"

[[part]]
id = "base"
name = "Base"
kind = "base"
panel = "door"
shape = "roundrect(24 in, 16 in, 2 in)"
thickness = "1/4 in"
${ring('mid', '7 1/2 in', mid === '' ? 'at_x = "-4.5 in"\nat_y = "0 in"' : mid)}
${ring('tweeter', '2 1/2 in', tweeter === '' ? 'at_x = "6.5 in"\nat_y = "2.5 in"' : tweeter)}
[[part]]
id = "skin"
name = "Skin"
kind = "skin"
on = "base"
${skin}
${more}
`;
}

/** The job at work. */
export function openSkinJob(job: SkinJob = {}): Session {
  return openSession(skinJob(job));
}

/** The job at work with everything settled. */
export function settledSkinJob(job: SkinJob = {}): Session {
  const session = openSkinJob(job);
  settleNow(session);
  return session;
}

/** A figure of a part in base units. */
export function figureOf(session: Session, id: string, column: string): number {
  const result = session.snapshot().workbook.row('part', id)?.cell(column).result;
  if (result?.state !== 'value' || result.value.kind !== 'quantity')
    throw new Error(`${id}.${column} has no figure: ${JSON.stringify(result)}`);
  return result.value.base;
}

/** Sentences of the problems at a row, by code. */
export function problemsAt(session: Session, id: string): readonly (readonly [string, string])[] {
  return session
    .snapshot()
    .problems.filter(({ place }) => place?.row === id)
    .map(({ problem }) => [problem.code, problem.message] as const);
}
