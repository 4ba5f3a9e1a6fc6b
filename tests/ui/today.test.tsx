import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { SettleForms } from '@/app/workshop/(inside)/settle-forms';
import { MoneyToday } from '@/app/workshop/(inside)/today-money';
import { TodaySection } from '@/app/workshop/(inside)/today-rows';
import { day } from '@/lib/calendar/day';
import { type TodayJob, todayLists } from '@/lib/jobs/rules/today';
import type { TodayListed } from '@/lib/jobs/today';
import type { Role } from '@/lib/people/rules/roles';
import { blankWorkshop } from '@/lib/workshop/card';

/** A Tuesday. */
const today = day('2026-12-08');
const clock = { today, answerDays: 2, calendar: { weekend: [6, 7], closed: new Map<string, string>() } };
const claim: NonNullable<TodayJob['claim']> = {
  number: 'C4K7QX29D',
  standing: 'to-rule',
  ruling: null,
  contestedOn: null,
  reopenedOn: null,
};

const words = (html: string) =>
  html
    .replace(/<svg.*?<\/svg>/gs, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

/** Every row of Today that one job makes, in words. */
function rowOf(some: Partial<TodayListed>, role: Role = 'owner'): string {
  const job: TodayListed = {
    number: 'J4K7QX290',
    kind: 'repair',
    stage: 'assessing',
    promisedOn: null,
    arrivedOn: day('2026-12-01'),
    minutesPlanned: 60,
    minutesWorked: 0,
    isSerialSettled: true,
    owed: 0,
    offerUntil: null,
    claim: null,
    unit: 'Tideline HW-2',
    repair: 'USB-C socket replaced',
    customer: 'Maren Holt',
    readyOn: null,
    cameBackOn: null,
    sentBackOn: null,
    certificateEndsOn: null,
    isLateClaim: false,
    awaitedParts: [],
    ...some,
  };
  const lists = todayLists([job], clock);
  const rows = Object.values(lists).flat();
  const format = { workshop: blankWorkshop, today, role };
  return words(
    renderToStaticMarkup(<TodaySection id="x" title="Here" rows={rows} empty={null} format={format} />),
  );
}

describe('a row of Today', () => {
  test('says since when a unit without a promise is here, and calls it late never', () => {
    const row = rowOf({ arrivedOn: day('2026-11-02') });
    expect(row).toContain('here since 2 Nov 2026');
    expect(row).not.toContain('late');
  });

  test.each([
    ['until when its ruling is promised', { arrivedOn: day('2026-12-07') }, 'answer by 9 Dec 2026'],
    ['by how much the ruling is late', {}, 'answer 3 working days late'],
    ['by how much, by one day', { arrivedOn: day('2026-12-03') }, 'answer 1 working day late'],
  ])('of a claim that has come says %s, and leads to the claims desk', (_name, some, expected) => {
    const row = rowOf({ kind: 'claim', stage: 'arrived', promisedOn: day('2026-12-18'), claim, ...some });
    expect(row).toContain(expected);
    expect(row).toContain('Inspect and rule');
    expect(row).toContain('promised 18 Dec 2026');
  });

  test.each([
    ['bench', { stage: 'ready', owed: 9600 }, 'Record payment'],
    ['bench', { stage: 'assessing', claim: { ...claim, standing: 'second-look' } }, 'Second look'],
    ['front', { stage: 'on-bench' }, 'Record the work'],
    ['front', { stage: 'arrived', kind: 'claim', claim }, 'Inspect and rule'],
  ] as const)('tells the %s nobody else’s step', (role, some, step) => {
    expect(rowOf(some)).toContain(step);
    expect(rowOf(some, role)).not.toContain(step);
    expect(rowOf(some, role)).toContain('Look at it');
  });

  const socket = { partId: 'p', name: 'Socket', quantity: 1, here: 0, isOnOrder: true, isNeeded: true };
  test.each([
    [
      'for which and until when',
      { awaitedParts: [{ ...socket, expectedOn: day('2026-12-11') }] },
      ['waits for Socket: expected 11 Dec 2026', 'Is the part in?'],
    ],
    [
      'that it has not come in time',
      { awaitedParts: [{ ...socket, expectedOn: day('2026-12-01') }] },
      ['part not come in time', 'over', 'Is the part in?'],
    ],
    [
      'that it is here',
      { awaitedParts: [{ ...socket, here: 1, expectedOn: null }], isPartHere: true },
      ['the part is here', 'Back on the bench'],
    ],
    [
      'that it needs one of two no more, and the other is here',
      {
        awaitedParts: [
          { ...socket, here: 1, expectedOn: null },
          { ...socket, partId: 'k', name: 'Knob', quantity: 0, isNeeded: false, expectedOn: null },
        ],
        isPartHere: true,
      },
      ['the part is here', 'waits for Socket: in stock; Knob: not needed', 'Back on the bench'],
    ],
    [
      'that it needs none any more',
      {
        awaitedParts: [{ ...socket, quantity: 0, isNeeded: false, expectedOn: null }],
        isPartHere: true,
      },
      ['no part is needed any more', 'Back on the bench'],
    ],
  ])('of a job that waits for a part says %s', (_name, some, expected) => {
    const row = rowOf({ stage: 'awaiting-parts', ...some });
    for (const each of expected) expect(row).toContain(each);
  });

  test('says of both that they are late where both are', () => {
    const row = rowOf({ kind: 'claim', promisedOn: day('2026-12-07'), claim });
    expect(row).toContain('answer 3 working days late');
    expect(row).toMatch(/(?<!answer )1 working day late/);
  });

  test('of a unit that came back says when, and not the promise it was once given', () => {
    const cameBack = {
      stage: 'ready',
      promisedOn: day('2026-11-20'),
      cameBackOn: day('2026-12-04'),
    } as const;
    const asked = rowOf({ ...cameBack, waitsForAddress: true });
    expect(asked).toContain('came back 4 Dec 2026');
    expect(asked).toContain('asked where it should go');
    expect(asked).toContain('Write to them');
    const answered = rowOf(cameBack);
    expect(answered).toContain('Send back');
    expect(answered).not.toContain('asked where');
    expect(asked + answered).not.toContain('promised');
  });
});

describe('money to give back on Today', () => {
  const row = (jobNumber: string, dueOn: string, isAfterWithdrawal = false) => ({
    jobNumber,
    customer: 'Maren Holt',
    stage: 'declined',
    currency: 'GBP',
    amount: 7200,
    since: day('2026-12-01'),
    dueOn: day(dueOn),
    isAfterWithdrawal,
    isPostage: false,
  });
  const drawn = (...rows: ReturnType<typeof row>[]) =>
    words(renderToStaticMarkup(<MoneyToday rows={rows} today={today} locale="en-GB" />));

  test('says by which day, how late, and whether someone withdrew', () => {
    expect(drawn(row('J4K7QX290', '2026-12-15', true))).toMatch(
      /£72\.00.*by 15 Dec 2026.*since 1 Dec 2026.*after a withdrawal/,
    );
    expect(drawn(row('J4K7QX290', '2026-12-07'))).toContain('1 day late');
    expect(drawn(row('J4K7QX290', '2026-12-15'))).not.toMatch(/late|withdrawal/);
  });

  test('leads to the rest where there are many, and is nothing where there is none', () => {
    const many = Array.from({ length: 6 }, (_, i) => row(`J4K7QX29${i}`, '2026-12-15'));
    expect(drawn(...many)).toContain('All 6 under Money');
    expect(drawn()).toBe('');
  });
});

describe('the forms that settle a message', () => {
  const message = (id: string, author: string, settledAt: Date | null = null) => ({ id, author, settledAt });
  const drawn = (...messages: ReturnType<typeof message>[]) =>
    renderToStaticMarkup(<SettleForms messages={messages} action={async () => ({})} version={3} />);

  test('name the last message of the customer that waits', () => {
    const html = drawn(message('first', 'customer'), message('last', 'customer'), message('ours', 'staff'));
    expect(html.match(/name="message" value="last"/g)).toHaveLength(2);
    expect(words(html)).toContain('Needs no answer');
    expect(html).toMatch(/value="no-answer-needed"/);
  });

  test('are not there where nothing waits', () => {
    expect(drawn(message('first', 'customer', new Date(0)), message('ours', 'staff'))).toBe('');
  });
});
