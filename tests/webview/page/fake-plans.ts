import type { ActualRowView, ActualsView } from '../../../extension/protocol/actuals-view.ts';
import type { CostDriversView } from '../../../extension/protocol/drivers-view.ts';
import type { MixView } from '../../../extension/protocol/mix-view.ts';
import type { OptionsView } from '../../../extension/protocol/options-view.ts';
import type { PictureView } from '../../../extension/protocol/panel-view.ts';
import type { ScheduleView } from '../../../extension/protocol/schedule-view.ts';

function bars(role: string, row: string): PictureView {
  const bar = {
    kind: 'line' as const,
    role,
    at: [10, 0, 60, 0, 60, 8, 10, 8],
    ...{ closed: true, filled: true, holes: [], arrow: false },
    row,
    owner: row,
  };
  return { box: { left: 0, bottom: 0, right: 100, top: 20 }, marks: [bar] };
}

/** One coat in two pots, for planning only. */
export function mixView(): MixView {
  return {
    message: '',
    facts: [{ key: 'life', label: 'Pot life', value: 'planning only' }],
    anchored: false,
    coats: [
      {
        id: 'ring_1',
        occurrence: 0,
        name: 'First coat',
        pots: '2 pots',
        amounts: [
          { key: 'resin', what: 'Resin', much: '240 g', also: 'about 220 ml' },
          { key: 'catalyst', what: 'Catalyst', much: '4.5 ml', also: '2 %' },
        ],
        exactly: 'Exactly 4.8 g or 4.3 ml of catalyst, about 86 drops.',
        measures: [
          {
            key: 'scale',
            amount: '5 g on the scale',
            makes: 'makes 2.08 %',
            error: '4.2 % too much',
          },
        ],
        life: 'Gels after about 20 min (for planning only).',
        warnings: ['It is too cold.'],
      },
    ],
    open: [{ id: 'ring_2', occurrence: 0, name: 'Second coat', why: 'it has no percentage.' }],
    total: 'Together 2 pots.',
    caution: 'Goggles and gloves.',
  };
}

/** One task on one day. */
export function scheduleView(): ScheduleView {
  return {
    title: 'Schedule: Wed 2026-11-25 to Wed 2026-11-25',
    message: '',
    facts: [{ key: 'finish', label: 'Finished', value: 'Wed 2026-11-25' }],
    notes: ['Other jobs in the shop are not known of.'],
    tasks: [
      {
        id: 'making',
        occurrence: 0,
        name: 'Make the ring',
        when: 'Wed 2026-11-25 8:00 to 9:00',
        takes: '1 h',
        note: '',
      },
    ],
    words: [],
    drawing: bars('part', 'part/ring_1'),
    rows: { 'part/ring_1': 'Make the ring' },
  };
}

/** One cell that moves the price. */
export function driversView(): CostDriversView {
  return {
    title: 'What moves the price most',
    message: '',
    drivers: [
      {
        ...{ table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' },
        name: 'Midbass ring: tilt',
        says: '15 deg',
        less: '−1.00 USD',
        more: '+1.00 USD',
      },
    ],
    drawing: bars('part', 'part/ring_1/tilt'),
    rows: { 'part/ring_1/tilt': 'Midbass ring' },
  };
}

/** Two options, the second of which cannot be written. */
export function optionsView(): OptionsView {
  const tilt = { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' };
  const option = { table: 'option', occurrence: 0, note: '', problem: '', cells: [] };
  return {
    message: '',
    note: 'Not in the weight: magnets.',
    figures: [
      {
        label: 'Price before tax',
        now: '100.00 USD',
        then: [
          { text: '120.00 USD', change: '+20.00 USD' },
          { text: '–', change: '' },
        ],
      },
    ],
    options: [
      {
        ...option,
        id: 'steep',
        name: 'Leans further',
        cells: [{ cell: tilt, name: 'Midbass ring: tilt', now: '15 deg', then: '22 deg' }],
      },
      { ...option, id: 'odd', occurrence: 1, name: 'Odd', problem: 'It cannot be written.' },
    ],
  };
}

/** One task that was timed, and one row whose amount is taken as it is typed. */
export function actualsView(used: string): ActualsView {
  const cell = (text: string): ActualRowView['said'] => ({
    ...{ shown: text, typed: text, formula: false, message: '', severity: '' },
    look: text === '' ? 'blank' : 'typed',
  });
  const row = { occurrence: 0, table: 'part' };
  const tilt = {
    cell: { ...row, id: 'ring_1', column: 'used' },
    ...{ name: 'Midbass ring', of: 'Panel board', estimated: '3 sq ft', problem: '' },
    ...{ said: cell(used), actual: '', difference: used === '' ? '' : '+1 sq ft, +33 %' },
  };
  const other = {
    ...{ ...tilt, cell: { ...tilt.cell, id: 'ring_2' }, name: 'Tweeter ring' },
    ...{ said: cell('2 kg'), actual: '', difference: '', problem: 'Not in sq ft.' },
  };
  return {
    message: '',
    said: 'Told so far: 0 of 0 tasks, 1 of 2 parts.',
    tasks: [],
    timed: { label: 'Timed', estimated: '1 h', actual: '2 h', difference: '+1 h, +100 %' },
    materials: [tilt, other],
  };
}
