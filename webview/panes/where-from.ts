import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { WhereFromView } from '../../extension/protocol/views.ts';
import { cellAddress } from '../addresses.ts';
import { openDialog } from '../dialogs.ts';
import { element } from '../dom.ts';

/** Shows the working behind a figure; a step with a cell goes to it. */
export function showWhereFrom(view: WhereFromView, goTo: (cell: CellAddress) => void): void {
  const steps = element(
    'ol',
    { class: 'where-from' },
    ...view.steps.map((step, index) =>
      element(
        'li',
        {},
        step.row === ''
          ? element('span', { text: step.text })
          : element('button', {
              class: 'link',
              text: step.text,
              data: { step: String(index) },
              attributes: { type: 'button' },
            }),
      ),
    ),
  );
  const dialog = openDialog({ title: view.title, name: 'where-from', body: [steps] });
  steps.addEventListener('click', (event) => {
    const link = event.target instanceof Element && event.target.closest('[data-step]');
    if (!(link instanceof HTMLElement)) return;
    const step = view.steps[Number(link.dataset['step'])];
    dialog.close(false);
    if (step !== undefined) goTo(cellAddress(step.table, step.row, step.column));
  });
}
