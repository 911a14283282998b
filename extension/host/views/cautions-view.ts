import { cautionsFirst, jobCautions, type JobCaution, type Snapshot } from '../../engine/index.ts';
import type { BillView } from '../../protocol/views.ts';

// Enough to know what is meant; the rest is counted.
const namedRows = 2;

function rowsText(rows: JobCaution['rows']): string {
  const names = rows.slice(0, namedRows).map((row) => row.cell('name').text ?? row.id);
  const more = rows.length - names.length;
  return more > 0 ? `${names.join(', ')} and ${String(more)} more` : names.join(', ');
}

/** The cautions of a job, ready to show. */
export function cautionsView(snapshot: Snapshot): BillView['cautions'] {
  return {
    first: cautionsFirst,
    list: jobCautions(snapshot).map(({ hazard, rows }) => ({ ...hazard, rows: rowsText(rows) })),
  };
}
