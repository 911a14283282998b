import { applyEdits } from '../job/apply-edits.ts';
import type { Edit, FileReading, TextChange } from '../job/source.ts';
import { ok, type Result } from '../result.ts';
import { onDemand } from '../units/on-demand.ts';

/** An edit worked out on the text, not yet done. */
export interface PlannedEdit {
  /** Put together when it is asked for: `take` does not need it. */
  readonly text: string;
  readonly changes: readonly TextChange[];
}

/** Works edits out, and remembers the last: it is usually the next one to be taken over. */
export interface Plans {
  readonly plan: (on: FileReading, edits: readonly Edit[]) => Result<PlannedEdit>;
  /** The reading after a planned edit, where it was the last and planned on this reading. */
  readonly readingAfter: (edit: PlannedEdit, on: FileReading) => FileReading | undefined;
}

const textOnDemand = onDemand('text');

function plannedEdit(reading: FileReading, changes: readonly TextChange[]): PlannedEdit {
  return textOnDemand({ changes }, () => reading.text);
}

export function openPlans(): Plans {
  let last:
    | { readonly on: FileReading; readonly reading: FileReading; readonly edit: PlannedEdit }
    | undefined;
  return {
    plan: (on, edits) => {
      const applied = applyEdits(on, edits);
      if (!applied.ok) return applied;
      const { reading, changes } = applied.value;
      const edit = plannedEdit(reading, changes);
      last = { on, reading, edit };
      return ok(edit);
    },
    readingAfter: (edit, on) =>
      last !== undefined && last.edit === edit && last.on === on ? last.reading : undefined,
  };
}
