import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { attempt } from '@/lib/outcome';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { dispatch } from '@/lib/warranty/dispatch';
import { inspect } from '@/lib/warranty/inspect';
import { openClaimAtDesk } from '@/lib/warranty/open-claim-at-desk';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { currentSigningKey } from '@/lib/warranty/signing-key';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { resetDatabase, useDatabase } from '@/tests/database';
import {
  askForClaim,
  issuedCertificate,
  proved,
  readyJob,
  sendBack,
  takeIn,
  takeMove,
  versionOf,
} from '@/tests/makers/course';
import { ADDRESS } from '@/tests/makers/job';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2027-02-01T09:00:00Z');

useDatabase();
beforeEach(resetDatabase);

async function claimJob(certificate: string) {
  const opened = await askForClaim(certificate, LATER);
  if (!opened.opened) throw new Error('the claim did not open');
  return db.claim.findFirstOrThrow({
    where: { number: opened.claimNumber },
    select: { id: true, jobId: true },
  });
}

function rule(
  claimId: string,
  jobVersion: number,
  cause: 'workmanship' | 'damage-after-return' = 'workmanship',
) {
  return ruleOnClaim({
    claimId,
    jobVersion,
    cause,
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'The joint at the socket has cracked again.',
    lesson: '',
    actor: BENCH,
    now: LATER,
  });
}

/** A claim ruled not covered with a photo and a reason, and confirmed by the owner. */
async function claimNotCovered(world: Awaited<ReturnType<typeof makeWorkshop>>) {
  const claim = await claimJob(await issuedCertificate(world, NOW));
  await takeIn(claim.jobId, LATER);
  await inspect({
    claimId: claim.id,
    item: 'outside-damage',
    answer: 'yes',
    note: '',
    photo: { fileKey: 'a', thumbKey: 'b', sha256: 'c', width: 1, height: 1 },
    actor: BENCH,
    now: LATER,
  });
  await rule(claim.id, await versionOf(claim.jobId), 'damage-after-return');
  await takeSecondLook({
    claimId: claim.id,
    jobVersion: await versionOf(claim.jobId),
    isConfirmed: true,
    actor: OWNER,
    now: LATER,
  });
  return claim;
}

describe('one right record, whoever races', () => {
  it('two first certificates at once make one signing key', async () => {
    await makeWorkshop(NOW);
    const keys = await Promise.all(Array.from({ length: 6 }, () => currentSigningKey(NOW)));
    expect(new Set(keys.map((key) => key.publicKey)).size).toBe(1);
    expect(await db.signingKey.count()).toBe(1);
  });

  it('dispatch pressed four times issues one certificate and sends one mail', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await readyJob(world, NOW);
    const version = await versionOf(jobId);
    const press = () =>
      attempt(() =>
        dispatch({
          jobId,
          version,
          handover: { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'HP-1' },
          postage: 0,
          actor: BENCH,
          now: NOW,
        }),
      );
    const outcomes = await Promise.all([press(), press(), press(), press()]);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(await db.certificate.count({ where: { jobId } })).toBe(1);
    expect(await db.mail.count({ where: { jobId, template: 'unit-sent-back' } })).toBe(1);
  });

  it('of six claims opened at once on one certificate one opens and five are shown it', async () => {
    const world = await makeWorkshop(NOW);
    const certificate = await issuedCertificate(world, NOW);
    const results = await Promise.all(Array.from({ length: 6 }, () => askForClaim(certificate, LATER)));
    expect(results.filter((result) => result.opened)).toHaveLength(1);
    expect(results.flatMap((result) => (result.opened ? [] : [result.assessment.answer]))).toEqual(
      Array.from({ length: 5 }, () => 'already-open'),
    );
    expect(await db.claim.count()).toBe(1);
    expect(await db.job.count({ where: { kind: 'claim' } })).toBe(1);
  });

  it('of claims that the desk and the customer open at once one opens, and nothing of the others is kept', async () => {
    const world = await makeWorkshop(NOW);
    const certificate = await issuedCertificate(world, NOW);
    const { serialTyped } = await db.certificate.findFirstOrThrow({ where: { number: certificate } });
    const atDesk = () =>
      attempt(() =>
        openClaimAtDesk({
          certificateNumber: certificate,
          serial: serialTyped,
          symptom: 'other',
          details: 'It does not charge.',
          batteryAnswer: 'healthy',
          dataAnswer: 'saved',
          address: ADDRESS,
          photos: [],
          isHere: true,
          extra: [],
          reason: '',
          actor: BENCH,
          now: LATER,
        }),
      );
    const [first, asked, second, third] = await Promise.all([
      atDesk(),
      askForClaim(certificate, LATER),
      atDesk(),
      atDesk(),
    ]);
    const desk = [first, second, third];
    const opened = desk.filter((outcome) => outcome.ok).length;
    expect([opened, asked.opened]).toEqual(asked.opened ? [0, true] : [1, false]);
    expect(asked.opened ? 'opened' : asked.assessment.answer).toBe(asked.opened ? 'opened' : 'already-open');
    expect(new Set(desk.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code])))).toEqual(
      new Set(['conflict']),
    );
    expect(await db.claim.count()).toBe(1);
    expect(await db.job.count({ where: { kind: 'claim' } })).toBe(1);
    expect(await db.mail.count({ where: { template: 'claim-opened' } })).toBe(1);
    expect(await db.mail.count({ where: { template: 'unit-arrived', job: { kind: 'claim' } } })).toBe(opened);
  });

  it('two rulings at once leave one, and the other person is told', async () => {
    const world = await makeWorkshop(NOW);
    const claim = await claimJob(await issuedCertificate(world, NOW));
    await takeIn(claim.jobId, LATER);
    const version = await versionOf(claim.jobId);
    const outcomes = await Promise.all([
      attempt(() => rule(claim.id, version)),
      attempt(() => rule(claim.id, version)),
    ]);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(await db.jobEvent.count({ where: { jobId: claim.jobId, kind: 'claim-ruled' } })).toBe(1);
    expect(await db.mail.count({ where: { jobId: claim.jobId, template: 'claim-ruled' } })).toBe(1);
  });

  it('a dispatch while the customer contests either goes out or goes back to assessing, never both', async () => {
    const world = await makeWorkshop(NOW);
    const claim = await claimNotCovered(world);
    await takeMove(claim.jobId, 'return-unrepaired', LATER);
    const [sent, contested] = await Promise.all([
      attempt(() => sendBack(claim.jobId, LATER)),
      attempt(() => contestRuling({ jobId: claim.jobId, text: 'It was not dropped.', now: LATER })),
    ]);
    expect([sent.ok, contested.ok].filter(Boolean)).toHaveLength(1);
    const job = await db.job.findUniqueOrThrow({ where: { id: claim.jobId }, include: { claim: true } });
    expect([job.stage, job.claim?.state]).toEqual(sent.ok ? ['sent-back', 'closed'] : ['assessing', 'open']);
  });

  it('a contest that was told, a dispatch and the customer’s own contest at once: one of them counts', async () => {
    const world = await makeWorkshop(NOW);
    const { jobId } = await claimNotCovered(world);
    await takeMove(jobId, 'return-unrepaired', LATER);
    const version = await versionOf(jobId);
    const told = { how: 'telephone', on: day('2027-02-01'), words: 'It was not dropped.' } as const;
    const outcomes = await Promise.all([
      attempt(() => contestRuling({ jobId, text: told.words, told, version, actor: BENCH, now: LATER })),
      attempt(() => sendBack(jobId, LATER)),
      attempt(() => contestRuling({ jobId, text: 'It was never dropped.', now: LATER })),
    ]);
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    const [byStaff, sent, pressed] = outcomes;
    const job = await db.job.findUniqueOrThrow({ where: { id: jobId }, include: { claim: true } });
    expect([job.stage, job.claim?.contestText ?? null]).toEqual([
      sent?.ok ? 'sent-back' : 'assessing',
      sent?.ok ? null : pressed?.ok ? 'It was never dropped.' : told.words,
    ]);
    expect(await db.mail.count({ where: { jobId, template: 'contest-recorded' } })).toBe(byStaff?.ok ? 1 : 0);
  });

  it('a ruling that a colleague enters while the customer contests changes nothing it has not seen', async () => {
    const world = await makeWorkshop(NOW);
    const claim = await claimNotCovered(world);
    const version = await versionOf(claim.jobId);
    const contest = () =>
      attempt(() => contestRuling({ jobId: claim.jobId, text: 'It was not dropped.', now: LATER }));
    const [first, ruled, second] = await Promise.all([
      contest(),
      attempt(() => rule(claim.id, version)),
      contest(),
    ]);
    expect([first.ok, second.ok].filter(Boolean)).toHaveLength(1);
    expect(ruled.ok ? 'ruled' : ruled.refusal.code).toBe('conflict');
    const after = await db.claim.findUniqueOrThrow({ where: { id: claim.id } });
    expect([after.state, after.ruling, after.contestText]).toEqual(['open', null, 'It was not dropped.']);
    expect(await db.mail.count({ where: { jobId: claim.jobId, template: 'claim-contested' } })).toBe(1);
  });

  it('a reissue while a new claim opens keeps one certificate in force and one claim open', async () => {
    const world = await makeWorkshop(NOW);
    const certificate = await issuedCertificate(world, NOW);
    const claim = await claimJob(certificate);
    await takeIn(claim.jobId, LATER);
    await rule(claim.id, await versionOf(claim.jobId));
    await takeMove(claim.jobId, 'start-bench', LATER);
    await proved(world, claim.jobId, LATER);
    const [sent, again] = await Promise.all([
      attempt(() => sendBack(claim.jobId, LATER)),
      askForClaim(certificate, LATER),
    ]);
    expect(sent.ok).toBe(true);
    expect(await db.certificate.count({ where: { number: certificate, supersededAt: null } })).toBe(1);
    expect(
      await db.claim.count({ where: { certificateNumber: certificate, state: { not: 'closed' } } }),
    ).toBe(again.opened ? 1 : 0);
  });
});
