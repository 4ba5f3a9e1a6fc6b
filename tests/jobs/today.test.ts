import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { benchLoad } from '@/lib/jobs/rules/bench-load';
import {
  daysLate,
  firstOf,
  inOrder,
  minutesLeft,
  type TodayJob,
  todayLists,
  type Wait,
  waitOf,
} from '@/lib/jobs/rules/today';
import type { Ruling } from '@/lib/warranty/rules/causes';

const WEEK: WorkingCalendar = { weekend: [6, 7], closed: new Map() };
/** A Tuesday. */
const TODAY = day('2026-12-08');

function job(some: Partial<TodayJob>): TodayJob {
  return {
    number: 'J4K7QX290',
    kind: 'repair',
    stage: 'on-bench',
    promisedOn: day('2026-12-10'),
    arrivedOn: day('2026-12-01'),
    minutesPlanned: 60,
    minutesWorked: 0,
    isSerialSettled: true,
    owed: 0,
    offerUntil: null,
    claim: null,
    ...some,
  };
}

const us = (step: Extract<Wait, { who: 'us' }>['step']): Wait => ({ who: 'us', step });
const customer = (step: Extract<Wait, { who: 'customer' }>['step']): Wait => ({ who: 'customer', step });
const claim = (standing: NonNullable<TodayJob['claim']>['standing'], ruling: Ruling | null = null) => ({
  number: 'C1',
  standing,
  ruling,
});

describe('who has to do something next', () => {
  it.each<[string, Partial<TodayJob>, Wait]>([
    ['a unit whose serial is not settled', { stage: 'arrived', isSerialSettled: false }, us('settle-serial')],
    ['a unit that has just arrived', { stage: 'arrived' }, us('start-assessing')],
    ['a repair that is assessed', { stage: 'assessing' }, us('find-and-decide')],
    ['a claim without a ruling', { stage: 'assessing', claim: claim('to-rule') }, us('rule-claim')],
    ['a ruling that was contested', { stage: 'assessing', claim: claim('contested') }, us('rule-claim')],
    [
      'a ruling nobody has looked at again',
      { stage: 'assessing', claim: claim('second-look') },
      us('second-look'),
    ],
    ['a covered claim', { stage: 'assessing', claim: claim('ruled', 'covered') }, us('put-on-bench')],
    ['a partly covered claim', { stage: 'assessing', claim: claim('ruled', 'partly') }, us('put-on-bench')],
    [
      'a claim that is not covered',
      { stage: 'assessing', claim: claim('ruled', 'not-covered') },
      us('return-or-offer'),
    ],
    [
      'a price that was asked for',
      { stage: 'awaiting-approval', offerUntil: day('2026-12-08') },
      customer('answer-price'),
    ],
    [
      'a price nobody answered in time',
      { stage: 'awaiting-approval', offerUntil: day('2026-12-07') },
      us('offer-ran-out'),
    ],
    ['a missing part', { stage: 'awaiting-parts' }, us('chase-part')],
    ['a unit on the bench', { stage: 'on-bench' }, us('repair')],
    ['a repair to be proved', { stage: 'proving' }, us('prove')],
    ['a ready unit that is not paid', { stage: 'ready', owed: 1 }, customer('pay')],
    ['a ready unit that is paid', { stage: 'ready', owed: 0 }, us('send-back')],
    ['a ready unit that was paid too much for', { stage: 'ready', owed: -100 }, us('send-back')],
    ['a unit on its way back', { stage: 'sent-back' }, { who: 'nobody' }],
    ['a parcel asked about', { stage: 'sent-back', isWrittenAbout: true }, us('hear-of-parcel')],
    ['a declined price', { stage: 'declined' }, us('pack-return')],
    [
      'a contested claim whose customer withdrew',
      { stage: 'declined', claim: claim('contested') },
      us('rule-claim'),
    ],
    [
      'the same, to be looked at again',
      { stage: 'declined', claim: claim('second-look') },
      us('second-look'),
    ],
    [
      'the same once it is ruled',
      { stage: 'declined', claim: claim('ruled', 'not-covered') },
      us('pack-return'),
    ],
    ['a unit nobody fetches', { stage: 'unclaimed' }, customer('fetch-or-write')],
    ['a booking', { stage: 'booked' }, { who: 'nobody' }],
    ['a unit sent back', { stage: 'sent-back' }, { who: 'nobody' }],
  ])('%s', (_name, some, expected) => {
    expect(waitOf(job(some), TODAY)).toEqual(expected);
  });
});

describe('late against the promise', () => {
  it.each<[string, Partial<TodayJob>, number]>([
    ['today is not late yet', { promisedOn: TODAY }, 0],
    ['a weekend between does not count', { promisedOn: day('2026-12-04') }, 2],
    [
      'a unit that was ready in time and is not paid is not late',
      { stage: 'ready', promisedOn: day('2026-12-01') },
      0,
    ],
    [
      'days that wait on the customer are not ours',
      { stage: 'awaiting-approval', promisedOn: day('2026-12-01') },
      0,
    ],
    ['without a promise nothing is late', { promisedOn: null }, 0],
  ])('%s', (_name, some, expected) => {
    expect(daysLate(job(some), TODAY, WEEK)).toBe(expected);
  });

  it('skips a holiday', () => {
    const closed: WorkingCalendar = { ...WEEK, closed: new Map([['2026-12-07', 'Harbour day']]) };
    expect(daysLate(job({ promisedOn: day('2026-12-04') }), TODAY, closed)).toBe(1);
  });
});

describe('minutes of bench work', () => {
  it.each<[string, Partial<TodayJob>, number]>([
    ['are those planned less those worked', { minutesPlanned: 60, minutesWorked: 25 }, 35],
    ['never fall below nothing', { minutesPlanned: 60, minutesWorked: 95 }, 0],
    ['are none while the customer thinks', { stage: 'awaiting-approval' }, 0],
    ['are none once it is ready', { stage: 'ready' }, 0],
  ])('%s', (_name, some, expected) => {
    expect(minutesLeft(job(some))).toBe(expected);
  });
});

describe('the lists of today', () => {
  it('start with the oldest promise; without one comes last, the longest stay first', () => {
    const jobs = [
      job({ number: 'none-new', promisedOn: null, arrivedOn: day('2026-12-04') }),
      job({ number: 'tenth', promisedOn: day('2026-12-10') }),
      job({ number: 'none-old', promisedOn: null, arrivedOn: day('2026-11-02') }),
      job({ number: 'second', promisedOn: day('2026-12-02') }),
      job({ number: 'second-older', promisedOn: day('2026-12-02'), arrivedOn: day('2026-11-20') }),
    ];
    expect(inOrder(jobs).map((each) => each.number)).toEqual([
      'second-older',
      'second',
      'tenth',
      'none-old',
      'none-new',
    ]);
  });

  it('hold each job once', () => {
    const jobs = [
      job({ number: 'late', promisedOn: day('2026-12-01') }),
      job({ number: 'in time' }),
      job({ number: 'unpaid', stage: 'ready', owed: 9600 }),
      job({
        number: 'late claim',
        kind: 'claim',
        stage: 'assessing',
        promisedOn: day('2026-12-01'),
        claim: claim('to-rule'),
      }),
      job({ number: 'booked', stage: 'booked' }),
    ];
    const lists = todayLists(jobs, { today: TODAY, calendar: WEEK });
    const numbers = (rows: { job: TodayJob }[]) => rows.map((row) => row.job.number);
    expect(numbers(lists.late)).toEqual(['late']);
    expect(numbers(lists.onUs)).toEqual(['in time']);
    expect(numbers(lists.onCustomer)).toEqual(['unpaid']);
    expect(numbers(lists.claims)).toEqual(['late claim']);
    expect(lists.claims[0]?.daysLate).toBe(5);
  });
});

describe('what to begin with', () => {
  const first = (...jobs: TodayJob[]) =>
    firstOf(todayLists(jobs, { today: TODAY, calendar: WEEK }))?.job.number ?? null;
  const late = job({ number: 'late', promisedOn: day('2026-12-04') });
  const claimJob = job({ number: 'claim', stage: 'assessing', claim: claim('to-rule') });

  it('is what is furthest behind, be it a claim or not', () => {
    expect(first(late, claimJob)).toBe('late');
    expect(first(late, { ...claimJob, promisedOn: day('2026-12-01') })).toBe('claim');
    expect(first(late, { ...claimJob, promisedOn: late.promisedOn })).toBe('late');
  });

  it('is a claim before other work that is in time, and nothing where nothing waits on us', () => {
    expect(first(job({ number: 'in time' }), claimJob)).toBe('claim');
    expect(first(job({ number: 'in time' }))).toBe('in time');
    expect(first(job({ stage: 'ready', owed: 100 }))).toBeNull();
  });
});

describe('bench load', () => {
  const settings = { today: TODAY, days: 3, capacityMinutesDay: 360, calendar: WEEK };
  const sums = (load: ReturnType<typeof benchLoad>) => load.days.map(({ day: on, minutes }) => [on, minutes]);

  it('puts work on the day it is promised for; late and unpromised work on the first', () => {
    const load = benchLoad(
      [
        { promisedOn: day('2026-12-01'), minutes: 30 },
        { promisedOn: null, minutes: 10 },
        { promisedOn: day('2026-12-09'), minutes: 100 },
        { promisedOn: day('2026-12-10'), minutes: 20 },
        { promisedOn: day('2026-12-11'), minutes: 500 },
      ],
      settings,
    );
    expect(sums(load)).toEqual([
      ['2026-12-08', 40],
      ['2026-12-09', 100],
      ['2026-12-10', 20],
    ]);
    expect(load.laterMinutes).toBe(500);
    expect(load.short).toBeNull();
  });

  it('starts on the next working day and leaves weekends out', () => {
    const load = benchLoad([{ promisedOn: day('2026-12-13'), minutes: 15 }], {
      ...settings,
      today: day('2026-12-12'),
    });
    expect(sums(load)).toEqual([
      ['2026-12-14', 15],
      ['2026-12-15', 0],
      ['2026-12-16', 0],
    ]);
  });

  it('is short on the first day by which more is promised than the bench has', () => {
    const load = benchLoad(
      [
        { promisedOn: day('2026-12-08'), minutes: 200 },
        { promisedOn: day('2026-12-09'), minutes: 600 },
      ],
      settings,
    );
    expect(load.short).toEqual({ day: '2026-12-09', minutes: 80 });
  });

  it('is not short where a full day has room before it', () => {
    const load = benchLoad([{ promisedOn: day('2026-12-09'), minutes: 720 }], settings);
    expect(load.short).toBeNull();
  });

  it('refuses a bench without capacity', () => {
    expect(() => benchLoad([], { ...settings, capacityMinutesDay: 0 })).toThrow('Not a capacity');
  });
});
