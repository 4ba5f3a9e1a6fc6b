import { renderToStaticMarkup } from 'react-dom/server';
import { beforeEach, expect, test } from 'vitest';
import { ClaimPart } from '@/app/(front)/job/[token]/claim-part';
import { day } from '@/lib/calendar/day';
import { recordPayment } from '@/lib/jobs/record-payment';
import { askPostage } from '@/lib/warranty/ask-postage';
import { endPostage } from '@/lib/warranty/end-postage';
import { lookAgain } from '@/lib/warranty/look-again';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const RECEIPT = { fileKey: 'r1', thumbKey: 'r1t', sha256: 'r'.repeat(64), width: 8, height: 6 };

useDatabase();

/** A covered claim whose customer has asked for their postage. */
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT);
  const made = await makeClaim({ number, now: NOW });
  await takeIn(made.jobId, NOW);
  await moveTo(made.jobId, 'assess', NOW);
  await ruleClaim(made, { cause: 'workmanship', now: NOW });
  await askPostage({
    jobId: made.jobId,
    amount: 560,
    to: 'Maren Holt, by transfer',
    photos: [RECEIPT],
    now: NOW,
  });
  return made;
});
let claim: Awaited<ReturnType<typeof makeClaim>>;
beforeEach(async () => {
  claim = await begin();
}, 60_000);

async function receiptsShown(): Promise<number> {
  const job = await jobNow(claim.jobId);
  const html = renderToStaticMarkup(<ClaimPart job={job} token="made-up" workshop={await readWorkshop()} />);
  return html.split('aria-label="Your receipt for the postage"').length - 1;
}

const reason = 'In its last test of ten hours the fault came back.';
const turns: [string, () => Promise<unknown>][] = [
  ['the postage waits to be paid back', async () => undefined],
  [
    'it is paid back',
    () =>
      recordPayment({
        ...{ jobId: claim.jobId, amount: -560, purpose: 'claim-postage', method: 'bank transfer' },
        ...{ reference: '', receivedOn: day('2027-02-08'), actor: BENCH, now: NOW },
      }),
  ],
  [
    'it was ended unpaid',
    async () =>
      endPostage({
        jobId: claim.jobId,
        version: await versionOf(claim.jobId),
        reason,
        actor: OWNER,
        now: NOW,
      }),
  ],
  [
    'the ruling was taken back',
    async () =>
      lookAgain({
        ...{ claimId: claim.claimId, jobVersion: await versionOf(claim.jobId) },
        ...{ reason, actor: OWNER, now: NOW },
      }),
  ],
];

test.each(turns)('a customer sees their receipt once, where %s', async (_where, turn) => {
  await turn();
  expect(await receiptsShown()).toBe(1);
});
