import type { CheckView } from '../../extension/protocol/check-view.ts';
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
): readonly Tab[] {
  return [
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
}

/** The pane that is shown for a name that was kept: one that there is. */
export function shownPane(pane: string): string {
  return ['card', 'price', 'checks', 'panel', 'cut', 'problems'].includes(pane) ? pane : 'bill';
}
