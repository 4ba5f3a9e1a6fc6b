import { beforeEach, describe, expect, it } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { readJob } from '@/lib/jobs/records';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob } from '@/tests/makers/course';
import { askPrice, writePrice } from '@/tests/makers/offer';
import { makeWorkshop, moveToAuckland } from '@/tests/makers/workshop';

/** Half past midnight on a Wednesday in Auckland; 30 calendar days on, the price holds to the end of Friday 25 December 2026. */
const ASKED = new Date('2026-11-24T11:30:00Z');
const LAST_MOMENT = new Date('2026-12-25T10:59:59Z');
const DAY_AFTER = new Date('2026-12-25T11:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(ASKED);
  await moveToAuckland();
}, 60_000);

const jobNow = async (jobId: string) => {
  const job = await readJob({ id: jobId });
  if (!job) throw new Error('no such job');
  return job;
};
const mailsOf = async (template: string) => db.mail.findMany({ where: { template } });
const answer = (jobId: string, decision: 'accepted' | 'declined', now: Date) =>
  attempt(() => decideOffer({ jobId, revision: 2, decision, actor: { kind: 'customer' }, now }));

describe('a changed price that the customer does not answer', () => {
  it('is reminded of once, five days before its last', async () => {
    const jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED);
    expect(await lapsePrices(new Date('2026-12-19T10:59:59Z'))).toEqual({ reminded: 0, lapsed: 0 });
    expect(await lapsePrices(new Date('2026-12-19T11:00:00Z'))).toEqual({ reminded: 1, lapsed: 0 });
    expect(await lapsePrices(new Date('2026-12-21T09:00:00Z'))).toEqual({ reminded: 0, lapsed: 0 });
    const [mail, ...more] = await mailsOf('offer-reminder');
    expect(more).toEqual([]);
    expect(mail?.data).toEqual({ revision: 2, gross: 9600, returnFee: 960, validUntil: '2026-12-25' });
  });

  it('holds to the end of its last day where the workshop is, and lapses after it', async () => {
    const jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED);
    expect((await clockRound(LAST_MOMENT)).lapsed).toBe(0);
    expect((await clockRound(DAY_AFTER)).lapsed).toBe(1);
    expect((await clockRound(DAY_AFTER)).lapsed).toBe(0);
    const job = await jobNow(jobId);
    expect(job.stage).toBe('assessing');
    expect(job.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['accepted', 'lapsed']);
    const [moved] = job.events.filter(
      ({ toStage, fromStage }) => fromStage === 'awaiting-approval' && toStage,
    );
    expect([moved?.kind, moved?.actorKind]).toEqual(['offer-lapsed', 'clock']);
    expect((await mailsOf('offer-lapsed')).map(({ data }) => data)).toEqual([
      { revision: 2, gross: 9600, validUntil: '2026-12-25' },
    ]);
  });

  it('is agreed to until then, and not after it though the clock has not come by', async () => {
    const [late, inTime] = [await assessedJob(world, ASKED), await assessedJob(world, ASKED)];
    for (const jobId of [late, inTime]) await askPrice(jobId, ASKED);
    expect((await answer(inTime, 'accepted', LAST_MOMENT)).ok).toBe(true);
    expect(await answer(late, 'accepted', DAY_AFTER)).toMatchObject({ refusal: { code: 'conflict' } });
    expect((await jobNow(late)).stage).toBe('awaiting-approval');
  });

  it('puts the days it waited on the promise, and leaves room for another price', async () => {
    const jobId = await assessedJob(world, ASKED);
    // Five working days from Wednesday 25 November.
    expect((await jobNow(jobId)).promisedOn).toEqual(new Date('2026-12-02T00:00:00Z'));
    await askPrice(jobId, ASKED);
    await lapsePrices(DAY_AFTER);
    const job = await jobNow(jobId);
    // 25 November to Saturday 26 December is 21 working days without Christmas Day; then come the holidays 28 December and 1 January.
    expect(job.promisedOn && dayFromDate(job.promisedOn)).toBe('2027-01-05');
    expect(await writePrice(jobId, DAY_AFTER)).toEqual({ revision: 3, gross: 9600 });
  });

  it('cannot be agreed to once it has lapsed, nor lapse once it was answered', async () => {
    const late = await assessedJob(world, ASKED);
    await askPrice(late, ASKED);
    const answered = await assessedJob(world, ASKED);
    await askPrice(answered, ASKED);
    expect((await answer(answered, 'accepted', LAST_MOMENT)).ok).toBe(true);
    expect((await lapsePrices(DAY_AFTER)).lapsed).toBe(1);
    for (const decision of ['accepted', 'declined'] as const) {
      const outcome = await answer(late, decision, DAY_AFTER);
      expect(outcome.ok ? 'answered' : outcome.refusal.code).toBe('conflict');
    }
    expect((await jobNow(late)).stage).toBe('assessing');
    expect((await jobNow(answered)).stage).toBe('on-bench');
  });

  it('just stops counting where it was written and never sent', async () => {
    const jobId = await assessedJob(world, ASKED);
    await writePrice(jobId, ASKED);
    expect((await lapsePrices(new Date('2026-12-22T09:00:00Z'))).reminded).toBe(0);
    expect((await lapsePrices(DAY_AFTER)).lapsed).toBe(1);
    const job = await jobNow(jobId);
    expect([job.stage, job.quotes[0]?.revisions[1]?.state]).toEqual(['assessing', 'lapsed']);
    expect(await mailsOf('offer-lapsed')).toEqual([]);
  });

  it('is dealt with although another one cannot be', async () => {
    const broken = await assessedJob(world, ASKED);
    await askPrice(broken, ASKED);
    // Whatever keeps one from being dealt with; here its job waits for something else.
    await db.job.update({ where: { id: broken }, data: { stage: 'ready' } });
    const jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED);
    expect((await lapsePrices(new Date('2026-12-22T09:00:00Z'))).reminded).toBe(1);
    expect((await lapsePrices(DAY_AFTER)).lapsed).toBe(2);
    expect((await jobNow(jobId)).stage).toBe('assessing');
  });
});
