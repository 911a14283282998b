import type { Edit, FileReading } from '../../job/source.ts';
import type { Problem } from '../../problems.ts';
import type { Result } from '../../result.ts';
import { atOnce, type Steps } from '../../steps.ts';
import { mass, time } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import { signedText } from '../../units/signed-text.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers } from '../../workbook/answers.ts';
import type { Bill, Minor } from '../bill.ts';
import type { Check } from '../checks/check.ts';
import { moneyText } from '../money.ts';
import type { Price } from '../price/price.ts';
import type { Work } from '../work/task.ts';
import { builtMass } from './built-mass.ts';
import { optionsOf, type JobOption } from './options.ts';

/** A job worked out, as options are compared by it. */
export interface OptionGround {
  readonly shown: FileReading;
  readonly workbook: Answers;
  readonly settings: UnitSettings;
  readonly bill: Bill;
  readonly work: Work;
  readonly price: Price;
  readonly checks: readonly Check[];
}

/** What a job comes to: the figures that options are held against each other by. */
export interface OptionFigures {
  /** Before tax. */
  readonly price: Minor;
  readonly total: Minor;
  /** Time to be paid. */
  readonly minutes: number;
  /** Mass of what is built, in g, and what is not in it. */
  readonly grams: number;
  readonly unweighed: readonly string[];
  readonly failing: number;
  /** True where the price has all its figures. */
  readonly whole: boolean;
}

export interface ComparedOption extends JobOption {
  /** Undefined where it cannot be written into the job; then `problem` says why. */
  readonly figures: OptionFigures | undefined;
  readonly problem: Problem | undefined;
}

export interface ComparedOptions {
  readonly base: OptionFigures;
  readonly options: readonly ComparedOption[];
  readonly settings: UnitSettings;
}

/** A job that can be worked out with edits, beside itself. */
export interface TriedOptions {
  readonly snapshot: () => OptionGround;
  readonly trial: (edits: readonly Edit[]) => Result<OptionGround>;
}

function figuresOf(ground: OptionGround): OptionFigures {
  const { bill, work, price, workbook, settings, checks } = ground;
  const { grams, unknown } = builtMass(bill, workbook, settings);
  return {
    price: price.totals.price,
    total: price.totals.total,
    minutes: work.totals.working,
    grams,
    unweighed: unknown,
    failing: checks.filter(({ outcome }) => outcome === 'fail').length,
    whole: price.state === 'whole' && bill.totals.complete,
  };
}

/**
 * The options of a job side by side: each is worked out on the job as it is, alone. The job is worked
 * out in the same way, so that differences are of the options and of nothing else. It rests before each
 * option, so that whoever steps it on can let typing in between; the job must not change before its end.
 */
export function* compareOptionSteps(job: TriedOptions): Steps<ComparedOptions> {
  const now = job.snapshot();
  const plain = job.trial([]);
  const options: ComparedOption[] = [];
  for (const option of optionsOf(now.shown)) {
    yield;
    const tried = job.trial(option.edits);
    options.push(
      tried.ok
        ? { ...option, figures: figuresOf(tried.value), problem: undefined }
        : { ...option, figures: undefined, problem: tried.problem },
    );
  }
  return { base: figuresOf(plain.ok ? plain.value : now), options, settings: now.settings };
}

/** The options of a job side by side, worked out in one go. */
export function compareOptions(job: TriedOptions): ComparedOptions {
  return atOnce(compareOptionSteps(job));
}

/** What each option adds to the total, for a quote: those whose price has all its figures. */
export function optionPrices({ base, options }: ComparedOptions): readonly {
  readonly name: string;
  readonly note: string;
  readonly change: Minor;
}[] {
  return options.flatMap(({ name, note, figures }) => {
    return figures?.whole === true ? [{ name, note, change: figures.total - base.total }] : [];
  });
}

/** One line of the comparison: a figure of the job and of each option, in words. */
export interface OptionLine {
  readonly label: string;
  readonly now: string;
  /** Figure and its difference from the job, for each option. */
  readonly then: readonly { readonly text: string; readonly change: string }[];
}

function changeOf(text: string, change: number): string {
  if (change === 0) return 'no change';
  return signedText(change, text);
}

interface Reading {
  readonly label: string;
  readonly of: (figures: OptionFigures) => number;
  readonly show: (value: number) => string;
}

function readings({ settings }: ComparedOptions): readonly Reading[] {
  const money = (minor: number): string => moneyText(minor, settings.currency);
  const hours = (minutes: number): string =>
    showQuantity({ base: Math.round(minutes), dimension: time }, settings).text;
  const unit = settings.units === 'in' ? 'lb' : 'kg';
  const weight = (grams: number): string =>
    showQuantity({ base: grams, dimension: mass }, settings, unit).text;
  return [
    { label: 'Price before tax', of: ({ price }) => price, show: money },
    { label: 'Total', of: ({ total }) => total, show: money },
    { label: 'Hours', of: ({ minutes }) => Math.round(minutes), show: hours },
    { label: 'Weight built', of: ({ grams }) => Math.round(grams * 10) / 10, show: weight },
    { label: 'Checks failing', of: ({ failing }) => failing, show: String },
  ];
}

/** The comparison as lines of words, for whoever shows it. */
export function optionLines(compared: ComparedOptions): readonly OptionLine[] {
  const { base, options } = compared;
  return readings(compared).map(({ label, of, show }) => {
    const now = of(base);
    return {
      label,
      now: show(now),
      then: options.map(({ figures }) => {
        if (figures === undefined) return { text: '–', change: '' };
        const change = of(figures) - now;
        return { text: show(of(figures)), change: changeOf(show(Math.abs(change)), change) };
      }),
    };
  });
}

/** What no weight is known of, in a sentence; empty where all is weighed. */
export function unweighedWords({ base, options }: ComparedOptions): string {
  const all = [base, ...options.flatMap(({ figures }) => figures ?? [])];
  const names = [...new Set(all.flatMap(({ unweighed }) => unweighed))];
  if (names.length === 0) return '';
  const some = names.slice(0, 6).join(', ');
  const more = names.length > 6 ? ` and ${String(names.length - 6)} more` : '';
  return `Not in the weight, because their book gives no density or weight: ${some}${more}.`;
}
