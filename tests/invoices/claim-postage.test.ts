import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { journalOf } from '@/lib/invoices/journal';
import { statementOf } from '@/lib/invoices/statement';
import { factsOf } from '@/lib/jobs/facts';
import { recordPayment } from '@/lib/jobs/record-payment';
import { drawMail } from '@/lib/mail/draw';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');

test('the postage of a covered claim is paid back beside the price, told, and counted as its cost', async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT);
  const claim = await makeClaim({ number, now: NOW });
  const { claimId, jobId } = claim;
  const payBack = (amount: number) =>
    recordPayment({
      jobId,
      amount,
      purpose: 'claim-postage',
      method: 'bank transfer',
      reference: 'receipt 4410',
      receivedOn: day('2027-02-08'),
      actor: BENCH,
      now: NOW,
    });
  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  await expect(payBack(-500)).rejects.toMatchObject({ code: 'invalid', field: 'purpose' });
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  await expect(payBack(500)).rejects.toMatchObject({ code: 'invalid', field: 'amount' });
  await payBack(-500);
  await expect(payBack(501)).rejects.toMatchObject({ code: 'invalid', field: 'amount' });
  await moveTo(jobId, 'start-bench', NOW);
  await proveJob(jobId, world, NOW);
  // Nothing holds the unit: what was paid back is no debt of the customer.
  expect(factsOf(await jobNow(jobId)).owed).toBe(0);
  await sendBack(jobId, NOW);
  const cost = async () => (await db.claim.findUniqueOrThrow({ where: { id: claimId } })).costPostageMinor;
  expect(await cost()).toBe(420 + 500);
  // A receipt that comes later still counts.
  await payBack(-130);
  expect(await cost()).toBe(420 + 500 + 130);

  // An entry that was a mistake is corrected by a second one, and costs nothing.
  await payBack(-1000);
  await payBack(1000);
  expect(await cost()).toBe(420 + 500 + 130);

  const statement = await statementOf(jobId, 'GBP');
  expect([statement?.owed, statement?.rows.some(({ what }) => what.includes('receipt 4410'))]).toEqual([
    0,
    false,
  ]);
  const journal = await journalOf('2027-02', 'Europe/London');
  expect(journal.match(/postage of a claim/g)).toHaveLength(4);
  expect(journal).toContain('-5.00');
  const [mail] = await db.mail.findMany({
    where: { jobId, template: 'payment-received' },
    orderBy: { id: 'asc' },
  });
  if (!mail) throw new Error('nobody was told');
  expect((await drawMail(mail)).text).toContain('paid back the £5.00 that posting your unit to us cost you');
}, 60_000);
