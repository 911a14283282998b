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

/** Tabs of the panes beside the grid, with what each has to tell. */
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
    { key: 'panel', label: 'Panel', count: '', tone: 'plain' },
    { key: 'cut', label: 'Cut', count: '', tone: 'plain' },
    {
      key: 'problems',
      label: 'Problems',
      count: problems === 0 ? '' : String(problems),
      tone: wrong ? 'error' : 'warning',
    },
  ];
  return form === 'job' ? tabs : tabs.filter(({ key }) => bookPanes.includes(key));
}

/** Panes beside a shop book, which is nothing that could be built. */
const bookPanes: readonly string[] = ['card', 'problems'];

/** The pane that is shown for a name that was kept: one that there is. */
export function shownPane(pane: string, form: JobView['form'] = 'job'): string {
  if (form === 'book') return bookPanes.includes(pane) ? pane : 'problems';
  return ['card', 'price', 'checks', 'panel', 'cut', 'problems'].includes(pane) ? pane : 'bill';
}
