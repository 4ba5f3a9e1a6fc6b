import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import {
  byWaiting,
  owedBackSince,
  owedSinceWithdrawal,
  refundDaysLate,
  refundDue,
} from '@/lib/invoices/rules/owed-back';

const at = (date: number) => new Date(Date.UTC(2026, 11, date, 10));
const event = (kind: string, date: number, data: object = {}, toStage: string | null = null) => ({
  kind,
  at: at(date),
  toStage,
  data,
});
const paid = (date: number, amount: number) => event('payment-recorded', date, { paymentId: 'p', amount });
const credited = (date: number) =>
  event('credit-note-issued', date, { number: 'N', invoice: 'I', payable: 100 });

describe('since when money is to be given back', () => {
  it.each([
    ['the payment that was too much', [paid(1, 7200), paid(2, 100)], at(2)],
    ['what lowered the sum after it was paid', [paid(1, 7200), credited(3)], at(3)],
    ['the same, though half of it was given back since', [paid(1, 7200), credited(3), paid(5, -3600)], at(3)],
    ['a withdrawal', [paid(1, 7200), event('withdrawn', 4, { owed: 0 })], at(4)],
    [
      'the end of a booking that was paid ahead',
      [paid(1, 7200), event('moved', 6, { move: 'cancel' }, 'cancelled')],
      at(6),
    ],
    ['nothing that could have made it', [paid(1, -100), event('link-renewed', 2)], null],
    ['nothing at all', [], null],
  ])('is %s', (_name, events, since) => {
    expect(owedBackSince(events)).toEqual(since);
  });
});

describe('what is owed since a withdrawal', () => {
  const before = [paid(1, 7200), event('withdrawn', 4, { owed: 0 })];
  it.each([
    ['is what is left of that sum', 100, [...before, paid(8, -7100)], at(4)],
    ['is that sum still, though more was paid in error', 7300, [...before, paid(6, 100)], at(4)],
    [
      'is nothing of what was paid in error once it was given back',
      100,
      [...before, paid(8, -7200), paid(20, 100)],
      null,
    ],
    ['nor of what was credited since', 100, [...before, paid(8, -7200), credited(20)], null],
    ['is nothing where nobody withdrew', 100, [paid(1, 7300)], null],
  ])('%s', (_name, amount, events, since) => {
    expect(owedSinceWithdrawal(events, amount)?.at ?? null).toEqual(since);
  });
});

describe('the last day to give it back', () => {
  it.each([
    ['is the fourteenth after the day it is owed since', '2026-12-01', '2026-12-15'],
    ['is not rolled over a Sunday', '2026-12-06', '2026-12-20'],
    ['nor over Christmas Day', '2026-12-11', '2026-12-25'],
    ['crosses the end of summer time by days, not by hours', '2026-10-20', '2026-11-03'],
  ])('%s', (_name, withdrawn, due) => {
    expect(refundDue(day(withdrawn))).toBe(due);
  });

  it.each([
    ['on that day it is not late', '2026-12-15', 0],
    ['before it neither', '2026-12-01', 0],
    ['the day after it is', '2026-12-16', 1],
    ['a weekend counts: the days are calendar days', '2026-12-21', 6],
  ])('%s', (_name, today, late) => {
    expect(refundDaysLate(day('2026-12-15'), day(today))).toBe(late);
  });
});

it('what is due next comes first, then what waits longest, then the greater amount, then by number', () => {
  const row = (jobNumber: string, since: string, dueOn: string, amount = 100) => ({
    jobNumber,
    amount,
    since: day(since),
    dueOn: day(dueOn),
  });
  const rows = [
    row('a small', '2026-12-05', '2026-12-19', 50),
    row('a withdrawn', '2026-12-06', '2026-12-15'),
    row('great too', '2026-12-05', '2026-12-19'),
    row('great', '2026-12-05', '2026-12-19'),
    row('old', '2026-12-01', '2026-12-15'),
    row('older', '2026-11-02', '2026-11-16'),
  ];
  const sorted = rows.toSorted(byWaiting).map(({ jobNumber }) => jobNumber);
  expect(sorted).toEqual(['older', 'old', 'a withdrawn', 'great', 'great too', 'a small']);
});
