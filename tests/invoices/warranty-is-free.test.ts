import { beforeEach, describe, expect, it } from 'vitest';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { db } from '@/lib/db/client';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { readFile } from '@/lib/files/store';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { receiptData } from '@/lib/invoices/receipt-data';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { statementOf } from '@/lib/invoices/statement';
import { factsOf } from '@/lib/jobs/facts';
import { slipData } from '@/lib/jobs/slip-data';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { readLine } from '@/lib/quotes/stored-lines';
import { inspect } from '@/lib/warranty/inspect';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { textOf } from '@/tests/documents/read-pdf';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const SENT = new Date('2026-12-03T16:00:00Z');
const OPENED = new Date('2027-02-01T09:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const BACK = new Date('2027-02-11T15:00:00Z');

useDatabase();

let jobId = '';
let claimId = '';
let firstJob = '';

/** A claim on our own joint, covered, repaired with a part of ours and sent back at our cost. */
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const certificate = await makeCertificate(world, SENT);
  const firstJob = certificate.jobId;
  const claim = await makeClaim({ number: certificate.number, now: OPENED });
  const { jobId, claimId } = claim;
  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  const photo = somePhoto();
  await inspect({ claimId, item: 'outside-damage', answer: 'no', note: '', photo, actor: BENCH, now: NOW });
  await ruleOnClaim({
    claimId,
    jobVersion: (await jobNow(jobId)).version,
    cause: 'workmanship',
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'A joint of ours cracked.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
  await moveTo(jobId, 'start-bench', NOW);
  const { version } = await jobNow(jobId);
  await usePartOnJob({ jobId, version, lotId: world.lotId, quantity: 2, actor: BENCH, now: NOW });
  await proveJob(jobId, world, NOW);
  return { firstJob, jobId, claimId };
});
beforeEach(async () => {
  ({ firstJob, jobId, claimId } = await begin());
}, 120_000);

describe('a covered claim', () => {
  it('gets no invoice when it is ready, and none when somebody asks for one', async () => {
    expect(await db.invoice.count({ where: { jobId } })).toBe(0);
    expect(await db.invoice.count({ where: { jobId: firstJob } })).toBe(1);
    expect(await attempt(() => issueInvoice({ jobId, actor: OWNER, now: NOW }))).toMatchObject({
      ok: false,
      refusal: { code: 'conflict' },
    });
    expect(await db.invoiceSeries.findMany()).toEqual([{ year: 2026, last: 1 }]);
  });

  it('owes nothing, has nothing to receipt, and goes back without a payment', async () => {
    const job = await jobNow(jobId);
    expect(balanceOf(job)).toEqual({ total: 0, paid: 0, owed: 0 });
    expect(factsOf(job).owed).toBe(0);
    expect(await receiptData(job, await readWorkshop())).toBeNull();
    expect((await statementOf(jobId, 'GBP'))?.owed).toBe(0);
    await sendBack(jobId, BACK);
    expect((await jobNow(jobId)).stage).toBe('sent-back');
  });

  it('has its work at the true price and cover for all of it', async () => {
    const [revision] = (await jobNow(jobId)).quotes[0]?.revisions ?? [];
    const lines = revision?.lines.map(readLine) ?? [];
    expect(lines.map((line) => [line.kind, line.amount])).toEqual([
      ['labour', 7200],
      ['cover', -7200],
    ]);
    expect(revision).toMatchObject({ netMinor: 0, taxMinor: 0, grossMinor: 0 });
  });

  it('says £0.00 and no other amount in every mail to the customer', async () => {
    await sendBack(jobId, BACK);
    const mails = await db.mail.findMany({ where: { jobId }, orderBy: { id: 'asc' } });
    expect(mails.map((mail) => mail.template)).toEqual([
      'claim-opened',
      'unit-arrived',
      'claim-ruled',
      'unit-ready',
      'unit-sent-back',
    ]);
    for (const mail of mails) {
      const { text } = await drawMail(mail);
      expect(text, mail.template).toContain('£0.00');
      expect(
        text.match(/£\d[\d,.]*\d/g)?.filter((amount) => amount !== '£0.00'),
        mail.template,
      ).toEqual([]);
      expect(text, mail.template).not.toMatch(/How to pay|IBAN|Invoice/);
    }
  });

  it('is free of charge on its packing slip and asks for nothing on its certificate', async () => {
    const slip = textOf(await drawPackingSlip(await slipData(await jobNow(jobId))));
    expect(slip).toContain('Free of charge under certificate');
    expect(slip.match(/£\d[\d,.]*\d/g)?.filter((amount) => amount !== '£0.00') ?? []).toEqual([]);
    await sendBack(jobId, BACK);
    const certificate = (await jobNow(jobId)).certificates.at(-1);
    const paper = textOf(await readFile(certificate?.fileKey ?? ''));
    expect(paper).not.toMatch(/£[1-9]/);
  });

  it('keeps its true cost for the books', async () => {
    await sendBack(jobId, BACK);
    // 45 minutes of work, two sockets at 1.80, and the parcel back at 4.20.
    expect(await db.claim.findUniqueOrThrow({ where: { id: claimId } })).toMatchObject({
      state: 'closed',
      costMinutes: 45,
      costPartsMinor: 360,
      costPostageMinor: 420,
    });
  });
});
