/** One row of a job as it stands in the file. */
export interface Block {
  readonly id: string;
  readonly start: number;
  readonly text: string;
}

/** The blocks of a table, in the order of the file. */
export function blocksOf(job: string, table: string): readonly Block[] {
  const header = `[[${table}]]\n`;
  const starts = [...job.matchAll(/^\[/gm)].map((found) => found.index);
  return starts.flatMap((start, place) => {
    const text = job.slice(start, starts[place + 1] ?? job.length);
    const id = /^id = "([^"]+)"$/m.exec(text)?.[1];
    return text.startsWith(header) && id !== undefined ? [{ id, start, text }] : [];
  });
}

/** A ring whose tilt is written in its row, with another tilt and the file as it must then be. */
export function firstRingWithTilt(job: string): {
  readonly id: string;
  readonly otherTilt: string;
  readonly withOtherTilt: string;
} {
  for (const { id, start, text } of blocksOf(job, 'part')) {
    const tilt = /^tilt = "(\d+) deg"$/m.exec(text);
    if (!/^kind = "ring"$/m.test(text) || tilt === null) continue;
    const otherTilt = `${Number(tilt[1]) + 4} deg`;
    const at = start + tilt.index;
    return {
      id,
      otherTilt,
      withOtherTilt: `${job.slice(0, at)}tilt = "${otherTilt}"${job.slice(at + tilt[0].length)}`,
    };
  }
  throw new Error('The sample has no ring with a tilt of its own.');
}

/** A job with this many parts, each with a number of its own, to be edited quickly. */
export function jobOfParts(count: number): string {
  const head = `format = 1

[job]
title = "Many parts"
client = "Demo client"
vehicle = "Demo coupe"

date = 2026-11-25
units = "in"
currency = "USD"

[[panel]]
id = "door"

name = "Front door"

order = 1000
`;
  const parts = Array.from({ length: count }, (_, index) => {
    const number = String(index).padStart(3, '0');
    return `
[[part]]
id = "part_${number}"

name = "Part ${number}"
kind = "extra"
panel = "door"

order = ${(index + 1) * 1000}
`;
  });
  return head + parts.join('');
}
