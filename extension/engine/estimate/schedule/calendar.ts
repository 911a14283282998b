/** Days are counted from 1970-01-01, which is 0; no clock and no time zone takes part. */
export type Day = number;

const datePattern = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Day of a date such as 2026-11-25; undefined for what is no day of the calendar.
 *
 * @source definition of the Gregorian calendar: years from March, eras of 400 years
 */
export function dayOf(date: string): Day | undefined {
  const found = datePattern.exec(date.trim());
  if (found === null) return undefined;
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number);
  const result = dayFrom(year, month, day);
  return dateOf(result) === date.trim() ? result : undefined;
}

function dayFrom(year: number, month: number, day: number): Day {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const ofEra = shifted - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const days = ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear;
  return era * 146_097 + days - 719_468;
}

/** Date of a day: 0 is 1970-01-01. */
export function dateOf(day: Day): string {
  const shifted = day + 719_468;
  const era = Math.floor(shifted / 146_097);
  const ofEra = shifted - era * 146_097;
  const year = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) /
      365,
  );
  const ofYear = ofEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const month = Math.floor((5 * ofYear + 2) / 153);
  const date = ofYear - Math.floor((153 * month + 2) / 5) + 1;
  const real = month < 10 ? month + 3 : month - 9;
  const whole = year + era * 400 + (real <= 2 ? 1 : 0);
  const pad = (number: number, width: number): string => String(number).padStart(width, '0');
  return `${pad(whole, 4)}-${pad(real, 2)}-${pad(date, 2)}`;
}

/** Words of the week, Monday first. */
export const weekWords = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

export type WeekWord = (typeof weekWords)[number];

/** Day of the week: 1970-01-01 was a Thursday. */
export function weekWordOf(day: Day): WeekWord {
  return weekWords[(((day + 3) % 7) + 7) % 7] ?? 'mon';
}

/** `Wed 2026-11-25`. */
export function dayText(day: Day): string {
  const word = weekWordOf(day);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)} ${dateOf(day)}`;
}

/** Minutes of a day as a clock shows them: `8:05`. */
export function clockText(minutes: number): string {
  const whole = Math.round(minutes);
  return `${String(Math.floor(whole / 60))}:${String(whole % 60).padStart(2, '0')}`;
}

/** When a shop works. */
export interface ShopHours {
  readonly days: ReadonlySet<WeekWord>;
  /** Minutes after midnight at which work begins and ends. */
  readonly from: number;
  readonly to: number;
  readonly shut: ReadonlySet<Day>;
}

/** Hours as they hang on a shop's door: `Mon to Fri, 8:00 to 16:00`. */
export function hoursWords({ days, from, to }: Pick<ShopHours, 'days' | 'from' | 'to'>): string {
  const open = weekWords.filter((word) => days.has(word));
  const named = (word: WeekWord): string => word.charAt(0).toUpperCase() + word.slice(1);
  const first = open[0];
  const last = open.at(-1);
  const row = first !== undefined && last !== undefined && open.length > 2;
  const inOne = row && weekWords.indexOf(last) - weekWords.indexOf(first) === open.length - 1;
  const when = inOne ? `${named(first)} to ${named(last)}` : open.map(named).join(', ');
  return `${when}, ${clockText(from)} to ${clockText(to)}`;
}

/** A moment, in minutes since the beginning of day 0. */
export type Moment = number;

const dayMinutes = 24 * 60;

/** The moment of a day and minutes after midnight. */
export function momentOf(day: Day, minutes: number): Moment {
  return day * dayMinutes + minutes;
}

/** The day of a moment. */
export function dayAt(moment: Moment): Day {
  return Math.floor(moment / dayMinutes);
}

/** Minutes after midnight at a moment. */
export function minutesAt(moment: Moment): number {
  return moment - dayAt(moment) * dayMinutes;
}

function isOpen(day: Day, hours: ShopHours): boolean {
  return hours.days.has(weekWordOf(day)) && !hours.shut.has(day);
}

// No shop is shut for longer; a list that shuts every day must not be searched for ever.
const longestShut = 400;

/** The next moment at which somebody may work; undefined where the shop never opens. */
export function nextOpen(moment: Moment, hours: ShopHours): Moment | undefined {
  let day = dayAt(moment);
  if (isOpen(day, hours) && minutesAt(moment) < hours.to) {
    return Math.max(moment, momentOf(day, hours.from));
  }
  for (let tries = 0; tries < longestShut; tries++) {
    day += 1;
    if (isOpen(day, hours)) return momentOf(day, hours.from);
  }
  return undefined;
}

// A thousandth of a second, in minutes.
const tolerance = 1e-5;

/** A stretch of work within one day. */
export interface Stretch {
  readonly from: Moment;
  readonly to: Moment;
}

/**
 * Lays minutes of work over the shop's hours from a moment on. What may not be interrupted (a coat of
 * resin) waits for a day that it fits into, unless it is longer than any.
 *
 * @returns no stretches where the shop never opens; one of no length for work of no minutes
 */
export function layWork(
  minutes: number,
  from: Moment,
  of: { readonly hours: ShopHours; readonly whole: boolean },
): readonly Stretch[] {
  const { hours, whole } = of;
  if (!Number.isFinite(minutes + from)) return [];
  const stretches: Stretch[] = [];
  let at = nextOpen(from, hours);
  let left = minutes;
  while (at !== undefined) {
    const end = momentOf(dayAt(at), hours.to);
    const fits = end - at >= left - tolerance;
    const later = whole && !fits && stretches.length === 0 && left <= hours.to - hours.from;
    // Moments are large numbers: what is left of a sum of them is never quite nothing.
    if (fits) return [...stretches, { from: at, to: Math.min(end, at + left) }];
    if (!later) {
      stretches.push({ from: at, to: end });
      left -= end - at;
    }
    at = nextOpen(end, hours);
  }
  return [];
}
