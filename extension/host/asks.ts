import {
  answerEdits,
  asksOf,
  askFaults,
  minutesText,
  type Ask,
  type Edit,
  type Snapshot,
  type WhatIf,
} from '../engine/index.ts';
import type { KitPreview, KitQuestionView, KitView } from '../protocol/kit-view.ts';
import type { ChoiceOption } from '../protocol/views.ts';
import { moneyText } from './views/money.ts';

function named(value: string, snapshot: Snapshot): ChoiceOption {
  const material = snapshot.book.materials.get(value)?.cells.get('name');
  return { value, label: material ?? value.replaceAll('_', ' '), detail: value };
}

function optionsOf({ form }: Ask, snapshot: Snapshot): readonly ChoiceOption[] {
  switch (form.kind) {
    case 'choice':
      return form.choices.map((value) => named(value, snapshot));
    case 'link':
      return form.tables
        .flatMap((table) => snapshot.workbook.rows(table))
        .map((row) => ({ value: row.id, label: row.cell('name').text ?? row.id, detail: row.id }));
    case 'yes-no':
      return ['yes', 'no'].map((value) => ({ value, label: value, detail: '' }));
    default:
      return [];
  }
}

function limits({ least, most }: Ask): string {
  if (least !== '' && most !== '') return `${least} to ${most}.`;
  if (least !== '') return `At least ${least}.`;
  return most === '' ? '' : `At most ${most}.`;
}

function questionView(ask: Ask, snapshot: Snapshot): KitQuestionView {
  const { form } = ask;
  const picks = form.kind === 'choice' || form.kind === 'link';
  return {
    key: ask.id,
    label: ask.name,
    help: [ask.help, limits(ask)].filter((text) => text !== '').join(' '),
    type: form.kind === 'yes-no' ? 'yes-no' : picks ? 'choice' : 'text',
    options: optionsOf(ask, snapshot),
    start: ask.start,
    required: ask.start !== '',
  };
}

/** The questions of a job's template that are not answered yet, as a form shows them. */
export function asksView(snapshot: Snapshot): KitView {
  const title = snapshot.shown.head.get('title')?.text ?? 'New job';
  return {
    id: 'asks',
    name: title,
    help: 'Answers are written into the cells of the job; each can be changed in the grid later.',
    questions: asksOf(snapshot.shown).map((ask) => questionView(ask, snapshot)),
  };
}

function totalsOf({ bill, work, price, checks }: WhatIf, snapshot: Snapshot): KitPreview['totals'] {
  const { settings } = snapshot;
  const failing = checks.filter(({ outcome }) => outcome === 'fail').length;
  return [
    { label: 'Price before tax', value: moneyText(price.totals.price, settings) },
    { label: 'Hours', value: minutesText(Math.round(work.totals.working), settings) },
    { label: 'Materials in the price', value: moneyText(bill.totals.charge, settings) },
    { label: 'To buy', value: moneyText(bill.totals.buy, settings) },
    ...(checks.length === 0 ? [] : [{ label: 'Checks that fail', value: String(failing) }]),
  ];
}

/** What the job would come to with these answers, or what is wrong with them. */
export function asksPreview(
  answers: Readonly<Record<string, string>>,
  snapshot: Snapshot,
  whatIf: (edits: readonly Edit[]) => WhatIf | undefined,
): KitPreview {
  const faults = askFaults(asksOf(snapshot.shown), answers, snapshot.settings);
  const problems = Object.fromEntries(faults.map(({ id, problem }) => [id, problem.message]));
  const edits = faults.length === 0 ? answerEdits(snapshot.shown, answers) : undefined;
  const then = edits?.ok === true ? whatIf(edits.value) : undefined;
  return { rows: [], totals: then === undefined ? [] : totalsOf(then, snapshot), problems };
}
