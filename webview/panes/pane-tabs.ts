import type { CompareView } from '../../extension/protocol/compare-view.ts';
import type { CheckView } from '../../extension/protocol/check-view.ts';
import type { JobView } from '../../extension/protocol/views.ts';
import type { Tab } from './tabs.ts';

function checksTab(checks: readonly CheckView[]): Tab {
  const told = checks.filter(({ tone }) => tone !== 'plain').length;
  const wrong = checks.some(({ tone }) => tone === 'error');
  return {
    key: 'checks',
    label: 'Checks',
    count: told === 0 ? '' : String(told),
    tone: wrong ? 'error' : 'warning',
  };
}

/** Tabs of the sheets, with how many rows each has and where something is wrong. */
export function sheetTabs({ sheets }: JobView, wrong: ReadonlySet<string>): readonly Tab[] {
  return sheets.map(({ table, label, order }) => ({
    key: table,
    label,
    count: order.length === 0 || table === 'job' ? '' : String(order.length),
    tone: wrong.has(table) ? 'error' : 'plain',
  }));
}

/** Tabs of the panes beside the grid, with what each has to tell: those that count something in front, where a narrow strip shows them. */
export function paneTabs(
  checks: readonly CheckView[],
  problems: number,
  wrong: boolean,
  form: JobView['form'] = 'job',
): readonly Tab[] {
  const tabs: readonly Tab[] = [
    { key: 'card', label: 'Row', count: '', tone: 'plain' },
    { key: 'bill', label: 'Bill', count: '', tone: 'plain' },
    { key: 'price', label: 'Price', count: '', tone: 'plain' },
    checksTab(checks),
    {
      key: 'problems',
      label: 'Problems',
      count: problems === 0 ? '' : String(problems),
      tone: wrong ? 'error' : 'warning',
    },
    { key: 'panel', label: 'Panel', count: '', tone: 'plain' },
    { key: 'cut', label: 'Cut', count: '', tone: 'plain' },
    { key: 'mix', label: 'Mix', count: '', tone: 'plain' },
    { key: 'schedule', label: 'Schedule', count: '', tone: 'plain' },
    { key: 'options', label: 'Options', count: '', tone: 'plain' },
    { key: 'actuals', label: 'Actuals', count: '', tone: 'plain' },
  ];
  return form === 'job' ? tabs : tabs.filter(({ key }) => bookPanes.includes(key));
}

/** The tabs with one for the version that the job is held against, where there is one. */
export function withCompare(tabs: readonly Tab[], view: CompareView | undefined): readonly Tab[] {
  if (view === undefined) return tabs;
  const count = view.changes.length === 0 ? '' : String(view.changes.length);
  // In front: the strip may be too narrow for all, and this one was asked for.
  return [{ key: 'compare', label: 'Compare', count, tone: 'plain' }, ...tabs];
}

/** Panes beside a shop book, which is nothing that could be built. */
const bookPanes: readonly string[] = ['card', 'problems'];

/** Panes beside a job, but for the bill, which stands in for one that is not known. */
const jobPanes: readonly string[] = [
  ...[
    'card',
    'price',
    'options',
    'checks',
    'panel',
    'cut',
    'mix',
    'schedule',
    'actuals',
    'problems',
  ],
];

/** The pane that is shown for a name that was kept: one that there is. */
export function shownPane(
  pane: string,
  form: JobView['form'] = 'job',
  compared?: CompareView,
): string {
  if (pane === 'compare' && compared !== undefined) return pane;
  if (form === 'book') return bookPanes.includes(pane) ? pane : 'problems';
  return jobPanes.includes(pane) ? pane : 'bill';
}
