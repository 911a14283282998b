import { describe, expect, test } from 'vitest';
import type { ProblemView } from '../../../extension/protocol/views.ts';
import { ProblemsPane } from '../../../webview/panes/problems.ts';

function problemAt(row: string, column: string, more: Partial<ProblemView> = {}): ProblemView {
  return {
    code: 'skin-ring-under',
    message: 'The low side of the ring lies under the base.',
    severity: 'error',
    table: 'part',
    row,
    occurrence: 0,
    column,
    line: 0,
    fixes: [],
    follows: false,
    ...more,
  };
}

/** What each entry says, with the numbers of the problems that its buttons go to. */
function entries(problems: readonly ProblemView[]): readonly [string, readonly string[]][] {
  const pane = new ProblemsPane();
  pane.paint(problems);
  return [...pane.root.querySelectorAll('li')].map((entry) => [
    entry.querySelector('.problem-message')?.textContent ?? '',
    [...entry.querySelectorAll<HTMLElement>('[data-action="go-problem"]')].map(
      ({ dataset }) => dataset['problem'] ?? '',
    ),
  ]);
}

const low = 'The low side of the ring lies under the base.';

describe('the problems of a job', () => {
  test('a sentence that stops many cells stands once, with a button for each of them', () => {
    const other = problemAt('door', 'count', { code: 'cell-blank', message: 'Blank.' });
    expect(entries([problemAt('skin', 'area'), other, problemAt('skin', 'stretch')])).toEqual([
      [low, ['0', '2']],
      ['Blank.', ['1']],
    ]);
  });

  test('what the further buttons say is where they go', () => {
    const pane = new ProblemsPane();
    pane.paint([problemAt('skin', 'area'), problemAt('skin', 'stretch', { line: 12 })]);
    const also = pane.root.querySelector('.problem-also')?.textContent;
    expect(also).toBe('Also atskin.stretch');
  });

  test('an error and a note of one sentence are two entries', () => {
    const note = problemAt('skin', 'stretch', { severity: 'note' });
    expect(entries([problemAt('skin', 'area'), note])).toHaveLength(2);
  });

  test('one that has a way out keeps its own entry, and its button', () => {
    const fixed = { fixes: ['Make it deeper'] };
    const problems = [problemAt('skin', 'area', fixed), problemAt('skin', 'stretch', fixed)];
    expect(entries(problems).map(([, places]) => places)).toEqual([['0'], ['1']]);
  });

  test('a problem that went takes its button with it', () => {
    const pane = new ProblemsPane();
    pane.paint([problemAt('skin', 'area'), problemAt('skin', 'stretch')]);
    pane.paint([problemAt('skin', 'area')]);
    expect(pane.root.querySelectorAll('[data-action="go-problem"]')).toHaveLength(1);
  });
});
