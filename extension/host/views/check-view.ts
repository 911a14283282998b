import {
  rowKey,
  showQuantity,
  type AnsweredRow,
  type Check,
  type CheckOutcome,
  type Snapshot,
} from '../../engine/index.ts';
import type { CheckView } from '../../protocol/check-view.ts';
import type { CellView, HeadlineFigure } from '../../protocol/views.ts';

const words: Readonly<Record<CheckOutcome, string>> = {
  pass: 'pass',
  near: 'near',
  fail: 'fails',
  decide: 'decide',
  'no-answer': 'open',
};

const countWords: Readonly<Record<CheckOutcome, string>> = {
  ...words,
  fail: 'fail',
  decide: 'to decide',
};

/** The worst first: what has to be looked at stands on top. */
const order: readonly CheckOutcome[] = ['fail', 'no-answer', 'decide', 'near', 'pass'];

export function outcomeWord(check: Check): string {
  const should = check.outcome === 'fail' && check.level === 'should' ? ' (should)' : '';
  return `${words[check.outcome]}${should}`;
}

function toneOf({ outcome, level }: Check): CheckView['tone'] {
  if (outcome === 'fail') return level === 'must' ? 'error' : 'warning';
  return outcome === 'no-answer' ? 'warning' : 'plain';
}

export function checkView(check: Check): CheckView {
  const { id, occurrence, outcome, message } = check;
  return { id, occurrence, outcome, word: outcomeWord(check), tone: toneOf(check), message };
}

/** Checks of the job, the worst first. */
export function checkViews({ checks }: Snapshot): readonly CheckView[] {
  return checks
    .toSorted((one, two) => order.indexOf(one.outcome) - order.indexOf(two.outcome))
    .map(checkView);
}

/** Checks by the key of their row. */
export function checksByKey({ checks }: Snapshot): ReadonlyMap<string, Check> {
  return new Map(checks.map((check) => [rowKey({ ...check, table: 'check' }), check]));
}

/** Room left to the limit that is closer, in the unit of its kind. */
export function marginText(check: Check, { book, settings }: Snapshot): string {
  if (check.margin === undefined) return '';
  return showQuantity(check.margin, settings, book.kinds.get(check.kind)?.words).text;
}

function onceWord(outcome: CheckOutcome): string {
  return outcome === 'fail' ? 'fails' : countWords[outcome];
}

/** "1 fails, 2 near" of all checks; nothing where the job has none. */
export function checksFigure({ checks }: Snapshot): HeadlineFigure | undefined {
  if (checks.length === 0) return undefined;
  const counts = order.flatMap((outcome) => {
    const count = checks.filter((check) => check.outcome === outcome).length;
    return count === 0 ? [] : [{ outcome, count }];
  });
  const open = counts.filter(({ outcome }) => outcome !== 'pass');
  const text = open
    .map(
      ({ outcome, count }) =>
        `${String(count)} ${count === 1 ? onceWord(outcome) : countWords[outcome]}`,
    )
    .join(', ');
  const tones = checks.map(toneOf);
  return {
    key: 'checks',
    label: 'Checks',
    value: text === '' ? `${String(checks.length)} pass` : text,
    change: '',
    tone: tones.includes('error') ? 'error' : tones.includes('warning') ? 'warning' : 'plain',
  };
}

const figures = ['value', 'least', 'most', 'near'];

/** A figure of a check in the unit that its kind names; one typed as a literal stays as it is spelt. */
export function inUnitOfKind(
  view: CellView,
  key: string,
  row: AnsweredRow,
  { book, settings }: Snapshot,
): CellView {
  const unit = book.kinds.get(row.kind)?.words ?? '';
  const { result, origin, formula } = row.cell(key);
  if (row.table !== 'check' || unit === '' || !figures.includes(key)) return view;
  if (result.state !== 'value' || result.value.kind !== 'quantity') return view;
  if (origin === 'typed' && !formula) return view;
  return { ...view, shown: showQuantity(result.value, settings, unit).text };
}
