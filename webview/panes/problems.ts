import type { ProblemView } from '../../extension/protocol/views.ts';
import { rowKey } from '../addresses.ts';
import { element, keyedChildren, setHidden } from '../dom.ts';
import { icon } from '../icons.ts';

export function problemKey(problem: ProblemView): string {
  const { table, row, occurrence, column, code, message } = problem;
  return [table, row, occurrence, column, code, message].join('\u001f');
}

function cellText({ table, row: id, occurrence, column }: ProblemView): string {
  const row = id === '' ? table : rowKey({ id, occurrence });
  return column === '' ? row : `${row}.${column}`;
}

function placeText(problem: ProblemView): string {
  const line = problem.line > 0 ? `line ${String(problem.line)}` : '';
  return [cellText(problem), line].filter((text) => text !== '').join(' · ');
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

/** A problem with its number in the list. */
interface Numbered {
  readonly problem: ProblemView;
  readonly index: number;
}

/** Problems of one sentence, in their order: one cause may stop many cells. */
interface Group {
  readonly first: Numbered;
  readonly more: Numbered[];
}

/** One that offers a way out of its own stands by itself. */
function grouped(problems: readonly ProblemView[]): readonly Group[] {
  const groups: Group[] = [];
  const known = new Map<string, Group>();
  problems.forEach((problem, index) => {
    const { severity, code, message, fixes } = problem;
    const said = [severity, code, message].join('\u001f');
    const group = fixes.length === 0 ? known.get(said) : undefined;
    if (group !== undefined) {
      group.more.push({ problem, index });
      return;
    }
    const fresh = { first: { problem, index }, more: [] };
    groups.push(fresh);
    if (fixes.length === 0) known.set(said, fresh);
  });
  return groups;
}

/** Everything wrong with the job, each sentence once; a click goes to the cell. */
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
    keyedChildren(this.#list, grouped(problems), {
      // Buttons carry the problem's number, so a problem that moves is made anew.
      key: ({ first, more }) =>
        [first, ...more]
          .map(({ problem, index }) => `${String(index)}\u001f${problemKey(problem)}`)
          .join('\u001e'),
      make: problemLine,
    });
  }
}

function alsoAt(more: readonly Numbered[]): HTMLElement {
  const places = more.map(({ problem, index }) =>
    element('button', {
      class: 'link',
      text: cellText(problem),
      data: { action: 'go-problem', problem: String(index) },
      attributes: { type: 'button' },
    }),
  );
  const words = element('span', { class: 'small', text: 'Also at' });
  return element('div', { class: 'problem-also' }, words, ...places);
}

function problemLine({ first: { problem, index }, more }: Group): HTMLElement {
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
    more.length === 0 ? undefined : alsoAt(more),
    fixes.length === 0 ? undefined : element('div', { class: 'fixes' }, ...fixes),
  );
}
