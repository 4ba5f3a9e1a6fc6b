/**
 * The right to withdraw from a contract made at a distance: Directive 2011/83/EU, and its British mirror, the Consumer
 * Contracts (Information, Cancellation and Additional Charges) Regulations 2013 (SI 2013/3134). Glossary:
 * - period: 14 days from the day the contract is made, in which no reason is needed (Art. 9(1), (2)(a)).
 * - start request: the customer's express wish that work begins within the period (Art. 7(3), 8(8)).
 * - informed: told of the right, and of what the start request costs, before the contract was made (Art. 6(1)(h), (j)).
 */
import { addDays, type Day } from '@/lib/calendar/day';
import { nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';
import { roundedShare } from '@/lib/money/amount';
import { isInspectionFee, withTax } from './after-no';
import { type QuoteLine, revisionTotals } from './lines';

export const WITHDRAWAL_RULES = ['off', 'eu', 'uk'] as const;
export type WithdrawalRule = (typeof WITHDRAWAL_RULES)[number];

export const WITHDRAWAL_DAYS = 14;

/** Reads a stored rule back; a word that no version of the program wrote counts as off. */
export function readWithdrawalRule(text: string): WithdrawalRule {
  return WITHDRAWAL_RULES.find((rule) => rule === text) ?? 'off';
}

/**
 * The last day to withdraw, through its end; null where there is no such right.
 *
 * The day of the contract is not counted, and a last day that is a Saturday, a Sunday or a holiday becomes the next
 * working day (Regulation 1182/71 Art. 3(1), (4)). The British regulations count 14 days after the day of the contract
 * and name no such step (reg. 30, from memory), so that there the fourteenth day is the last.
 *
 * withdrawUntil(2026-12-12, 'eu', England) -> 2026-12-29; with 'uk' -> 2026-12-26.
 */
export function withdrawUntil(contractOn: Day, rule: WithdrawalRule, calendar: WorkingCalendar): Day | null {
  if (rule === 'off') return null;
  const last = addDays(contractOn, WITHDRAWAL_DAYS);
  return rule === 'eu' ? nextWorkingDay(last, calendar) : last;
}

export type WithdrawnAt = {
  /** the agreed price with tax, minor units */
  price: number;
  minutesDone: number;
  minutesPlanned: number;
  hasStartRequest: boolean;
  isInformed: boolean;
};

/**
 * What is owed after a withdrawal: the part of the whole agreed price that the work done is of the work planned, half up
 * (Art. 14(3), SI 2013/3134 reg. 36(4)), never more than the price. Nothing where the customer did not ask for the start
 * or was not informed, however much was done (Art. 14(4)(a); CJEU C-97/22). Refuses negative and broken minutes.
 *
 * owedAfterWithdrawal({ price: 12000, minutesDone: 15, minutesPlanned: 60, hasStartRequest: true, isInformed: true }) -> 3000
 */
export function owedAfterWithdrawal(o: WithdrawnAt): number {
  if (!o.hasStartRequest || !o.isInformed) return 0;
  const { done, planned } = share(o);
  return roundedShare(o.price, done, planned);
}

function share(o: { minutesDone: number; minutesPlanned: number }): { done: number; planned: number } {
  if (!Number.isInteger(o.minutesDone) || o.minutesDone < 0) throw new RangeError('Not minutes of work done');
  if (!Number.isInteger(o.minutesPlanned) || o.minutesPlanned < 0)
    throw new RangeError('Not minutes planned');
  // Work that nobody planned cannot be measured against a plan: with nothing planned, nothing is owed.
  if (o.minutesPlanned === 0) return { done: 0, planned: 1 };
  return { done: Math.min(o.minutesDone, o.minutesPlanned), planned: o.minutesPlanned };
}

/**
 * The lines of what is owed, with the tax in them. An agreed fee for an inspection that is finished is owed whole: the
 * inspection is a service given in full for a price paid apart (Art. 14(3) as read in CJEU C-641/19; SI 2013/3134 reg. 36(4)).
 * One that is not finished cannot be measured, since nobody plans its minutes, and is not owed. The rest of the price is
 * owed in proportion to the minutes of the repair, one line for each tax it has; what takes the fee off is part of it, so that a
 * repair fully done never comes to more than its price. A single line of 0 where nothing is owed.
 *
 * withdrawalLines([inspection 18.00], { …, minutesDone: 0, isInspected: true }) -> [inspection 18.00]
 */
export function withdrawalLines(
  lines: readonly QuoteLine[],
  o: Omit<WithdrawnAt, 'price'> & { isGross: boolean; isInspected: boolean },
): QuoteLine[] {
  const [first] = lines;
  if (!first) throw new RangeError('A price without lines cannot be withdrawn from');
  const isFeeOwed = o.isInspected && o.hasStartRequest && o.isInformed;
  const fees = isFeeOwed ? lines.filter(isInspectionFee) : [];
  const rest = lines.filter((line) =>
    fees.length > 0 ? !isInspectionFee(line) : line.kind !== 'inspection-fee',
  );
  const owed = [
    ...fees.map((line) => ({ ...withTax(line, o.isGross), description: INSPECTED })),
    ...linesOfShare(rest, o),
  ];
  if (owed.length > 0) return owed;
  const { category, rateBps } = first;
  return [
    {
      kind: 'labour',
      description: 'Withdrawn from the contract: nothing to pay',
      amount: 0,
      category,
      rateBps,
    },
  ];
}

const INSPECTED = 'Inspection, finished before the withdrawal';

/** The part of a price that was done, split over its taxes so that it comes to owedAfterWithdrawal exactly. */
function linesOfShare(
  lines: readonly QuoteLine[],
  o: Omit<WithdrawnAt, 'price'> & { isGross: boolean },
): QuoteLine[] {
  const { gross, breakdown } = revisionTotals(lines, o.isGross);
  // A fee taken off that is more than the repair leaves nothing of it to pay for.
  const owed = owedAfterWithdrawal({ ...o, price: Math.max(0, gross) });
  const { done, planned } = share(o);
  const description = `Work done until the withdrawal, ${done} of ${planned} minutes`;
  let left = owed;
  return breakdown
    .map(({ category, rateBps, base, tax }, place) => {
      const isLast = place === breakdown.length - 1;
      const part = roundedShare(base + tax, owed, Math.max(1, gross));
      const amount = isLast ? left : Math.min(left, part);
      left -= amount;
      return { kind: 'labour' as const, description, amount, category, rateBps };
    })
    .filter(({ amount }) => amount !== 0);
}
