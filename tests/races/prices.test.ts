import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordPayment } from '@/lib/jobs/record-payment';
import { withdraw } from '@/lib/jobs/withdraw';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, proved, sendBack, takeMove } from '@/tests/makers/course';
import { askPrice, writePrice } from '@/tests/makers/offer';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

/** The price holds to the end of Friday 25 December 2026. */
const ASKED = new Date('2026-11-25T09:00:00Z');
const LAST_MOMENT = new Date('2026-12-25T23:59:59Z');
const DAY_AFTER = new Date('2026-12-26T00:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(ASKED);
}, 60_000);

async function askedJob(): Promise<string> {
  const jobId = await assessedJob(world, ASKED);
  await askPrice(jobId, ASKED);
  return jobId;
}

const answer = (jobId: string, decision: 'accepted' | 'declined', now: Date) =>
  attempt(() => decideOffer({ jobId, revision: 2, decision, actor: { kind: 'customer' }, now }));

const openPrices = async (jobId: string) => {
  const job = await jobNow(jobId);
  const revisions = job.quotes[0]?.revisions ?? [];
  return {
    stage: job.stage,
    second: revisions[1]?.state,
    agreed: revisions.filter(({ state }) => state === 'accepted').length,
    open: revisions.filter(({ state }) => state === 'sent').length,
  };
};

describe('a price at its end, whoever races', () => {
  it('is reminded of by one of four rounds', async () => {
    await askedJob();
    const soon = new Date('2026-12-21T09:00:00Z');
    const rounds = await Promise.all([1, 2, 3, 4].map(() => lapsePrices(soon)));
    expect(rounds.reduce((sum, { reminded }) => sum + reminded, 0)).toBe(1);
    expect(await db.mail.count({ where: { template: 'offer-reminder' } })).toBe(1);
  });

  it.each(['accepted', 'declined'] as const)('lapses or is %s, never both', async (decision) => {
    const jobId = await askedJob();
    const when = decision === 'accepted' ? LAST_MOMENT : DAY_AFTER;
    const [first, answered, second] = await Promise.all([
      lapsePrices(DAY_AFTER),
      answer(jobId, decision, when),
      lapsePrices(DAY_AFTER),
    ]);
    const lapsed = first.lapsed + second.lapsed;
    expect(lapsed + (answered.ok ? 1 : 0)).toBe(1);
    const { stage, second: state, agreed, open } = await openPrices(jobId);
    const led = decision === 'accepted' ? 'on-bench' : 'declined';
    expect([stage, state]).toEqual(answered.ok ? [led, decision] : ['assessing', 'lapsed']);
    expect([agreed, open]).toEqual([1, 0]);
    const mails = await db.mail.count({ where: { template: { in: ['offer-lapsed', 'approval-recorded'] } } });
    expect(mails).toBe(1);
  });

  it('is withdrawn from once, whether a yes came before or comes too late', async () => {
    await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'eu' } });
    const jobId = await askedJob();
    const outcomes = await Promise.all([
      attempt(() => withdraw({ jobId, shownOwed: 0, now: ASKED })),
      answer(jobId, 'accepted', ASKED),
      attempt(() => withdraw({ jobId, shownOwed: 0, now: ASKED })),
    ]);
    expect([outcomes[0].ok, outcomes[2].ok]).toEqual([true, true]);
    const { stage, agreed, open } = await openPrices(jobId);
    expect([stage, agreed, open]).toEqual(['declined', 1, 0]);
    const events = await db.jobEvent.findMany({
      where: { jobId, kind: { in: ['withdrawn', 'offer-decided'] } },
      orderBy: { version: 'asc' },
    });
    const yes = outcomes[1].ok ? ['offer-decided'] : [];
    expect(events.map(({ kind }) => kind)).toEqual([...yes, 'withdrawn']);
    expect(factsOf(await jobNow(jobId)).owed).toBe(0);
  });
});

describe('an answer that had come in time, written down after its price lapsed', () => {
  const FOUND = new Date('2026-12-29T09:00:00Z');

  async function lapsedJob(): Promise<string> {
    const jobId = await askedJob();
    await lapsePrices(DAY_AFTER);
    return jobId;
  }

  async function writeDown(jobId: string, decision: 'accepted' | 'declined') {
    const { version } = await jobNow(jobId);
    const told = { how: 'telephone', on: day('2026-12-23'), words: 'As I said.' } as const;
    return () =>
      attempt(() => decideOffer({ jobId, revision: 2, decision, told, version, actor: OWNER, now: FOUND }));
  }

  it('goes out or goes on while a colleague sends the unit back, never both', async () => {
    const jobId = await lapsedJob();
    await takeMove(jobId, 'start-bench', FOUND);
    await proved(world, jobId, FOUND);
    await recordPayment({
      ...{ jobId, amount: 7200, method: 'card', reference: '', receivedOn: day('2026-12-29') },
      ...{ actor: BENCH, now: FOUND },
    });
    const yes = await writeDown(jobId, 'accepted');
    const [first, sent, second] = await Promise.all([yes(), attempt(() => sendBack(jobId, FOUND)), yes()]);
    expect(first.ok).toBe(second.ok);
    expect([first.ok, sent.ok].filter(Boolean)).toHaveLength(1);
    const { stage, certificates } = await jobNow(jobId);
    expect([stage, certificates.length]).toEqual(sent.ok ? ['sent-back', 1] : ['on-bench', 0]);
    expect(await db.mail.count({ where: { jobId, template: 'approval-recorded' } })).toBe(first.ok ? 1 : 0);
  });

  it('is a yes or a no where two write it down, or gives way to a newer price', async () => {
    const jobId = await lapsedJob();
    const [yes, no] = [await writeDown(jobId, 'accepted'), await writeDown(jobId, 'declined')];
    const outcomes = await Promise.all([yes(), no(), attempt(() => writePrice(jobId, FOUND))]);
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    const job = await jobNow(jobId);
    const states = job.quotes[0]?.revisions.map(({ state }) => state) ?? [];
    expect(states.filter((state) => state === 'accepted')).toHaveLength(1);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'offer-decided' } })).toBe(
      job.stage === 'assessing' ? 0 : 1,
    );
  });
});
