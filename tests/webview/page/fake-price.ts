import type { HoursView, MoneyView, PriceView } from '../../../extension/protocol/price-view.ts';

/** Two phases with a task each, one of which has no time yet. */
function hoursView(): HoursView {
  const task = { occurrence: 0, how: 'basis 2 × 25 min', note: '', complete: true };
  return {
    phases: [
      {
        key: 'structure',
        label: 'Structure',
        working: '1 h',
        waiting: '',
        tasks: [{ ...task, id: 'making', name: 'Make the ring', time: '1 h' }],
      },
      {
        key: 'skin',
        label: 'Skin',
        working: '0 min',
        waiting: '6 h waiting',
        tasks: [
          {
            ...task,
            id: 'curing',
            name: 'Cure',
            time: '–',
            note: 'Cure has no time.',
            complete: false,
          },
        ],
      },
    ],
    people: [],
    total: '1 h of work, 6 h of waiting',
    notes: ['1 task has no time yet'],
  };
}

/** Materials, labour and total. */
function priceView(): PriceView {
  const line = { detail: '', table: '', id: '' };
  return {
    lines: [
      {
        ...line,
        key: 'materials/skin',
        label: 'Skin: materials',
        amount: '48.00 USD',
        look: 'part',
      },
      {
        key: 'charge/hours#0',
        label: 'Labour',
        detail: '1 h × 68.00 USD/h',
        amount: '68.00 USD',
        look: 'part',
        table: 'charge',
        id: 'hours',
      },
      { ...line, key: 'total', label: 'Total', amount: '116.00 USD', look: 'total' },
    ],
    facts: [{ key: 'earned', label: 'Earned over the cost', value: '0.00 USD' }],
    notes: [],
    change: '+68.00 USD',
  };
}

/** What the price pane asks for. */
export function moneyView(): MoneyView {
  return { price: priceView(), hours: hoursView() };
}
