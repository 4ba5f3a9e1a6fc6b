import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import {
  isClosedByTime,
  isCollected,
  isHandoverNamed,
  isWalkIn,
  waitsForAddress,
} from '@/lib/jobs/rules/handover';
import { returnDay, startDay } from '@/lib/warranty/rules/start-day';
import { ENGLAND } from '@/tests/warranty/made';

const at = (hour: number) => new Date(Date.UTC(2026, 11, 1, hour));
const gone = (isCollectedHere = false) => ({
  kind: 'sent-back',
  data: { carrier: '', reference: '', certificate: null, isCollected: isCollectedHere },
});
const BACK = {
  kind: 'came-back',
  data: { carrier: 'Harbour Post', reference: 'S1', reason: 'Nobody in' },
};
const NOT_GONE = { kind: 'dispatch-undone', data: { carrier: '', reference: '', reason: 'On the shelf' } };
const wrote = (author: string) => ({ kind: 'message-sent', data: { messageId: 'm', author } });
const moved = (move: string) => ({ kind: 'moved', data: { move } });
const decided = (decision: string) => ({
  kind: 'unclaimed-decided',
  data: { decision, note: '', until: null },
});

describe('how a unit leaves', () => {
  it.each([
    [{ by: 'collected' }, true],
    [{ by: 'carrier', carrier: 'Harbour Post', carrierReference: 'S1' }, true],
    [{ by: 'carrier', carrier: 'Harbour Post', carrierReference: '' }, false],
    [{ by: 'carrier', carrier: '', carrierReference: 'S1' }, false],
  ] as const)('%j is all that has to be said: %s', (handover, isNamed) => {
    expect(isHandoverNamed(handover)).toBe(isNamed);
  });

  it('was collected where the last time it left it was', () => {
    expect(isCollected([])).toBe(false);
    expect(isCollected([gone(true)])).toBe(true);
    expect(isCollected([gone(), BACK, gone(true)])).toBe(true);
    expect(isCollected([gone(true), BACK, gone()])).toBe(false);
  });

  it('counts as delivered by time where the clock closed it last', () => {
    const closed = (actorKind: string) => ({ toStage: 'closed', actorKind });
    expect(isClosedByTime([closed('clock'), { toStage: null, actorKind: 'customer' }])).toBe(true);
    expect(isClosedByTime([closed('staff')])).toBe(false);
    expect(isClosedByTime([closed('clock'), { toStage: 'ready', actorKind: 'clock' }])).toBe(false);
    expect(isClosedByTime([])).toBe(false);
  });
});

// Common practice, no source.
describe('a unit that came back waits for an address', () => {
  it.each([
    ['until somebody answers', [gone(), BACK], true],
    ['whatever we wrote', [gone(), BACK, wrote('staff')], true],
    ['until its customer wrote', [gone(), BACK, wrote('customer')], false],
    ['but what they wrote before is no answer', [gone(), wrote('customer'), BACK], true],
    ['until their contact was put right', [gone(), BACK, { kind: 'contact-corrected', data: {} }], false],
    ['until it was taken up again', [gone(), BACK, moved('take-up-again')], false],
    ['though it was set aside', [gone(), BACK, moved('set-aside')], true],
    ['until the owner sends it all the same', [gone(), BACK, decided('send-back-unpaid')], false],
    ['though the owner keeps it longer', [gone(), BACK, decided('keep-longer')], true],
    ['and not once it left again', [gone(), BACK, gone()], false],
    ['but still where that was a mistake', [gone(), BACK, gone(), NOT_GONE], true],
    ['and not where it never left', [], false],
    ['nor where that it left was a mistake', [gone(), NOT_GONE], false],
  ])('%s', (_name, events, waits) => {
    expect(waitsForAddress(events)).toBe(waits);
  });
});

describe('a unit that staff opened a job for', () => {
  const booked = (actorKind: string, isOpenedHere?: boolean) => ({
    kind: 'booked',
    at: at(9),
    actorKind,
    data: { accessories: [], quoteNumber: 'Q', ...(isOpenedHere && { isWalkIn: true }) },
  });
  const arrived = (hour: number) => ({
    kind: 'unit-arrived',
    at: at(hour),
    actorKind: 'staff',
    data: { serial: '', comparison: 'same', differences: [], photos: 0 },
  });
  it.each([
    ['came without a booking', [booked('staff', true), arrived(10)], true],
    ['was taken in with a claim at the desk, at once', [booked('staff'), arrived(9)], true],
    ['is sent in on a claim that was told by telephone', [booked('staff'), arrived(10)], false],
    ['has not come yet', [booked('staff')], false],
    ['was booked by its customer', [booked('customer'), arrived(9)], false],
    ['has no history', [], false],
  ])('%s', (_name, events, isOpened) => {
    expect(isWalkIn(events)).toBe(isOpened);
  });
});

// Thursday 3 December 2026 and five working days in England; over Christmas the 25th and 28th are holidays.
describe('the day that cover counts from', () => {
  const on = day('2026-12-03');
  it.each([
    ['handed-to-carrier', 5, '2026-12-03'],
    ['collected', 5, '2026-12-03'],
    ['delivered', 5, '2026-12-10'],
    ['delivered', 0, '2026-12-03'],
  ] as const)('%s, %i days on the way: %s', (event, transitDays, starts) => {
    expect(startDay(event, on, ENGLAND, transitDays)).toBe(starts);
  });

  it('is that of the delivery for what a claim gives back, whatever starts first cover', () => {
    expect(returnDay(on, ENGLAND, 5)).toBe('2026-12-10');
    expect(returnDay(day('2026-12-24'), ENGLAND, 2)).toBe('2026-12-30');
  });
});
