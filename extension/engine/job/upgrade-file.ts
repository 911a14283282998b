import { failed, ok, type Result } from '../result.ts';
import { editProblem } from './edit-problems.ts';
import { currentFormat, indexed, readFile } from './read-file.ts';
import type { FileReading, TextChange } from './source.ts';
import { changedText, joinedChanges } from './text-changes.ts';

/** How a file of one format becomes one of the next. */
export interface FormatStep {
  readonly from: number;
  /** Smallest changes of the text, sorted; the line `format = …` is not the step's business. */
  readonly changes: (reading: FileReading) => readonly TextChange[];
}

/** Steps of all formats there have been, in order. Format 1 is the first, so there is none yet. */
export const formatSteps: readonly FormatStep[] = [];

interface Target {
  readonly steps: readonly FormatStep[];
  readonly format: number;
}

function formatLine(text: string, format: number): TextChange {
  const reading = indexed(readFile(text));
  const [top] = reading.split.parsed;
  const cell = top?.role === 'top' ? top.cells.get('format') : undefined;
  if (cell === undefined) return { start: 0, end: 0, text: `format = ${String(format)}\n` };
  return { ...cell.span, text: String(format) };
}

/**
 * Changes that bring a file to the current format, step by step; none where it is there already. Made
 * only when the user saves.
 */
export function upgradeChanges(
  reading: FileReading,
  target: Target = { steps: formatSteps, format: currentFormat },
): Result<readonly TextChange[]> {
  let changes: readonly TextChange[] = [];
  let { text } = reading;
  for (let format = reading.format; format < target.format; format++) {
    const step = target.steps.find((one) => one.from === format);
    if (step === undefined) {
      return failed(editProblem('format-step-missing', { from: format, to: format + 1 }));
    }
    const moved = step.changes(readFile(text));
    const after = changedText(text, moved);
    const line = formatLine(after, format + 1);
    changes = joinedChanges(reading.text, joinedChanges(reading.text, changes, moved), [line]);
    text = changedText(after, [line]);
  }
  return ok(changes);
}
