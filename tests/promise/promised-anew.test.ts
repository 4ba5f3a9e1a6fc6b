import { expect, test } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { movePromise } from '@/lib/jobs/move-promise';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readKept } from '@/lib/promise/stored-kept';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { askPrice } from '@/tests/makers/offer';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const ASKED = new Date('2027-03-01T10:00:00Z');
const NO = new Date('2027-03-03T10:00:00Z');
const YES = new Date('2027-03-05T10:00:00Z');
const LATER = new Date('2027-04-30T10:00:00Z');

test('a claim that covers nothing is promised anew with a yes after a no, and judged by that day alone', async () => {
  const { number } = await makeCertificate(await makeWorkshop(SENT), SENT);
  const claim = await makeClaim({ number, now: NOW });
  const { jobId } = claim;
  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  const { version } = await jobNow(jobId);
  const reason = 'The fader is not here yet.';
  await movePromise({ jobId, version, to: day('2027-02-18'), reason, actor: BENCH, now: NOW });
  await ruleClaim(claim, { cause: 'separate-fault', now: NOW });

  const revision = await askPrice(jobId, ASKED);
  const customer = { jobId, revision, actor: { kind: 'customer' } } as const;
  await decideOffer({ ...customer, decision: 'declined', now: NO });
  await approveAfterNo({ ...customer, isStartAsked: true, isTermsAccepted: true, now: YES });

  const { promisedOn, stage } = await jobNow(jobId);
  if (!promisedOn) expect.fail('nothing is promised for the repair');
  expect(stage).toBe('on-bench');
  expect(promisedOn.getTime()).toBeGreaterThan(YES.getTime());
  const month = dayFromDate(promisedOn).slice(0, 7);
  const judged = (await readKept(LATER, await readWorkshop())).filter((each) => each.month >= '2027-02');
  expect(judged).toEqual([{ month, promises: 1, kept: 0, notReady: 1 }]);
}, 60_000);
