import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import type { ShownLine } from './lines';

export type Answered = {
  number: string;
  revision: number;
  lines: readonly ShownLine[];
  isGross: boolean;
  gross: number;
  validUntil: Day;
  /** the cover in words, as coverWords says it; null where none is known */
  cover: string | null;
  /** the most that a return unrepaired costs, with tax, minor units */
  returnFee: number;
  /** the price is for an inspection, which is taken off the price when the repair goes ahead */
  isTakenOff: boolean;
  /** a yes after the no to this revision */
  afterNoTo?: number | undefined;
  currency: string;
  locale: string;
};

/**
 * The words that a customer agrees to or declines, kept with the answer: every line, the total, how long it held, and, of a
 * yes, the cover and what a return costs. Amounts of lines are named with tax or without, as the revision has them.
 *
 * agreedWords('accepted', …) -> 'Yes to quote Q-…, revision 1: USB-C socket replaced £72.00. Amounts with tax. Total …'
 */
export function agreedWords(decision: 'accepted' | 'declined', o: Answered): string {
  const money = (minor: number) => formatMoney(minor, o.currency, o.locale);
  const lines = o.lines.map((line) => `${line.description} ${money(line.amount)}`).join('; ');
  return [
    `${decision === 'accepted' ? 'Yes' : 'No'}${o.afterNoTo === undefined ? '' : `, after the no to revision ${o.afterNoTo},`} to quote ${showNumber(o.number)}, revision ${o.revision}: ${lines}.`,
    `Amounts of the lines ${o.isGross ? 'with' : 'without'} tax.`,
    `Total with tax ${money(o.gross)}, held until the end of ${formatDay(o.validUntil, o.locale, 'weekday')}.`,
    ...(decision === 'accepted'
      ? [
          ...(o.cover === null ? [] : [`Cover: ${o.cover}.`]),
          ...(o.isTakenOff ? ['The inspection fee is taken off the price when the repair goes ahead.'] : []),
          `A return unrepaired costs ${money(o.returnFee)} at most.`,
          'Under the terms of the workshop, which are agreed to with the booking. Paid when the unit is ready to go back.',
        ]
      : []),
  ].join(' ');
}
