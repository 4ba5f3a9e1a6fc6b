import { beforeEach, describe, expect, it } from 'vitest';
import { type Day, day, dayFromDate, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { cameBack } from '@/lib/jobs/came-back';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { readRemovalFacts } from '@/lib/keeping/stored-removal';
import { isGenuine } from '@/lib/warranty/genuine';
import { planWarranty } from '@/lib/warranty/plan-certificate';
import { readChain } from '@/lib/warranty/records';
import type { Cause } from '@/lib/warranty/rules/causes';
import { readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { forgetCalendars } from '@/lib/workshop/records';
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
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let number = '';

const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const number = (await makeCertificate(world, SENT)).number;
  return { world, number };
});
beforeEach(async () => {
  ({ world, number } = await begin());
}, 60_000);

async function arriveAndRule(claim: { claimId: string; jobId: string }, cause: Cause, now: Date) {
  await takeIn(claim.jobId, now);
  await moveTo(claim.jobId, 'assess', now);
  await ruleClaim(claim, { cause, now });
}

/** Revision 2 with a renewed minimum: repaired under a claim late in the term. */
async function renewedChain() {
  const opened = new Date('2027-11-10T09:00:00Z');
  const back = new Date('2027-11-20T15:00:00Z');
  const claim = await makeClaim({ number, now: opened });
  await arriveAndRule(claim, 'workmanship', new Date('2027-11-12T09:00:00Z'));
  await moveTo(claim.jobId, 'start-bench', back);
  await proveJob(claim.jobId, world, back);
  await sendBack(claim.jobId, back);
  return { repairJobId: claim.jobId };
}

describe('a claim that was not covered and goes back unrepaired', () => {
  it('moves a running renewed minimum by the days it was here, on a next revision', async () => {
    const { repairJobId } = await renewedChain();
    const before = await readChain(number);
    // Sent on Saturday 20 November 2027, there by Friday the 26th: 90 days from then.
    expect(before?.inForce.lines.map((line) => line.renewedUntil && dayFromDate(line.renewedUntil))).toEqual([
      '2028-02-24',
    ]);

    // Opened long before it was posted: days count from the parcel.
    const claim = await makeClaim({ number, now: new Date('2028-01-02T09:00:00Z') });
    await nameParcel({ jobId: claim.jobId, reference: 'HP-1', now: new Date('2028-01-10T17:00:00Z') });
    await arriveAndRule(claim, 'damage-after-return', new Date('2028-01-12T09:00:00Z'));
    await moveTo(claim.jobId, 'return-unrepaired', new Date('2028-01-14T09:00:00Z'));
    const sentOn = new Date('2028-01-15T15:00:00Z');
    const plan = await planWarranty(await jobNow(claim.jobId), {
      now: sentOn,
      timeZone: 'Europe/London',
      calendar: { weekend: [6, 7], closed: new Map() },
      transitDays: 5,
    });
    // The work and readings behind the promise are still those of the last repair.
    expect(plan.certificate?.provedBy.id).toBe(repairJobId);

    const sent = await sendBack(claim.jobId, sentOn);
    expect(sent.certificate).toEqual({ number, revision: 3 });
    const after = await readChain(number);
    // 10 to 21 January 2028, with five working days of post, are 11 days out of the customer's hands.
    expect(after?.inForce.lines.map((line) => line.renewedUntil && dayFromDate(line.renewedUntil))).toEqual([
      '2028-03-06',
    ]);
    expect(after && (await isGenuine(after.inForce))).toBe(true);
    expect(after?.revisions.map((revision) => revision.supersededAt === null)).toEqual([false, false, true]);
  }, 60_000);

  it('keeps its certificate where no line changes, with the days given back', async () => {
    const claim = await makeClaim({ number, now: new Date('2027-02-01T09:00:00Z') });
    await arriveAndRule(claim, 'damage-after-return', new Date('2027-02-03T09:00:00Z'));
    await moveTo(claim.jobId, 'return-unrepaired', new Date('2027-02-04T09:00:00Z'));
    const sent = await sendBack(claim.jobId, new Date('2027-02-05T15:00:00Z'));
    expect(sent.certificate).toBeNull();
    const chain = await readChain(number);
    expect(chain?.revisions).toHaveLength(1);
    expect(chain?.held).toMatchObject([{ from: '2027-02-01', to: '2027-02-12' }]);
    expect((await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } })).state).toBe('closed');

    // The paper still says what it said, and cover runs eleven days longer: P12M from 3 December 2026, and 1 to 12 February.
    const paper = chain?.inForce;
    expect(paper && dayFromDate(paper.endsOn)).toBe('2027-12-03');
    expect((await readCoverEnds(paper ? [paper] : [])).get(paper?.id ?? '')).toMatchObject({
      end: '2027-12-14',
    });
    // Tuesday 14 December and seven days of grace are over on the 21st.
    const { customerId } = await db.job.findUniqueOrThrow({ where: { id: paper?.jobId ?? '' } });
    const workshop = { holidayCountry: 'GB', holidayRegion: 'ENG' };
    const facts = (today: Day) =>
      readRemovalFacts({ customerIds: [customerId], quoteIds: [] }, { today, workshop });
    expect(await facts(day('2027-12-21'))).toMatchObject({ liveCover: [number], coverUntil: '2027-12-21' });
    expect(await facts(day('2027-12-22'))).toMatchObject({ liveCover: [], coverUntil: null });
  }, 60_000);
});

describe('a unit whose renewed minimum runs', () => {
  it('is covered that much longer when its parcel came back and it left again', async () => {
    const { repairJobId } = await renewedChain();
    const endNow = async () => {
      const inForce = (await readChain(number))?.inForce;
      return (await readCoverEnds(inForce ? [inForce] : [])).get(inForce?.id ?? '')?.end;
    };
    expect(await endNow()).toBe('2028-02-24');
    const { version } = await jobNow(repairJobId);
    const back = new Date('2027-11-29T09:00:00Z');
    await cameBack({ jobId: repairJobId, version, reason: 'nobody at home', actor: BENCH, now: back });
    const again = await sendBack(repairJobId, new Date('2027-11-30T15:00:00Z'));
    expect(again.certificate).toBeNull();
    // There by Tuesday 7 December instead of 26 November: 11 days later, so that ninety days run from then.
    expect(await endNow()).toBe('2028-03-06');
    const { endsOn } = await db.unitWatch.findUniqueOrThrow({ where: { number } });
    expect(dayFromDate(endsOn)).toBe('2028-03-06');
  }, 60_000);
});

describe('the last day to claim that a certificate prints', () => {
  it('stands when the closing day it was moved over is worked after all', async () => {
    // P12M from Thursday 3 December 2026 end on a Friday, when the workshop meant to be closed: Monday the 6th.
    const closed = { day: dayToDate(day('2027-12-03')), name: 'Stocktaking' };
    await db.closingDay.create({ data: closed });
    forgetCalendars();
    const printed = await makeCertificate(world, SENT, 'FR2-70011-A');
    await db.closingDay.delete({ where: { day: closed.day } });
    forgetCalendars();
    const claim = await makeClaim({
      number: printed.number,
      serial: 'FR2-70011-A',
      now: new Date('2027-12-06T09:00:00Z'),
    });
    const { isLate, preliminary } = await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } });
    expect(isLate).toBe(false);
    expect(preliminary).toMatchObject({
      reasons: [{}, { code: 'last-day-moved', lastClaimDay: '2027-12-06' }],
    });
  }, 60_000);
});
