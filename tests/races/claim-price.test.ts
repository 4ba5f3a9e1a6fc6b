import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { inspect } from '@/lib/warranty/inspect';
import { learnFromClaim } from '@/lib/warranty/learn';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { resetDatabase, useDatabase } from '@/tests/database';
import { jobNow, makeCertificate, makeClaim, moveTo, somePhoto, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let claim: { claimId: string; jobId: string };

/** A claim ruled partly covered and agreed to by the owner. */
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT);
  claim = await makeClaim({ number, now: NOW });
  const { claimId, jobId } = claim;
  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  const photo = somePhoto();
  await inspect({ claimId, item: 'outside-damage', answer: 'no', note: '', photo, actor: BENCH, now: NOW });
  await ruleOnClaim({
    claimId,
    jobVersion: (await jobNow(jobId)).version,
    cause: 'workmanship',
    alsoFound: 'separate-fault',
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'A joint of ours cracked, and a fader has worn out beside it.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
  const { version } = await jobNow(jobId);
  await takeSecondLook({ claimId, jobVersion: version, isConfirmed: true, actor: OWNER, now: NOW });
}, 60_000);

describe('the price for the rest of a claim, whoever races', () => {
  it('yes and no pressed at once leave one answer, and the covered part goes on the bench', async () => {
    const { jobId } = claim;
    await writeOffer({
      jobId,
      version: (await jobNow(jobId)).version,
      lines: [{ kind: 'labour', description: 'Fader replaced', amount: 2400, category: 'S', rateBps: 2000 }],
      reason: 'The fader has worn out.',
      onYes: '',
      onNo: '',
      actor: OWNER,
      now: NOW,
    });
    await moveTo(jobId, 'ask-approval', NOW);
    const press = (decision: 'accepted' | 'declined') =>
      attempt(() => decideOffer({ jobId, revision: 2, decision, actor: { kind: 'customer' }, now: NOW }));
    const outcomes = await Promise.all([press('declined'), press('accepted'), press('declined')]);
    const job = await jobNow(jobId);
    const answered = job.quotes[0]?.revisions.find((revision) => revision.revision === 2)?.state;
    expect(job.stage).toBe('on-bench');
    expect(factsOf(job).owed).toBe(answered === 'accepted' ? 2400 : 0);
    expect(job.quotes[0]?.revisions.filter(({ state }) => state === 'accepted')).toHaveLength(1);
    expect(job.events.filter(({ kind }) => kind === 'offer-decided')).toHaveLength(1);
    expect(outcomes.some((outcome) => outcome.ok)).toBe(true);
    expect(outcomes.some((outcome) => !outcome.ok)).toBe(true);
  });
});

describe('lessons, whoever races', () => {
  it('of four taught at once from one version one is on the sheet, and three are told that it moved on', async () => {
    const teach = (label: string) =>
      attempt(() =>
        learnFromClaim({
          claimId: claim.claimId,
          repairId: world.repairId,
          basedOn: 1,
          check: {
            kind: 'tick',
            label,
            help: '',
            unit: null,
            low: null,
            high: null,
            choices: [],
            passing: [],
            lesson: null,
            caution: null,
          },
          replaces: null,
          actor: BENCH,
          now: NOW,
        }),
      );
    const outcomes = await Promise.all(['Cold', 'Warm', 'Tilted', 'Pulled'].map(teach));
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : []))).toEqual([2]);
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]))).toEqual([
      'conflict',
      'conflict',
      'conflict',
    ]);
    expect(await db.checkSheet.count({ where: { repairId: world.repairId } })).toBe(2);
    expect(await db.jobEvent.count({ where: { jobId: claim.jobId, kind: 'check-taught' } })).toBe(1);
  });
});
