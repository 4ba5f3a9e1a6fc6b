import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day } from '@/lib/calendar/day';
import { DAYS_TO_ANSWER, parcelWait } from '@/lib/jobs/rules/parcel-wait';

const SETTINGS = { parcelRemindDays: 14, parcelOverDays: 45 };
const bookedOn = day('2027-03-03');
const wait = (today: string, o: { named?: string; reminded?: string; remindDays?: number } = {}) =>
  parcelWait(
    { bookedOn, namedOn: o.named ? day(o.named) : null, remindedOn: o.reminded ? day(o.reminded) : null },
    { ...SETTINGS, parcelRemindDays: o.remindDays ?? 14 },
    day(today),
  );

describe('a parcel that was booked', () => {
  it.each([
    ['2027-03-03', { days: 0, isReminderDue: false, isOver: false }],
    ['2027-03-16', { days: 13, isReminderDue: false, isOver: false }],
    ['2027-03-17', { days: 14, isReminderDue: true, isOver: false }],
    ['2027-04-17', { days: 45, isReminderDue: true, isOver: false }],
    ['2027-04-18', { days: 46, isReminderDue: false, isOver: true }],
  ])('and has not come by %s', (today, expected) => {
    expect(wait(today)).toMatchObject({ ...expected, since: bookedOn, keptUntil: '2027-04-17' });
  });

  it('is reminded of once, and never where the workshop wants no reminders', () => {
    expect(wait('2027-03-20', { reminded: '2027-03-17' })).toMatchObject({
      isReminded: true,
      isReminderDue: false,
    });
    // Named on the very day the reminder went out: that was the one.
    expect(wait('2027-04-03', { named: '2027-03-20', reminded: '2027-03-20' }).isReminded).toBe(true);
    expect(wait('2027-03-20', { remindDays: 0 }).isReminderDue).toBe(false);
    expect(wait('2027-03-04', { remindDays: 1 }).isReminderDue).toBe(true);
  });

  it('is kept fourteen days after a reminder that went out late', () => {
    const late = { reminded: '2027-04-16' };
    expect(wait('2027-04-30', late)).toMatchObject({ keptUntil: '2027-04-30', isOver: false });
    expect(wait('2027-05-01', late).isOver).toBe(true);
  });

  it('is awaited anew from the day its customer named it, and reminded of again', () => {
    const named = { named: '2027-03-20', reminded: '2027-03-17' };
    expect(wait('2027-04-02', named)).toMatchObject({ days: 13, isReminded: false, isReminderDue: false });
    expect(wait('2027-04-03', named)).toMatchObject({ days: 14, isReminderDue: true });
    expect(wait('2027-05-04', named)).toMatchObject({ isOver: false, keptUntil: '2027-05-04' });
    expect(wait('2027-05-05', named).isOver).toBe(true);
  });

  it('is never over before its customer had fourteen days after a reminder, nor reminded of once over', () => {
    const days = fc.integer({ min: 0, max: 120 });
    fc.assert(
      fc.property(days, fc.option(days), fc.option(days), (today, named, reminded) => {
        const on = (at: number | null): Day | null => (at === null ? null : addDays(bookedOn, at));
        const parcel = { bookedOn, namedOn: on(named), remindedOn: on(reminded) };
        const found = parcelWait(parcel, SETTINGS, addDays(bookedOn, today));
        expect(found.isOver && found.isReminderDue).toBe(false);
        if (found.isReminded && reminded !== null && today <= reminded + DAYS_TO_ANSWER)
          expect(found.isOver).toBe(false);
      }),
    );
  });
});
