import { moneyChangeText, moneyOrDash, moneyText } from '../../estimate/money.ts';
import { amountText } from '../../estimate/amount.ts';
import type { Charge } from '../../estimate/price/price.ts';
import { isDue } from '../../estimate/price/price-lines.ts';
import { minutesText } from '../../units/minutes-text.ts';
import { signedText } from '../../units/signed-text.ts';
import { blankLine, list, nothing, section, table, tag, type Content, type Html } from './html.ts';
import { changedBeside, changedScope, type ChangedJob, type OrderCopy } from './change-scope.ts';
import {
  headText,
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';
import { groupWords } from './words.ts';

/** What a change order is told besides the two states of the job. */
export interface ChangeOrder extends ChangedJob {
  /** What was agreed to, in words: a revision with its day, or a file. */
  readonly since: string;
  readonly copy: OrderCopy;
}

function signed(minor: number, currency: string): string {
  if (minor === 0) return 'no change';
  return moneyChangeText(minor, currency);
}

/** Before, change and after of a sum; two currencies have no difference. */
function moneyRow(
  { before, after }: ChangeOrder,
  label: string,
  [was, now]: readonly [number | undefined, number | undefined],
): readonly Content[] {
  const [old, currency] = [before.price.currency, after.price.currency];
  const change = old === currency ? signed((now ?? 0) - (was ?? 0), currency) : '';
  return [label, moneyOrDash(was, old), change, moneyOrDash(now, currency)];
}

function chargeRows(order: ChangeOrder, wanted: (charge: Charge) => boolean): Content[][] {
  const charges = ({ price }: PaperGround): readonly Charge[] => price.charges.filter(wanted);
  const key = ({ id, occurrence }: Charge): string => `${id}#${String(occurrence)}`;
  const was = new Map(charges(order.before).map((charge) => [key(charge), charge]));
  const now = new Map(charges(order.after).map((charge) => [key(charge), charge]));
  return [...new Set([...now.keys(), ...was.keys()])].map((one) => {
    const [old, charge] = [was.get(one), now.get(one)];
    const label = charge?.name ?? old?.name ?? '';
    return [...moneyRow(order, label, [old?.amount, charge?.amount])];
  });
}

const moneyHead = ['', 'Before', 'Change', 'After'];

/** Price as it was, what this change adds or takes off, and what it is now. */
function money(order: ChangeOrder): Html {
  const [was, now] = [order.before.price.totals, order.after.price.totals];
  const due = chargeRows(order, isDue);
  const payments =
    due.length === 0
      ? nothing
      : tag(
          'div',
          { class: 'avoid' },
          tag('h3', {}, 'Payments'),
          table(
            moneyHead,
            ['', 'n', 'n', 'n'],
            [...due, moneyRow(order, 'Due at the end', [was.balance, now.balance])],
          ),
        );
  return section(
    'Price',
    table(
      moneyHead,
      ['', 'n', 'n', 'n'],
      [
        moneyRow(order, 'Before tax', [was.price, now.price]),
        ...chargeRows(order, ({ operation }) => operation === 'tax'),
        moneyRow(order, 'Total', [was.total, now.total]).map((cell) => tag('strong', {}, cell)),
      ],
    ),
    payments,
  );
}

function timeText(minutes: number, { settings }: PaperGround): string {
  return minutesText(minutes, settings);
}

const phaseWords: ReadonlyMap<string, string> = new Map(Object.entries(groupWords));

/** Hours by phase, where they changed: for the shop alone. */
function hours(order: ChangeOrder): Html {
  const { before, after } = order;
  const phase = ({ work }: PaperGround, key: string): number =>
    work.phases.find((one) => one.key === key)?.working ?? 0;
  const keys = new Set([...after.work.phases, ...before.work.phases].map(({ key }) => key));
  const row = (label: string, old: number, minutes: number): readonly Content[] => {
    // The change is that of the figures beside it, which are whole minutes.
    const [was, now] = [Math.round(old), Math.round(minutes)];
    const change = now - was;
    const told = change === 0 ? 'no change' : signedText(change, timeText(Math.abs(change), after));
    return [label, timeText(was, after), told, timeText(now, after)];
  };
  const moved = [...keys]
    .map((key) => ({ key, was: phase(before, key), now: phase(after, key) }))
    .filter(({ was, now }) => was !== now)
    .map(({ key, was, now }) => row(phaseWords.get(key) ?? key, was, now));
  return section(
    'Hours (shop copy)',
    table(
      moneyHead,
      ['', 'n', 'n', 'n'],
      [...moved, row('Together', before.work.totals.working, after.work.totals.working)],
    ),
  );
}

/** What the job takes more or less of: for the shop alone. */
function amounts({ before, after }: ChangeOrder): Html {
  const lines = ({ bill }: PaperGround): ReadonlyMap<string, (typeof bill.lines)[number]> =>
    new Map(bill.lines.map((line) => [line.id, line]));
  const [was, now] = [lines(before), lines(after)];
  const rows = [...new Set([...now.keys(), ...was.keys()])].flatMap((id) => {
    const [old, line] = [was.get(id), now.get(id)];
    const text = (one: typeof old, { settings }: PaperGround): string =>
      one?.need === undefined ? '—' : amountText(one.need, settings);
    const [had, has] = [text(old, before), text(line, after)];
    return had === has ? [] : [[line?.name ?? old?.name ?? id, had, has]];
  });
  return section('Materials (shop copy)', table(['', 'Before', 'After'], ['', 'n', 'n'], rows));
}

function scope(order: ChangeOrder): Html {
  const lines = changedScope(order, order.copy);
  if (order.compared.same)
    return section('What changes', tag('p', {}, 'Nothing: this is what was agreed to.'));
  const beside = changedBeside(order, order.copy)
    ? ['Small parts, supplies and work are changed to suit.']
    : [];
  return section('What changes', list([...lines, ...beside]));
}

function draftNote({ before, after }: ChangeOrder): Html {
  if (before.price.state === 'whole' && after.price.state === 'whole') return nothing;
  return tag(
    'p',
    { class: 'warn' },
    'Draft: something in one of the two prices has no figure yet. Not to be sent.',
  );
}

function approval({ after }: ChangeOrder): Html {
  const total = moneyText(after.price.totals.total, after.price.currency);
  return tag(
    'section',
    { class: 'avoid' },
    tag('h2', {}, 'Approval'),
    tag(
      'p',
      {},
      `I agree to this change, which makes the total ${total}. All else stays as it was agreed to.`,
    ),
    blankLine('Name and signature', 'wide'),
    blankLine('Date'),
  );
}

/**
 * The paper that changes an order: what changes in words, price before and after with tax and payments,
 * a line to sign. The client's copy shows no cost and no hour; the shop's adds hours and amounts.
 */
export function changeOrderPaper(order: ChangeOrder, source: PaperSource = {}): PaperContent {
  const ground = order.after;
  const shop = order.copy === 'shop';
  return paperContent(
    'Change order',
    {
      ground,
      source,
      facts: [
        ...usualFacts(ground),
        ['Changes', order.since],
        ['Agreed on', headText(order.before, 'date')],
        ['Copy', shop ? 'Shop' : ''],
      ],
    },
    draftNote(order),
    scope(order),
    money(order),
    shop ? hours(order) : nothing,
    shop ? amounts(order) : nothing,
    approval(order),
  );
}
