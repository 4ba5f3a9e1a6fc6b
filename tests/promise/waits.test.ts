import { describe, expect, it } from 'vitest';
import { day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { onArrival } from '@/lib/promise/rules/on-arrival';
import { isDeclinedForGood, waitsOf } from '@/lib/promise/rules/waits';

const arrivedOn = day('2026-06-02');
const dayOf = (at: Date) => dayInZone(at, 'Europe/London');
const NONE = { termsAcceptedAt: null, withdrawUntil: null, startRequestedAt: null };

/** `['2026-06-03', 'assessing', 'ready']`: a move at eleven that morning. */
type Moved = readonly [on: string, from: string, to: string];
const told = (moves: readonly Moved[]) =>
  moves.map(([on, fromStage, toStage]) => ({ at: new Date(`${on}T10:00:00Z`), fromStage, toStage }));

describe('the days that do not count against the bench', () => {
  it.each<[string, Moved[], (readonly [string, string | null])[]]>([
    ['no move, no wait', [], []],
    [
      'from a question to its answer',
      [
        ['2026-06-03', 'assessing', 'awaiting-approval'],
        ['2026-06-05', 'awaiting-approval', 'on-bench'],
      ],
      [['2026-06-03', '2026-06-05']],
    ],
    [
      'a question that is open waits on',
      [['2026-06-03', 'assessing', 'awaiting-approval']],
      [['2026-06-03', null]],
    ],
    [
      'a no that became a yes',
      [
        ['2026-06-03', 'assessing', 'awaiting-approval'],
        ['2026-06-04', 'awaiting-approval', 'declined'],
        ['2026-06-08', 'declined', 'on-bench'],
      ],
      [
        ['2026-06-03', '2026-06-04'],
        ['2026-06-04', '2026-06-08'],
      ],
    ],
    [
      'ready, and taken up again for a fault',
      [
        ['2026-06-03', 'proving', 'ready'],
        ['2026-06-09', 'ready', 'on-bench'],
      ],
      [['2026-06-03', '2026-06-09']],
    ],
    [
      'ready, set aside and taken up again: from the first day it was ready',
      [
        ['2026-06-03', 'proving', 'ready'],
        ['2026-06-09', 'ready', 'unclaimed'],
        ['2026-06-15', 'unclaimed', 'ready'],
        ['2026-06-16', 'ready', 'assessing'],
      ],
      [['2026-06-03', '2026-06-16']],
    ],
    [
      'sent back, come back and opened again: from the day it came back',
      [
        ['2026-06-03', 'proving', 'ready'],
        ['2026-06-04', 'ready', 'sent-back'],
        ['2026-06-11', 'sent-back', 'ready'],
        ['2026-06-12', 'ready', 'on-bench'],
      ],
      [['2026-06-11', '2026-06-12']],
    ],
    ['ready and still here is no wait', [['2026-06-03', 'proving', 'ready']], []],
  ])('%s', (_name, moves, expected) => {
    expect(waitsOf({ contract: NONE, events: told(moves), arrivedOn }, dayOf)).toEqual(
      expected.map(([from, to]) => ({ from, to })),
    );
  });

  it.each<[string, string, string | null, [string, string] | null]>([
    ['agreed to before it came: from its arrival', '2026-05-30', null, ['2026-06-02', '2026-06-13']],
    ['agreed to here: from that day', '2026-06-04', null, ['2026-06-04', '2026-06-13']],
    ['to the day an early start was asked for', '2026-05-30', '2026-06-05', ['2026-06-02', '2026-06-05']],
    [
      'to the last day to withdraw, whatever was asked later',
      '2026-05-30',
      '2026-06-20',
      ['2026-06-02', '2026-06-13'],
    ],
    ['not at all where it was asked for at once', '2026-05-30', '2026-05-30', null],
  ])('work that may not begin yet: %s', (_name, agreedOn, askedOn, expected) => {
    const at = (on: string) => new Date(`${on}T09:00:00Z`);
    const contract = {
      termsAcceptedAt: at(agreedOn),
      withdrawUntil: dayToDate(day('2026-06-13')),
      startRequestedAt: askedOn ? at(askedOn) : null,
    };
    expect(waitsOf({ contract, events: [], arrivedOn }, dayOf)).toEqual(
      expected ? [{ from: expected[0], to: expected[1] }] : [],
    );
  });
});

it.each<[boolean, Moved[]]>([
  [false, []],
  [true, [['2026-06-04', 'awaiting-approval', 'declined']]],
  [
    false,
    [
      ['2026-06-04', 'awaiting-approval', 'declined'],
      ['2026-06-08', 'declined', 'on-bench'],
    ],
  ],
  [
    true,
    [
      ['2026-06-04', 'awaiting-approval', 'declined'],
      ['2026-06-08', 'declined', 'ready'],
    ],
  ],
])('declined for good is %s', (expected, moves) => {
  expect(isDeclinedForGood(told(moves))).toBe(expected);
});

describe('what the promise of an arriving job rests on beside its repair', () => {
  const last = dayToDate(day('2026-06-13'));
  const quoted = (state: string, workingDays: number | null) => [{ revisions: [{ state, workingDays }] }];
  it.each([
    ['nothing', {}, { waitsUntil: null, quotedDays: null }],
    ['the days in which it may be withdrawn from', { withdrawUntil: last }, { waitsUntil: '2026-06-13' }],
    [
      'none of those where its customer asked for an earlier start',
      { withdrawUntil: last, startRequestedAt: new Date('2026-06-01T10:00:00Z') },
      { waitsUntil: null },
    ],
    ['the days of the price that was agreed to', { quotes: quoted('accepted', 4) }, { quotedDays: 4 }],
    ['no days of a price that was not', { quotes: quoted('sent', 4) }, { quotedDays: null }],
    ['no days where that price names none', { quotes: quoted('accepted', null) }, { quotedDays: null }],
  ])('%s', (_name, over, expected) => {
    const job = { withdrawUntil: null, startRequestedAt: null, quotes: [], ...over };
    expect(onArrival(job)).toMatchObject(expected);
  });
});
