import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { saveStep, startDraft } from '@/lib/jobs/draft';
import { findJobByToken } from '@/lib/jobs/private-link';

export const SERIAL = 'HW2-10480-K';

export const ADDRESS = {
  name: 'Maren Holt',
  email: 'maren.holt@example.org',
  phone: '07700 900321',
  address1: '12 Chandler Row',
  address2: '',
  postcode: 'QM2 7HB',
  town: 'Sandmouth',
  country: 'GB',
};

/** Fills in a booking as a customer would and sends it. */
export async function makeBooking(o: {
  repairId: string;
  now: Date;
  serial?: string;
  battery?: string;
  isStartAsked?: boolean;
}) {
  const draftToken = await filledDraft(o);
  const shownMinor = (await readBookingRepair(o.repairId))?.grossMinor ?? 0;
  const booked = await book({ draftToken, shownMinor, now: o.now, isStartAsked: o.isStartAsked === true });
  const found = await findJobByToken(booked.token);
  if (!found) throw new Error('the booked job was not found by its link');
  return { ...booked, draftToken, jobId: found.jobId };
}

export async function filledDraft(o: { repairId: string; now: Date; serial?: string; battery?: string }) {
  const token = await startDraft({ repairId: o.repairId, now: o.now });
  const { now } = o;
  await saveStep({ token, step: 'unit', answers: { serial: o.serial ?? SERIAL }, now });
  await saveStep({
    token,
    step: 'problem',
    answers: { problem: 'Does not charge any more', history: ['dropped'] },
    now,
  });
  await saveStep({
    token,
    step: 'parcel',
    answers: {
      accessories: ['Power supply'],
      otherAccessory: '',
      battery: o.battery ?? 'healthy',
      data: 'saved',
    },
    now,
  });
  await saveStep({ token, step: 'address', answers: ADDRESS, now });
  return token;
}
