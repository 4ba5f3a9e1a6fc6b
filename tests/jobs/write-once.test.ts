import { expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { recordPayment } from '@/lib/jobs/record-payment';
import { sendMessage } from '@/lib/jobs/send-message';
import { idOfSent } from '@/lib/jobs/write-once';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const KEY = '019aa000-0000-7000-8123-4567890abcde';
const NEXT = '019aa000-0001-7000-8000-000000000000';

useDatabase();

it('gives one id to the same thing sent from one form, and another to anything else', () => {
  const { id } = idOfSent(KEY, ['job', 7200]);
  expect(id).toMatch(/^019aa000-0000-7000-8123-45[0-9a-f]{10}$/);
  expect(idOfSent(KEY, ['job', 7200])).toEqual({ id });
  expect(idOfSent(KEY, ['job', 7000])).not.toEqual({ id });
  expect(idOfSent(KEY, new Map([['pin-1', 'through']]))).not.toEqual(
    idOfSent(KEY, new Map([['pin-1', 'no path']])),
  );
  expect(idOfSent(NEXT, ['job', 7200])).not.toEqual({ id });
  expect(idOfSent(undefined, ['job', 7200])).toEqual({});
});

it('gives ids that stand in the order of their forms', () => {
  const ids = Array.from({ length: 50 }, (_, sent) => idOfSent(KEY, sent).id);
  expect(ids.every((id) => id < idOfSent(NEXT, 0).id)).toBe(true);
});

it('keeps a second message and a second payment from the form of the first, and none of them twice', async () => {
  const { repairId } = await makeWorkshop(now);
  const { jobId } = await makeBooking({ repairId, now });
  const say = (text: string) => sendMessage({ jobId, text, formKey: KEY, actor: { kind: 'customer' }, now });
  for (const text of ['Is it there yet?', 'Is it there yet?', 'And the lead too?']) await say(text);
  expect(await db.message.count({ where: { jobId } })).toBe(2);

  const pay = (amount: number) =>
    recordPayment({
      jobId,
      amount,
      method: 'cash',
      reference: '',
      receivedOn: day('2026-11-25'),
      formKey: KEY,
      actor: OWNER,
      now,
    });
  for (const amount of [2000, 2000, 5200]) await pay(amount);
  const kept = await db.payment.findMany({ where: { jobId }, select: { amountMinor: true } });
  expect(kept.map(({ amountMinor }) => amountMinor).sort()).toEqual([2000, 5200]);
});
