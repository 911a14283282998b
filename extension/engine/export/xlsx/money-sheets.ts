import type { Bill, BillLine } from '../../estimate/bill.ts';
import { numberOf, packText } from '../../estimate/amount.ts';
import { baseIn, quantityIn } from '../../estimate/cells.ts';
import { minorDigits, minorPerUnit, roundedMinor } from '../../estimate/money.ts';
import { isDue } from '../../estimate/price/price-lines.ts';
import type { Charge, Price } from '../../estimate/price/price.ts';
import type { Work } from '../../estimate/work/task.ts';
import { plain } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers } from '../../workbook/answers.ts';
import { figure, headings, textCell, type Sheet, type SheetCell } from './sheet.ts';
import { packsApart } from '../../estimate/shelf-packs.ts';

/** What the sheets of money are written from: a snapshot has it all. */
export interface MoneyGround {
  readonly workbook: Answers;
  readonly settings: UnitSettings;
  readonly bill: Bill;
  readonly work: Work;
  readonly price: Price;
}

type Row = readonly (SheetCell | undefined)[];

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0);

/** Packs that are bought, a row each: count × price. */
export function packsSheet({ bill, settings }: MoneyGround): Sheet {
  const unit = minorPerUnit(bill.currency);
  const rows = bill.lines.flatMap((line) => line.packs.map((pack) => ({ line, pack })));
  const lines = rows.map(({ line, pack }, index): Row => {
    const at = String(index + 2);
    const amount = amountOfPack(line, pack);
    const text = `ROUND(C${at}*D${at},${String(minorDigits(bill.currency))})`;
    const formula = { text, comesTo: (pack.count * pack.price) / unit };
    return [
      textCell(line.id),
      textCell(packText(pack, settings)),
      figure(pack.count, 'number'),
      figure(pack.price / unit, 'money'),
      figure(amount / unit, 'money', formula),
      textCell(pack.shelf === true ? 'on the shelf: no money goes out' : ''),
    ];
  });
  const money = bill.currency;
  const top = headings('Line', 'Pack', 'Count', `Price (${money})`, `Amount (${money})`, 'Note');
  return { name: 'Packs', rows: [top, ...lines] };
}

/** Money that goes out for a pack; the last of a line takes what rounding leaves. */
function amountOfPack(line: BillLine, pack: BillLine['packs'][number]): number {
  if (pack.shelf === true) return 0;
  const { bought } = packsApart(line);
  if (bought.length === 1) return line.buy;
  const others = bought.slice(0, -1).map(({ count, price }) => roundedMinor(count * price));
  const place = bought.indexOf(pack);
  return others[place] ?? line.buy - sumOf(others);
}

function billRow(line: BillLine, ground: MoneyGround, at: string): Row {
  const { settings, bill } = ground;
  const unit = minorPerUnit(bill.currency);
  const packs = `SUMIF(Packs!A:A,A${at},Packs!E:E)`;
  const bought = sumOf(line.packs.map((pack) => amountOfPack(line, pack)));
  const buy = line.packs.length === 0 ? undefined : { text: packs, comesTo: bought / unit };
  const used = line.charge === line.buy - line.leftValue ? `E${at}-H${at}` : undefined;
  const whole = line.charge === line.buy ? `E${at}` : used;
  const charge = whole === undefined ? undefined : { text: whole, comesTo: line.charge / unit };
  return [
    textCell(line.id),
    textCell(line.name),
    line.need === undefined ? undefined : figure(numberOf(line.need, settings), 'number'),
    textCell(line.need?.unit ?? ''),
    figure(line.buy / unit, 'money', buy),
    figure(line.charge / unit, 'money', charge),
    textCell(line.group),
    figure(line.leftValue / unit, 'money'),
    textCell(line.charges),
    textCell(line.complete ? '' : 'not complete'),
  ];
}

/** The bill: what is bought and what is charged, with sums. */
export function billSheet(ground: MoneyGround): Sheet {
  const { bill } = ground;
  const unit = minorPerUnit(bill.currency);
  const lines = bill.lines.map((line, index) => billRow(line, ground, String(index + 2)));
  const last = String(bill.lines.length + 1);
  const sum = (column: string, minor: number): SheetCell =>
    bill.lines.length === 0
      ? figure(minor / unit, 'sum')
      : figure(minor / unit, 'sum', {
          text: `SUM(${column}2:${column}${last})`,
          comesTo: minor / unit,
        });
  const { buy, charge } = bill.totals;
  const total: Row = [
    { text: 'Total', look: 'head' },
    ...empty(3),
    sum('E', buy),
    sum('F', charge),
  ];
  const money = bill.currency;
  return {
    name: 'Bill',
    rows: [
      headings(
        ...['Id', 'Name', 'Need', 'Need unit', `Buy (${money})`, `Charge (${money})`, 'Group'],
        ...[`Left over (${money})`, 'Charged by', 'Note'],
      ),
      ...lines,
      total,
    ],
  };
}

function empty(count: number): readonly undefined[] {
  return Array.from({ length: count }, () => undefined);
}

/** Tasks with their times in minutes, and the hours to be paid. */
export function tasksSheet({ work }: MoneyGround): Sheet {
  const lines = work.tasks.map((task, index): Row => {
    const at = String(index + 2);
    const { setup, each, times, people, elapsed, working, waits } = task;
    return [
      ...[task.id, task.name, task.kind, task.phase].map(textCell),
      ...[setup, each, times, people].map((number) => figure(number, 'number')),
      figure(elapsed, 'number', { text: `E${at}+F${at}*G${at}`, comesTo: setup + each * times }),
      waits
        ? figure(working, 'number')
        : figure(working, 'number', { text: `I${at}*H${at}`, comesTo: elapsed * people }),
      textCell(waits ? 'waiting' : task.complete ? '' : 'no time'),
    ];
  });
  const last = String(work.tasks.length + 1);
  const sum = { text: `SUM(J2:J${last})`, comesTo: work.totals.working };
  const total: Row = [
    { text: 'Total', look: 'head' },
    ...empty(8),
    figure(work.totals.working, 'number', work.tasks.length === 0 ? undefined : sum),
  ];
  return {
    name: 'Tasks',
    rows: [
      headings(
        ...['Id', 'Name', 'Kind', 'Phase', 'Set-up (min)', 'Each (min)', 'Times', 'People'],
        ...['By the clock (min)', 'To be paid (min)', 'Note'],
      ),
      ...lines,
      total,
    ],
  };
}

/**
 * What a formula that rounds comes to, in the currency's units. No number on the half of a minor unit,
 * which calculating programs round either way.
 */
function roundedTo(minor: number, unit: number): number {
  const beside = Math.abs((Math.abs(minor) % 1) - 0.5);
  return beside < 1e-6 ? Number.NaN : roundedMinor(minor) / unit;
}

interface ChargeWay {
  readonly base?: SheetCell | undefined;
  readonly share?: SheetCell | undefined;
  readonly amount: SheetCell;
}

/** What a share of each operation does, in the workbook's words and in figures. */
function shareFormula(
  operation: Charge['operation'],
  at: string,
): { readonly text: string; readonly of: (base: number, share: number) => number } | undefined {
  switch (operation) {
    case 'share':
    case 'tax':
      return { text: `ROUND(D${at}*E${at},`, of: (base, share) => base * share };
    case 'discount':
      return { text: `-ROUND(D${at}*E${at},`, of: (base, share) => -base * share };
    case 'margin':
      return {
        text: `-D${at}+ROUND(D${at}/(1-E${at}),`,
        of: (base, share) => base / (1 - share) - base,
      };
    default:
      return undefined;
  }
}

function chargeWay(charge: Charge, ground: MoneyGround, at: string): ChargeWay {
  const { price, workbook, work } = ground;
  const unit = minorPerUnit(price.currency);
  const digits = String(minorDigits(price.currency));
  const row = workbook.rows('charge').find(({ id, occurrence }) => {
    return id === charge.id && occurrence === charge.occurrence;
  });
  const amount = charge.amount / unit;
  if (row === undefined) return { amount: figure(amount, 'money') };
  const labours = price.charges.filter(({ operation }) => operation === 'labour');
  const rate = quantityIn(row, 'rate');
  if (charge.operation === 'labour' && labours.length === 1 && rate.state === 'value') {
    const hours = work.totals.working / 60;
    const hourly = rate.value.base * 60;
    const sheet = `Tasks!J${String(work.tasks.length + 2)}/60`;
    const comesTo = roundedTo(hours * hourly * unit, unit);
    return {
      base: figure(hours, 'number', { text: sheet, comesTo: hours }),
      share: figure(hourly, 'money'),
      amount: figure(amount, 'money', { text: `ROUND(D${at}*E${at},${digits})`, comesTo }),
    };
  }
  const share = baseIn(row, 'percent', plain);
  const formula = shareFormula(charge.operation, at);
  if (charge.base === undefined) return { amount: figure(amount, 'money') };
  const base = figure(charge.base / unit, 'money');
  if (share === undefined || formula === undefined)
    return { base, amount: figure(amount, 'money') };
  const comesTo = roundedTo(formula.of(charge.base, share), unit);
  return {
    base,
    share: figure(share, 'share'),
    amount: figure(amount, 'money', { text: `${formula.text}${digits})`, comesTo }),
  };
}

/** The price from materials to what is due: charges in their order, each a share of its base. */
export function priceSheet(ground: MoneyGround): Sheet {
  const { price, bill } = ground;
  const unit = minorPerUnit(price.currency);
  const rows: Row[] = [];
  const amounts: number[] = [];
  const billEnd = String(bill.lines.length + 1);
  for (const { group, amount } of price.materials) {
    const text = `SUMIF(Bill!G2:G${billEnd},C${String(rows.length + 2)},Bill!F2:F${billEnd})`;
    const lines = bill.lines.filter((line) => line.group === group);
    const comesTo = sumOf(lines.map(({ charge }) => charge)) / unit;
    const cell = figure(amount / unit, 'money', { text, comesTo });
    rows.push([textCell('Materials'), undefined, textCell(group), ...empty(2), cell]);
    amounts.push(amount);
  }
  const add = (charge: Charge): void => {
    const { base, share, amount } = chargeWay(charge, ground, String(rows.length + 2));
    rows.push([
      textCell(charge.name),
      textCell(charge.id),
      textCell(charge.kind),
      base,
      share,
      amount,
    ]);
  };
  for (const charge of price.charges) {
    if (isDue(charge)) continue;
    add(charge);
    amounts.push(charge.amount);
  }
  const last = String(rows.length + 1);
  const totalAt = String(rows.length + 2);
  const sum = { text: `SUM(F2:F${last})`, comesTo: sumOf(amounts) / unit };
  const total = price.totals.total / unit;
  const named = (text: string, cell: SheetCell): Row => [{ text, look: 'head' }, ...empty(4), cell];
  rows.push(named('Total', figure(total, 'sum', rows.length === 0 ? undefined : sum)));
  const due = price.charges.filter(isDue);
  due.forEach(add);
  if (due.length > 0) {
    const [from, to] = [String(rows.length + 2 - due.length), String(rows.length + 1)];
    const rest = price.totals.total - sumOf(due.map(({ amount }) => amount));
    const text = `F${totalAt}-SUM(F${from}:F${to})`;
    rows.push(
      named('Balance', figure(price.totals.balance / unit, 'sum', { text, comesTo: rest / unit })),
    );
  }
  const money = price.currency;
  const top = headings(
    ...['Charge', 'Id', 'Kind', `Of (${money}, or hours)`, 'Share, or rate an hour'],
    `Amount (${money})`,
  );
  return { name: 'Price', rows: [top, ...rows] };
}
