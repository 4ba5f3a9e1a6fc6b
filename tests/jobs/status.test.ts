import { expect, test } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readStatus } from '@/lib/jobs/records';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { useDatabase } from '@/tests/database';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
// The day of the claim has gone by when its customer is asked.
const ASKED = new Date('2027-03-01T10:00:00Z');
const YES = new Date('2027-03-03T10:00:00Z');

test('who has the number of a claim that is not covered reads no promise, until its repair is agreed to', async () => {
  const { number } = await makeCertificate(await makeWorkshop(SENT), SENT);
  const claim = await makeClaim({ number, now: NOW });
  const { jobId } = claim;
  const shown = async () => (await readStatus((await jobNow(jobId)).number))?.promisedOn;
  expect(await shown()).toBeNull();

  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  const { promisedOn } = await jobNow(jobId);
  if (!promisedOn) expect.fail('nothing was promised for the claim');
  expect(await shown()).toBe(dayFromDate(promisedOn));

  await ruleClaim(claim, { cause: 'separate-fault', now: NOW });
  expect((await jobNow(jobId)).promisedOn).not.toBeNull();
  expect(await shown()).toBeNull();

  const { revision } = await writeOffer({
    jobId,
    version: (await jobNow(jobId)).version,
    lines: [{ kind: 'labour', description: 'Fader replaced', amount: 6000, category: 'S', rateBps: 2000 }],
    reason: 'The fader has worn out.',
    onYes: '',
    onNo: '',
    actor: OWNER,
    now: ASKED,
  });
  await moveTo(jobId, 'ask-approval', ASKED);
  expect(await shown()).toBeNull();
  const yes = { jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now: YES } as const;
  await decideOffer({ ...yes, isStartAsked: true, isTermsAccepted: true });
  const agreed = (await jobNow(jobId)).promisedOn;
  if (!agreed) expect.fail('nothing is promised for the repair');
  expect(await shown()).toBe(dayFromDate(agreed));
  expect(agreed.getTime()).toBeGreaterThan(YES.getTime());
  const { data } = await db.mail.findFirstOrThrow({ where: { jobId, template: 'approval-recorded' } });
  expect(data).not.toHaveProperty('promise');
}, 60_000);
