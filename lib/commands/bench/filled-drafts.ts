import { db } from '@/lib/db/client';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { saveStep, startDraft } from '@/lib/jobs/draft';

type Step = Parameters<typeof saveStep>[0];

/** Bookings with all that a customer fills in before the last press, and the price they are shown. */
export async function filledDrafts(
  count: number,
  now: Date,
): Promise<{ tokens: string[]; shownMinor: number }> {
  const repair = await db.repair.findFirstOrThrow({
    where: { isListed: true, model: { battery: 'none' } },
    select: { id: true },
  });
  const tokens: string[] = [];
  for (let i = 0; i < count; i += 1) tokens.push(await filledDraft(repair.id, now));
  const shown = await readBookingRepair(repair.id);
  if (!shown) throw new Error('the repair of the bookings is on no price list');
  return { tokens, shownMinor: shown.grossMinor };
}

async function filledDraft(repairId: string, now: Date): Promise<string> {
  const token = await startDraft({ repairId, now });
  const save = (step: Step['step'], answers: Step['answers']) => saveStep({ token, step, answers, now });
  await save('unit', { serial: 'MFT-10480-K' });
  await save('problem', { problem: 'Does not charge any more', history: ['dropped'] });
  await save('parcel', { accessories: ['Power supply'], otherAccessory: '', battery: 'none', data: 'saved' });
  await save('address', {
    name: 'Maren Holt',
    email: 'maren.holt@example.org',
    phone: '07700 900321',
    address1: '12 Chandler Row',
    address2: '',
    postcode: 'QM2 7HB',
    town: 'Sandmouth',
    country: 'GB',
  });
  return token;
}
