import { beforeAll, describe, expect, test } from 'vitest';
import { openWorkshop, workshopSigner } from '@/lib/commands/bench/open-workshop';
import { IN_HAND } from '@/lib/commands/bench/plan-course';
import { seedMany } from '@/lib/commands/bench/seed-many';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { findJobByToken, newestTokenOf } from '@/lib/jobs/private-link';
import { readJob } from '@/lib/jobs/records';
import { isEventKind, parseEvent } from '@/lib/jobs/rules/events';
import { readToday } from '@/lib/jobs/today';
import { readNumber } from '@/lib/numbers/job-number';
import { isGenuine } from '@/lib/warranty/genuine';
import { readChain } from '@/lib/warranty/records';
import { readAssessment } from '@/lib/warranty/stored-assessment';
import { useDatabase } from '@/tests/database';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');
const JOBS = 400;

beforeAll(async () => {
  await openWorkshop(now);
  const sign = await workshopSigner(now);
  await onServer(config.databaseUrl, (client) => seedMany(client, { jobs: JOBS, seed: 7, now, sign }));
}, 60_000);

describe('many jobs made at once', () => {
  test('are as many as asked for, as many in hand as ever, and one in twenty a claim', async () => {
    const groups = await db.job.groupBy({ by: ['stage'], _count: { _all: true } });
    const at = new Map(groups.map((group) => [group.stage, group._count._all]));
    expect([...at.values()].reduce((sum, count) => sum + count, 0)).toBe(JOBS);
    for (const [stage, jobs] of IN_HAND) expect([stage, at.get(stage)]).toEqual([stage, jobs]);
    const claims = await db.job.count({ where: { kind: 'claim' } });
    expect(claims / JOBS).toBeGreaterThan(0.03);
    expect(claims / JOBS).toBeLessThan(0.07);
  });

  test('have what the program’s own readers ask of a row', async () => {
    const all = await db.job.findMany({ select: { id: true, number: true }, orderBy: { id: 'asc' } });
    const jobs = all.filter((_, place) => place % 20 === 0 || place >= JOBS - 30);
    for (const { id, number } of jobs) {
      expect(readNumber(number).ok).toBe(true);
      const job = await readJob({ id });
      for (const event of job?.events ?? []) {
        if (!isEventKind(event.kind)) throw new Error(`no such event: ${event.kind}`);
        parseEvent(event.kind, event.data);
      }
      expect(job?.version).toBe(job?.events.length);
      expect(job?.events.at(-1)?.toStage ?? job?.stage).toBe(job?.stage);
      if (job?.claim) readAssessment(job.claim.preliminary);
    }
    const today = await readToday(now);
    expect(today.expected.length).toBe(12);
  });

  test('private links open their job', async () => {
    const job = await db.job.findFirstOrThrow({ select: { id: true } });
    const token = await newestTokenOf(job.id);
    expect((await findJobByToken(token ?? ''))?.jobId).toBe(job.id);
  });

  test('certificates are signed, and a covered claim has issued the next revision', async () => {
    const renewed = await db.certificate.findFirstOrThrow({ where: { revision: 2 } });
    const chain = await readChain(renewed.number);
    expect(chain?.revisions.map((each) => each.supersededAt !== null)).toEqual([true, false]);
    expect(chain?.held.length).toBe(1);
    for (const each of chain?.revisions ?? []) expect(await isGenuine(each)).toBe(true);
  });

  test('of a lot no more is used than was received, and its stock says so', async () => {
    const lots = await db.lot.findMany({ include: { uses: true }, where: { code: { startsWith: 'Q-' } } });
    expect(lots.some((lot) => lot.uses.length > 1)).toBe(true);
    for (const lot of lots)
      expect(lot.received - lot.uses.reduce((sum, use) => sum + use.quantity, 0)).toBe(lot.inStock);
  });

  test('closed claims have a cause, a ruling and a cost', async () => {
    const claims = await db.claim.findMany({ where: { state: 'closed' } });
    expect(claims.length).toBeGreaterThan(5);
    for (const claim of claims) expect([claim.cause, claim.ruling, claim.costMinutes]).not.toContain(null);
  });
});
