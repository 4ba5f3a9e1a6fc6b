import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { arrive } from '@/lib/jobs/arrive';
import { book } from '@/lib/jobs/book';
import { moveJob } from '@/lib/jobs/move';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readJob } from '@/lib/jobs/records';
import { remindOfParcels } from '@/lib/jobs/remind-parcels';
import { takeInOpened } from '@/lib/jobs/take-in-opened';
import { walkIn } from '@/lib/jobs/walk-in';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob } from '@/tests/makers/course';
import { ADDRESS, filledDraft, makeBooking } from '@/tests/makers/job';
import { somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();
beforeEach(resetDatabase);

describe('two people at one job', () => {
  it('a confirm button pressed eight times books once and answers the same job to all', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const draftToken = await filledDraft({ repairId, now: NOW });
    const booked = await Promise.all(
      Array.from({ length: 8 }, () => book({ draftToken, shownMinor: 7200, now: NOW })),
    );
    expect(new Set(booked.map((each) => each.number)).size).toBe(1);
    expect(booked.filter((each) => each.isNew)).toHaveLength(1);
    expect(await db.job.count()).toBe(1);
    expect(await db.mail.count()).toBe(1);
  });

  it('of four who move a job from the same version one wins and three get a conflict', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    const { version } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    const outcomes = await Promise.all(
      [BENCH, OWNER, BENCH, OWNER].map((actor) =>
        attempt(() => moveJob({ jobId, version, move: 'start-bench', note: '', actor, now: NOW })),
      ),
    );
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]))).toEqual([
      'conflict',
      'conflict',
      'conflict',
    ]);
    expect(await db.jobEvent.count({ where: { jobId, toStage: 'on-bench' } })).toBe(1);
  });

  it('a parcel is taken in once, under its booking or as the one of it that a job was opened for', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW, serial: 'HW2-90021-A' });
    const { number } = await walkIn({
      customer: ADDRESS,
      repairId,
      serial: 'HW2-90021-B',
      problem: 'No letter',
      extra: [],
      batteryAnswer: 'healthy',
      photos: [somePhoto()],
      isOtherMatter: false,
      formKey: '0199b3a2-0000-7000-8000-00000000000b',
      actor: BENCH,
      now: NOW,
    });
    const opened = await db.job.findUniqueOrThrow({ where: { number }, select: { id: true, version: true } });
    const { version } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    const parcel = { serial: 'HW2-90021-A', arrived: [], extra: [], photos: [], actor: BENCH, now: NOW };
    const press = { jobId, version, ...parcel };
    const asOpened = { ...press, opened: { jobId: opened.id, version: opened.version } };
    const outcomes = await Promise.all([
      ...[1, 2, 3].map(() => attempt(() => takeInOpened(asOpened))),
      attempt(() => arrive(press)),
      attempt(() =>
        moveJob({
          jobId: opened.id,
          version: opened.version,
          move: 'assess',
          note: '',
          actor: BENCH,
          now: NOW,
        }),
      ),
    ]);
    const codes = outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]));
    expect(new Set(codes)).toEqual(new Set(['conflict']));
    expect(await db.jobEvent.count({ where: { jobId, kind: 'unit-arrived' } })).toBe(1);
    expect(await db.mail.count({ where: { jobId, template: 'unit-arrived' } })).toBe(1);
    // Wherever the photo is, its job is the one that goes on.
    const ended = await db.jobEvent.count({ where: { jobId: opened.id, kind: 'is-of-booking' } });
    expect(await db.photo.count({ where: { jobId } })).toBe(ended);
    expect(await db.job.count({ where: { id: opened.id, stage: 'cancelled' } })).toBe(ended);
  });

  it('a booking that its customer cancels four times is cancelled once, with one mail', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const actor = { kind: 'customer' } as const;
    const cancel = () => attempt(() => moveJob({ jobId, move: 'cancel', note: '', actor, now: NOW }));
    const outcomes = await Promise.all([cancel(), cancel(), cancel(), cancel()]);
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, true, true, true]);
    expect(await db.jobEvent.count({ where: { jobId, toStage: 'cancelled' } })).toBe(1);
    expect(await db.mail.count({ where: { jobId, template: 'job-cancelled' } })).toBe(1);
  });

  it('findings added at once are all kept, each with its own version in the history', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    await Promise.all(
      Array.from({ length: 6 }, (_, index) =>
        recordFinding({ jobId, text: `Finding ${index}`, photos: [], actor: BENCH, now: NOW }),
      ),
    );
    expect(await db.finding.count({ where: { jobId } })).toBe(6);
    const versions = await db.jobEvent.findMany({ where: { jobId }, orderBy: { version: 'asc' } });
    expect(versions.map((event) => event.version)).toEqual(versions.map((_, index) => index + 1));
  });

  it('a finding sent twice with one form key is kept once', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    const formKey = '019aa000-0000-7000-8000-000000000001';
    const send = () =>
      recordFinding({ jobId, text: 'Pad lifted', photos: [], formKey, actor: BENCH, now: NOW });
    await Promise.all([send(), send(), send()]);
    expect(await db.finding.count({ where: { jobId } })).toBe(1);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'finding-recorded' } })).toBe(1);
  });

  it('rounds of the clock at once, while the customer cancels, leave one reminder at most, told before the end', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const later = new Date(NOW.getTime() + 20 * 86_400_000);
    const actor = { kind: 'customer' } as const;
    const [first, second, cancelled, third] = await Promise.all([
      remindOfParcels(later),
      remindOfParcels(later),
      attempt(() => moveJob({ jobId, move: 'cancel', note: '', actor, now: later })),
      remindOfParcels(later),
    ]);
    const reminded = first + second + third;
    expect(reminded).toBeLessThanOrEqual(1);
    expect(cancelled.ok).toBe(true);
    const events = await db.jobEvent.findMany({ where: { jobId }, orderBy: { version: 'asc' } });
    expect(events.map(({ kind, toStage }) => toStage ?? kind)).toEqual([
      'booked',
      ...Array.from({ length: reminded }, () => 'parcel-reminded'),
      'cancelled',
    ]);
    expect(await db.mail.count({ where: { jobId, template: 'parcel-awaited' } })).toBe(reminded);
  });

  it('three rounds of the clock at once send one reminder', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const later = new Date(NOW.getTime() + 20 * 86_400_000);
    const rounds = await Promise.all([1, 2, 3].map(() => remindOfParcels(later)));
    expect(rounds.toSorted()).toEqual([0, 0, 1]);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'parcel-reminded' } })).toBe(1);
    expect(await db.mail.count({ where: { jobId, template: 'parcel-awaited' } })).toBe(1);
  });

  it('yes and no pressed at once leave one answer and one agreed price', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    await recordFinding({ jobId, text: 'Pad lifted', photos: [], actor: BENCH, now: NOW });
    const job = await readJob({ id: jobId });
    await writeOffer({
      jobId,
      version: job?.version ?? 0,
      lines: [{ kind: 'labour', description: 'Pad rebuilt', amount: 9600, category: 'S', rateBps: 2000 }],
      reason: 'A pad is lifted.',
      onYes: '',
      onNo: '',
      actor: BENCH,
      now: NOW,
    });
    const { version } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    await moveJob({ jobId, version, move: 'ask-approval', note: '', actor: BENCH, now: NOW });
    const decide = (decision: 'accepted' | 'declined') =>
      attempt(() => decideOffer({ jobId, revision: 2, decision, actor: { kind: 'customer' }, now: NOW }));
    const outcomes = await Promise.all([decide('accepted'), decide('declined'), decide('accepted')]);
    const stage = (await db.job.findUniqueOrThrow({ where: { id: jobId } })).stage;
    expect(['on-bench', 'declined']).toContain(stage);
    expect(await db.quoteRevision.count({ where: { quote: { jobId }, state: 'accepted' } })).toBe(1);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'offer-decided' } })).toBe(1);
    expect(outcomes.some((outcome) => outcome.ok)).toBe(true);
    expect(outcomes.some((outcome) => !outcome.ok)).toBe(true);
  });
});
