import type { ProblemView } from '../../extension/protocol/views.ts';
import { rowKey } from '../addresses.ts';
import { element, keyedChildren, setHidden } from '../dom.ts';
import { icon } from '../icons.ts';

export function problemKey(problem: ProblemView): string {
  const { table, row, occurrence, column, code, message } = problem;
  return [table, row, occurrence, column, code, message].join('\u001f');
}

function placeText(problem: ProblemView): string {
  const row =
    problem.row === ''
      ? problem.table
      : rowKey({ id: problem.row, occurrence: problem.occurrence });
  const place = problem.column === '' ? row : `${row}.${problem.column}`;
  const line = problem.line > 0 ? `line ${String(problem.line)}` : '';
  return [place, line].filter((text) => text !== '').join(' · ');
}

/** Buttons for the ways out that the program can take. */
export function fixButtons(problem: ProblemView, index: number): readonly HTMLElement[] {
  return problem.fixes.map((title, fix) =>
    element('button', {
      class: 'link',
      text: title,
      data: { action: 'take-fix', problem: String(index), fix: String(fix) },
      attributes: { type: 'button' },
    }),
  );
}

/** Everything wrong with the job; a click goes to the cell. */
export class ProblemsPane {
  readonly root: HTMLElement;
  problems: readonly ProblemView[] = [];
  readonly #list = element('ul', { class: 'problems', attributes: { 'aria-label': 'Problems' } });
  readonly #empty = element('p', { class: 'pane-empty', text: 'No problems.' });

  constructor() {
    this.root = element('div', { class: 'problems-pane' }, this.#list, this.#empty);
  }

  paint(problems: readonly ProblemView[]): void {
    this.problems = problems;
    setHidden(this.#empty, problems.length > 0);
    setHidden(this.#list, problems.length === 0);
    const indexed = problems.map((problem, index) => ({ problem, index }));
    keyedChildren(this.#list, indexed, {
      // Buttons carry the problem's number, so a problem that moves is made anew.
      key: ({ problem, index }) => `${String(index)}\u001f${problemKey(problem)}`,
      make: ({ problem, index }) => problemLine(problem, index),
    });
  }
}

function problemLine(problem: ProblemView, index: number): HTMLElement {
  const go = element(
    'button',
    {
      class: 'problem-go',
      data: { action: 'go-problem', problem: String(index) },
      attributes: { type: 'button' },
    },
    icon(problem.severity),
    element(
      'span',
      { class: 'problem-words' },
      element('span', { class: 'problem-message', text: problem.message }),
      element('span', { class: 'small', text: placeText(problem) }),
    ),
  );
  const fixes = fixButtons(problem, index);
  return element(
    'li',
    { class: 'problem', data: { severity: problem.severity } },
    go,
    fixes.length === 0 ? undefined : element('div', { class: 'fixes' }, ...fixes),
  );
}
