import { describe, expect, it } from 'vitest';
import { type Day, day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { benchLoad } from '@/lib/jobs/rules/bench-load';
import {
  beginWith,
  daysLate,
  firstOf,
  inOrder,
  minutesLeft,
  type TodayJob,
  todayLists,
  type Wait,
  waitOf,
} from '@/lib/jobs/rules/today';
import type { Role } from '@/lib/people/rules/roles';
import type { Ruling } from '@/lib/warranty/rules/causes';

const WEEK: WorkingCalendar = { weekend: [6, 7], closed: new Map() };
/** A Tuesday. */
const TODAY = day('2026-12-08');
const CLOCK = { today: TODAY, answerDays: 2, calendar: WEEK };

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
  contestedOn: null as Day | null,
  reopenedOn: null as Day | null,
});

describe('who has to do something next', () => {
  it.each<[string, Partial<TodayJob>, Wait]>([
    ['a unit whose serial is not settled', { stage: 'arrived', isSerialSettled: false }, us('settle-serial')],
    ['a unit that has just arrived', { stage: 'arrived' }, us('start-assessing')],
    ['a repair that is assessed', { stage: 'assessing' }, us('find-and-decide')],
    ['a claim without a ruling', { stage: 'assessing', claim: claim('to-rule') }, us('rule-claim')],
    ['a claim that has just come', { stage: 'arrived', claim: claim('to-rule') }, us('rule-claim')],
    [
      'a claim of which it is open which unit came',
      { stage: 'arrived', isSerialSettled: false, claim: claim('to-rule') },
      us('settle-serial'),
    ],
    [
      'a claim that was ruled on before anybody assessed it',
      { stage: 'arrived', claim: claim('ruled', 'covered') },
      us('start-assessing'),
    ],
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
    ['a part that has come', { stage: 'awaiting-parts', isPartHere: true }, us('part-is-here')],
    ['a unit on the bench', { stage: 'on-bench' }, us('repair')],
    ['a repair to be proved', { stage: 'proving' }, us('prove')],
    ['a ready unit that is not paid', { stage: 'ready', owed: 1 }, customer('pay')],
    ['a ready unit that is paid', { stage: 'ready', owed: 0 }, us('send-back')],
    [
      'a unit that came back, until its customer says where it should go',
      { stage: 'ready', waitsForAddress: true },
      customer('confirm-address'),
    ],
    [
      'a unit that came back and is still to be paid for',
      { stage: 'ready', waitsForAddress: true, owed: 1 },
      customer('pay'),
    ],
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
  const ordered = (...jobs: TodayJob[]) => inOrder(jobs, CLOCK).map((each) => each.number);

  it('start with the oldest promise, and of two the one that is here longer', () => {
    expect(
      ordered(
        job({ number: 'tenth', promisedOn: day('2026-12-10') }),
        job({ number: 'second', promisedOn: day('2026-12-02') }),
        job({ number: 'second-older', promisedOn: day('2026-12-02'), arrivedOn: day('2026-11-20') }),
      ),
    ).toEqual(['second-older', 'second', 'tenth']);
  });

  it('put a job without a promise where an answer to it would be due, and call it late never', () => {
    // Come on Friday the 4th: two working days later is Tuesday the 8th.
    const none = job({ number: 'none', promisedOn: null, arrivedOn: day('2026-12-04') });
    const old = job({ number: 'none-old', promisedOn: null, arrivedOn: day('2026-11-02') });
    const before = job({ number: 'seventh', promisedOn: day('2026-12-07') });
    const after = job({ number: 'ninth', promisedOn: day('2026-12-09') });
    expect(ordered(none, after, old, before)).toEqual(['none-old', 'seventh', 'none', 'ninth']);
    const lists = todayLists([none, old], CLOCK);
    expect([lists.late, lists.onUs.map((row) => row.daysLate)]).toEqual([[], [0, 0]]);
  });

  it('put a claim where its ruling is due, though it is promised ready later', () => {
    const came = { stage: 'arrived', arrivedOn: day('2026-12-07'), promisedOn: day('2026-12-18') } as const;
    const claimJob = job({ ...came, number: 'claim', claim: claim('to-rule') });
    const ruled = job({ ...came, number: 'ruled', claim: claim('ruled', 'covered') });
    expect(ordered(ruled, job({}), claimJob)).toEqual(['claim', 'J4K7QX290', 'ruled']);
    const [row] = todayLists([claimJob], CLOCK).claims;
    expect(row).toMatchObject({ answer: { on: '2026-12-09', daysOver: 0 }, daysLate: 0 });
  });

  it.each<[string, Partial<TodayJob>, number]>([
    ['from its arrival', { claim: claim('to-rule') }, 3],
    ['while it waits for a second look', { claim: claim('second-look') }, 3],
    ['from its contest', { claim: { ...claim('contested'), contestedOn: day('2026-12-03') } }, 1],
    ['also where its customer withdrew', { stage: 'declined', claim: claim('to-rule') }, 3],
    ['not once it was told', { claim: claim('ruled', 'covered') }, 0],
  ])('a ruling is late %s', (_name, some, late) => {
    const row = { stage: 'assessing', promisedOn: day('2026-12-18'), ...some } as const;
    const { late: behind, claims, onUs } = todayLists([job(row)], CLOCK);
    expect([...behind, ...claims, ...onUs].map((each) => each.daysLate)).toEqual([late]);
  });

  it('show a claim whose serial nobody settled as late when its ruling is', () => {
    const { late } = todayLists(
      [job({ stage: 'arrived', isSerialSettled: false, claim: claim('to-rule') })],
      CLOCK,
    );
    expect(late).toMatchObject([{ wait: us('settle-serial'), promiseLate: 0, daysLate: 3 }]);
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
    const lists = todayLists(jobs, CLOCK);
    const numbers = (rows: { job: TodayJob }[]) => rows.map((row) => row.job.number);
    expect(numbers(lists.late)).toEqual(['late']);
    expect(numbers(lists.onUs)).toEqual(['in time']);
    expect(numbers(lists.onCustomer)).toEqual(['unpaid']);
    expect(numbers(lists.claims)).toEqual(['late claim']);
    expect(lists.claims[0]).toMatchObject({ promiseLate: 5, daysLate: 5 });
  });
});

describe('what to begin with', () => {
  const first = (...jobs: TodayJob[]) => firstOf(todayLists(jobs, CLOCK), 'owner')?.job.number ?? null;
  const late = job({ number: 'late', promisedOn: day('2026-12-04') });
  const claimJob = job({
    number: 'claim',
    stage: 'assessing',
    arrivedOn: day('2026-12-07'),
    claim: claim('to-rule'),
  });

  it('is what is furthest behind, be it a claim or not', () => {
    expect(first(late, claimJob)).toBe('late');
    expect(first(late, { ...claimJob, promisedOn: day('2026-12-01') })).toBe('claim');
    expect(first(late, { ...claimJob, promisedOn: late.promisedOn })).toBe('late');
    expect(first(late, { ...claimJob, arrivedOn: day('2026-12-01') })).toBe('claim');
  });

  it('is a claim before other work that is in time, and nothing where nothing waits on us', () => {
    expect(first(job({ number: 'in time' }), claimJob)).toBe('claim');
    expect(first(job({ number: 'in time' }))).toBe('in time');
    expect(first(job({ stage: 'ready', owed: 100 }))).toBeNull();
  });

  it('is what the role may do, and nothing where all that waits is for others', () => {
    const firstFor = (role: Role, ...jobs: TodayJob[]) =>
      firstOf(todayLists(jobs, CLOCK), role)?.job.number ?? null;
    const packed = job({ number: 'packed', stage: 'ready', owed: 0 });
    expect(firstFor('front', late, claimJob, packed)).toBe('packed');
    expect(firstFor('bench', late, claimJob, packed)).toBe('late');
    expect(firstFor('front', late, claimJob)).toBeNull();
    const looked = { ...claimJob, number: 'second', claim: claim('second-look') };
    expect(firstFor('bench', looked)).toBeNull();
    expect(firstFor('owner', looked)).toBe('second');
  });
});

describe('what kind of thing to begin with', () => {
  it.each([
    ['a job where nothing is behind', { job: 0, quote: 0, message: 0 }, 'job'],
    ['what is furthest behind', { job: 1, quote: 2, message: 4 }, 'message'],
    ['a price before a message that is as far behind', { job: 0, quote: 2, message: 2 }, 'quote'],
    ['a message where there is nothing else', { job: null, quote: null, message: 0 }, 'message'],
    ['nothing where there is nothing', { job: null, quote: null, message: null }, null],
  ] as const)('is %s', (_name, behind, expected) => {
    expect(beginWith(behind)).toBe(expected);
  });
});

describe('bench load', () => {
  const settings = { today: TODAY, days: 3, capacityMinutesDay: 360, calendar: WEEK };
  const sums = (load: ReturnType<typeof benchLoad>) => load.days.map(({ day: on, minutes }) => [on, minutes]);

  it('puts work on the day it is promised for; late work on the first, unpromised on none', () => {
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
      ['2026-12-08', 30],
      ['2026-12-09', 100],
      ['2026-12-10', 20],
    ]);
    expect([load.laterMinutes, load.unpromisedMinutes]).toEqual([500, 10]);
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

  it('is not short of hours for what nobody was promised', () => {
    const promised = { promisedOn: day('2026-12-08'), minutes: 200 };
    expect(benchLoad([promised, { promisedOn: null, minutes: 300 }], settings).short).toBeNull();
  });

  it('is not short where a full day has room before it', () => {
    const load = benchLoad([{ promisedOn: day('2026-12-09'), minutes: 720 }], settings);
    expect(load.short).toBeNull();
  });

  it('refuses a bench without capacity', () => {
    expect(() => benchLoad([], { ...settings, capacityMinutesDay: 0 })).toThrow('Not a capacity');
  });
});
