import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { stagesReached } from '@/lib/jobs/records';
import { hasLeft, isBackWithUs, isNotGone, wasAway } from '@/lib/jobs/rules/handover';
import { datedStamps } from '@/lib/jobs/rules/run-of-stamps';
import { firstSettled } from '@/lib/jobs/rules/settled-serial';
import { mayUndoDispatch, withoutUndone } from '@/lib/jobs/rules/undone';

const at = (hour: number) => new Date(Date.UTC(2026, 10, 25, hour));
const event = (kind: string, toStage: string | null, hour: number, certificate: string | null = null) => ({
  kind,
  toStage,
  at: at(hour),
  data: { carrier: '', reference: '', certificate },
});

const BOOKED = event('booked', 'booked', 1);
const ARRIVED = event('unit-arrived', 'arrived', 2);
const WRITTEN = event('message-sent', null, 3);
const NOT_HERE = event('arrival-undone', 'booked', 4);
const READY = event('moved', 'ready', 5);
const GONE = event('sent-back', 'sent-back', 6);
const ISSUED = event('sent-back', 'sent-back', 6, 'W00000001');
const CLOSED = event('moved', 'closed', 7);
const BACK = event('came-back', 'ready', 8);
const AGAIN = event('sent-back', 'sent-back', 9);
const NOT_GONE = event('dispatch-undone', 'ready', 10);

describe('a history without what was entered by mistake', () => {
  it.each([
    [
      'an arrival goes, and what was written meanwhile stays',
      [BOOKED, ARRIVED, WRITTEN, NOT_HERE],
      [BOOKED, WRITTEN],
    ],
    ['the right one after it stays', [BOOKED, ARRIVED, NOT_HERE, ARRIVED], [BOOKED, ARRIVED]],
    [
      'a dispatch goes with the closing that followed',
      [READY, GONE, CLOSED, WRITTEN, NOT_GONE],
      [READY, WRITTEN],
    ],
    ['of two the last alone', [READY, GONE, BACK, AGAIN, NOT_GONE], [READY, GONE, BACK]],
    ['nothing where nothing was taken back', [BOOKED, ARRIVED, READY, GONE], [BOOKED, ARRIVED, READY, GONE]],
  ])('%s', (_, events, stands) => {
    expect(withoutUndone(events)).toEqual(stands);
  });

  it('shows no stamp of it, neither now nor on a booking that is cancelled after it', () => {
    const reached = stagesReached([BOOKED, ARRIVED, NOT_HERE]);
    expect(reached).toEqual([{ stage: 'booked', at: at(1) }]);
    const cancelled = [...reached, { stage: 'cancelled' as const, at: at(11) }];
    expect(datedStamps('cancelled', cancelled, 'UTC').map(({ stage, state }) => [stage, state])).toEqual([
      ['booked', 'done'],
      ['cancelled', 'stopped'],
    ]);
    expect(stagesReached([READY, GONE, CLOSED, NOT_GONE])).toEqual([{ stage: 'ready', at: at(5) }]);
  });

  it('tells a unit that never went from one that came back, and keeps that a certificate was issued', () => {
    const said = (events: (typeof GONE)[]) =>
      [hasLeft, wasAway, isNotGone, isBackWithUs].map((ask) => ask(events));
    expect(said([READY, GONE])).toEqual([true, true, false, false]);
    expect(said([READY, ISSUED, NOT_GONE])).toEqual([true, false, true, false]);
    expect(said([READY, GONE, NOT_GONE])).toEqual([false, false, true, false]);
    expect(said([READY, GONE, BACK])).toEqual([true, true, false, true]);
    expect(said([READY, GONE, BACK, AGAIN, NOT_GONE])).toEqual([true, true, true, true]);
    expect(said([READY, GONE, NOT_GONE, AGAIN])).toEqual([true, true, false, false]);
  });
});

it('a serial is settled by whoever did so first of the unit that is here', () => {
  const settled = (hour: number) => event('serial-settled', null, hour);
  expect(firstSettled([BOOKED, ARRIVED])).toBeUndefined();
  expect(firstSettled([BOOKED, ARRIVED, settled(3), settled(4)])).toEqual(settled(3));
  expect(
    firstSettled([BOOKED, ARRIVED, settled(3), NOT_HERE, event('unit-arrived', 'arrived', 5)]),
  ).toBeUndefined();
  expect(firstSettled([BOOKED, ARRIVED, settled(3), NOT_HERE, ARRIVED, settled(6)])).toEqual(settled(6));
});

// Common practice, no source.
describe('that a unit left may be taken back', () => {
  const facts = {
    sentBackOn: day('2026-12-01'),
    today: day('2026-12-01'),
    isClaimedSince: false,
    isErased: false,
  };
  it.each([
    ['on the same day', {}, null],
    ['fourteen days on', { today: day('2026-12-15') }, null],
    ['not on the fifteenth', { today: day('2026-12-16') }, 'too-long-ago'],
    ['not once its customer claims from its certificate', { isClaimedSince: true }, 'claimed-since'],
    ['not where nobody can be told', { isErased: true }, 'erased'],
    ['not of a unit that is here', { sentBackOn: null }, 'not-gone'],
  ] as const)('%s', (_, o, reason) => {
    expect(mayUndoDispatch({ ...facts, ...o })).toEqual(
      reason === null ? { allowed: true } : { allowed: false, reason },
    );
  });
});
