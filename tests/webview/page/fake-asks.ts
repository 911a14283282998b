import type { KitPreview, KitView } from '../../../extension/protocol/kit-view.ts';

/** What a template asks, as a host would show it. */
export const templateAsks: KitView = {
  id: 'asks',
  name: 'Door pair',
  help: 'Answers are written into the cells of the job.',
  questions: [
    {
      key: 'panel_length',
      label: 'Panel: along the car',
      help: '18 in to 40 in.',
      type: 'text',
      options: [],
      start: '26 in',
      required: true,
    },
    {
      key: 'tweeter',
      label: 'Tweeter in the panel',
      help: '',
      type: 'yes-no',
      options: [],
      start: 'yes',
      required: true,
    },
  ],
};

/** Totals that follow the length, which may not be more than 40. */
export function asksPreview(answers: Readonly<Record<string, string>>): KitPreview {
  const length = Number.parseFloat(answers['panel_length'] ?? '');
  if (!(length <= 40)) {
    const message = 'Panel: along the car: 48 in is above the most, 40 in.';
    return { rows: [], totals: [], problems: { panel_length: message } };
  }
  const value = `${(length * 50).toFixed(2)} USD`;
  return { rows: [], totals: [{ label: 'Price before tax', value }], problems: {} };
}
