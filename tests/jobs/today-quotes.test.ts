import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { db } from '@/lib/db/client';
import { quoteLists, type TodayQuote } from '@/lib/jobs/rules/today-quotes';
import { readToday } from '@/lib/jobs/today';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { REQUEST_STATES } from '@/lib/quotes/rules/request-states';
import { useDatabase } from '@/tests/database';
import { makeQuote, makeRequest } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const calendar: WorkingCalendar = { weekend: [6, 7], closed: new Map() };
/** A Tuesday. */
const TODAY = day('2026-12-08');
const at = { today: TODAY, answerDays: 2, remindDays: 5, calendar };

function quote(number: string, some: Partial<TodayQuote>): TodayQuote {
  return { number, state: 'asked', waitsSince: day('2026-12-07'), heldUntil: null, ...some };
}
const numbers = (rows: readonly { quote: TodayQuote }[]) => rows.map((row) => row.quote.number);

describe('quotes on today’s page', () => {
  it('wait on us from the oldest on, with the day an answer was promised for', () => {
    const { onUs } = quoteLists(
      [quote('Q1', {}), quote('Q2', { waitsSince: day('2026-12-03') }), quote('Q3', { waitsSince: TODAY })],
      at,
    );
    expect(onUs.map((row) => [row.quote.number, row.step, row.answer])).toEqual([
      ['Q2', 'answer-request', { on: '2026-12-07', daysOver: 1 }],
      ['Q1', 'answer-request', { on: '2026-12-09', daysOver: 0 }],
      ['Q3', 'answer-request', { on: '2026-12-10', daysOver: 0 }],
    ]);
  });

  it.each([
    ['on its last day', '2026-12-08', true],
    ['as many days before it as the reminder', '2026-12-13', true],
    ['a day sooner', '2026-12-14', false],
    ['after it, when the clock is about to let it lapse', '2026-12-07', false],
  ])('a price is listed %s: %s', (_, heldUntil, isListed) => {
    const { onCustomer } = quoteLists([quote('Q1', { state: 'quoted', heldUntil: day(heldUntil) })], at);
    expect(onCustomer.length === 1).toBe(isListed);
  });

  it('put the price that lapses next first, and what was accepted and not booked after those', () => {
    const { onCustomer, onUs } = quoteLists(
      [
        quote('Q1', { state: 'accepted', waitsSince: day('2026-12-01') }),
        quote('Q2', { state: 'quoted', heldUntil: day('2026-12-12') }),
        quote('Q3', { state: 'quoted', heldUntil: day('2026-12-09') }),
      ],
      at,
    );
    expect(numbers(onCustomer)).toEqual(['Q3', 'Q2', 'Q1']);
    expect(onUs).toEqual([]);
  });

  it('are in one list at most, and in none once they have ended or wait for an answer to a question', () => {
    const all = REQUEST_STATES.map((state) => quote(state, { state, heldUntil: day('2026-12-09') }));
    const { onUs, onCustomer } = quoteLists(all, at);
    expect(numbers([...onUs, ...onCustomer])).toEqual(['asked', 'quoted', 'accepted']);
  });

  it('are read from the records, a question that was answered from the day of the answer', async () => {
    const monday = new Date('2026-12-07T10:00:00Z');
    const before = new Date('2026-11-10T10:00:00Z');
    const world = await makeWorkshop(before);
    const ask = (name: string, now: Date) =>
      makeRequest({ now, answers: { name, email: `${name}@example.org`, serial: '' } });
    const fresh = await ask('ansel', new Date('2026-12-04T10:00:00Z'));
    const asked = await ask('berit', before);
    await askCustomer({ quoteId: asked.quoteId, version: 1, text: 'Since when?', actor: BENCH, now: before });
    await answerQuestion({ quoteId: asked.quoteId, text: 'Since May.', photos: [], now: monday });
    const priced = await ask('corin', before);
    await makeQuote({ quoteId: priced.quoteId, repairId: world.repairId, now: before });
    const { quotes } = await readToday(new Date('2026-12-08T10:00:00Z'));
    expect(quotes.onUs).toMatchObject([
      {
        quote: { number: fresh.number, customer: 'ansel', device: 'Tideline HW-2' },
        answer: { on: '2026-12-08' },
      },
      { quote: { number: asked.number }, answer: { on: '2026-12-09' } },
    ]);
    expect(quotes.onCustomer).toMatchObject([{ quote: { number: priced.number, gross: 9600 }, daysHeld: 2 }]);
    expect(await db.quoteRequest.count()).toBe(3);
  });
});
