import { z } from 'zod';
import { compareDays, type Day, isDay } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';

/**
 * An answer that a customer gave some other way than on their page, written down by staff as what it was: how and when it was
 * given, and what was said. It is never kept as words that the customer pressed.
 */
export const TOLD_BY = ['telephone', 'e-mail', 'letter', 'in-person'] as const;
export type ToldBy = (typeof TOLD_BY)[number];

/** Who answered, beside an answer that was told; their own words on their page stand under 'customer'. */
export const BY_TELLING = 'told';

export const TOLD = z.object({
  how: z.enum(TOLD_BY),
  /** the day it was said; of a letter, the day it was posted */
  on: z.custom<Day>((value) => typeof value === 'string' && isDay(value), 'not a calendar day'),
  /** as staff wrote them down; empty once the data of the person was removed */
  words: z.string(),
});
export type Told = z.infer<typeof TOLD>;

export const TOLD_BY_LABELS: Record<ToldBy, string> = {
  telephone: 'By telephone',
  'e-mail': 'By e-mail or in a message',
  letter: 'In a letter',
  'in-person': 'In person',
};

const WHEN: Record<ToldBy, (day: string) => string> = {
  telephone: (day) => `by telephone on ${day}`,
  'e-mail': (day) => `in writing on ${day}`,
  letter: (day) => `in a letter of ${day}`,
  'in-person': (day) => `in person on ${day}`,
};

/** toldWhen({ how: 'telephone', on: 2026-11-30, … }, 'en-GB') -> 'by telephone on Monday 30 November 2026' */
export function toldWhen({ how, on }: Pick<Told, 'how' | 'on'>, locale: string): string {
  return WHEN[how](formatDay(on, locale, 'weekday'));
}

/** The words an answer is kept with: what it comes to, after how it was given. */
export function toldText(told: Told, answer: string, locale: string): string {
  return `Told us ${toldWhen(told, locale)}: ${answer}`;
}

/** One line of a history: ', told by telephone: “Yes, go ahead.”', or nothing for what was pressed on the page. */
export function toldLine(told: Told | undefined): string {
  if (told === undefined) return '';
  const how = TOLD_BY_LABELS[told.how].toLowerCase();
  return told.words === '' ? `, told ${how}` : `, told ${how}: “${told.words}”`;
}

/**
 * The day the workshop knew of it: a letter is known of when it is written down, since only its own day was asked for; null then.
 * What is owed after a withdrawal, and the days to give money back, count by it (Directive 2011/83/EU Art. 13(1), 14(3)).
 */
export function heardOn({ how, on }: Pick<Told, 'how' | 'on'>): Day | null {
  return how === 'letter' ? null : on;
}

/**
 * Why an answer cannot have been given on that day, or counts no more: before it could be asked for (`since`), on a day to come, or
 * after the last day of a price that has lapsed (`until`); null where it can.
 */
export function toldDayProblem(o: {
  on: Day;
  since: Day;
  until?: Day | undefined;
  today: Day;
  locale: string;
}): string | null {
  if (o.until !== undefined && compareDays(o.on, o.until) > 0) {
    return `Enter the day they told us: ${formatDay(o.until, o.locale, 'weekday')} or before. The price was held until then`;
  }
  if (compareDays(o.on, o.today) > 0) return 'Enter the day they told us: today or before';
  if (compareDays(o.on, o.since) < 0) {
    return `Enter the day they told us: ${formatDay(o.since, o.locale, 'weekday')} or after`;
  }
  return null;
}
