import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { askAboutClaim } from '@/lib/warranty/assess-claim';
import { inspect } from '@/lib/warranty/inspect';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { useDatabase } from '@/tests/database';
import { askClaim, jobNow, makeCertificate, makeClaim, moveTo, somePhoto, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, moveToAuckland, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

/** One letter of the certificate's HW2-10480-K misread. */
const CLOSE_SERIAL = 'HW2-1O48O-K';
// P12M from 3 December 2026 ends on Friday 3 December 2027; the policy of the makers gives 7 days of grace.
// In Auckland it begins at half past midnight and is over at 11:00 UTC.
const SENT = new Date('2026-12-02T11:30:00Z');
const RUNNING = new Date('2027-03-01T09:00:00Z');
const LAST_DAY = new Date('2027-12-03T10:59:00Z');
const DAY_AFTER = new Date('2027-12-03T11:00:00Z');
const IN_GRACE = new Date('2027-12-08T09:00:00Z');
const LAST_OF_GRACE = new Date('2027-12-10T10:59:00Z');
const AFTER_GRACE = new Date('2027-12-10T11:30:00Z');

let number = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  await moveToAuckland();
  const number = (await makeCertificate(world, SENT)).number;
  return { number };
});
beforeEach(async () => {
  ({ number } = await begin());
}, 60_000);

describe('the cover that is claimed', () => {
  it('runs from the day the unit left in the workshop’s zone', async () => {
    const lines = await db.certificateLine.findMany({ select: { startsOn: true } });
    expect(lines).toEqual([{ startsOn: new Date('2026-12-03T00:00:00Z') }]);
  });
});

describe('a claim with a serial that is close', () => {
  it('opens nothing without a photo, and asks for one', async () => {
    const asked = await askClaim({ number, serial: CLOSE_SERIAL, now: RUNNING });
    expect(asked.opened ? '' : asked.assessment.answer).toBe('confirm-serial');
    expect(asked.opened ? null : asked.assessment.nextStep).toEqual({ kind: 'send-serial-photo' });
    expect(await db.claim.count()).toBe(0);
  });

  it.each([
    ['while cover runs', RUNNING],
    ['late on the last day', LAST_DAY],
  ])('opens with a photo %s, and is not late', async (_name, now) => {
    const { number: claim } = await makeClaim({ number, serial: CLOSE_SERIAL, photos: [somePhoto()], now });
    const stored = await db.claim.findUniqueOrThrow({ where: { number: claim } });
    expect(stored.isLate).toBe(false);
    expect(stored.preliminary).toMatchObject({
      answer: 'confirm-serial',
      reasons: [{ code: 'serial-close' }, { code: 'line-covers' }],
    });
  });

  it.each([
    ['as soon as the last day is over', DAY_AFTER],
    ['in the days of grace', IN_GRACE],
    ['late on the last day of grace', LAST_OF_GRACE],
  ])('opens %s as late, so that a person decides', async (_name, now) => {
    const { number: claim } = await makeClaim({ number, serial: CLOSE_SERIAL, photos: [somePhoto()], now });
    const stored = await db.claim.findUniqueOrThrow({ where: { number: claim } });
    expect(stored.isLate).toBe(true);
    expect(stored.preliminary).toMatchObject({
      answer: 'confirm-serial',
      reasons: [{ code: 'serial-close' }, { code: 'in-grace' }, { code: 'rights-by-law' }],
    });
  });

  it('opens nothing once the grace is over, photo or not, and leads to a paid repair', async () => {
    const asked = await askClaim({
      number,
      serial: CLOSE_SERIAL,
      photos: [somePhoto()],
      now: AFTER_GRACE,
    });
    expect(asked).toMatchObject({
      opened: false,
      assessment: {
        answer: 'lapsed',
        nextStep: { kind: 'book-paid-repair' },
        reasons: [{ code: 'serial-close' }, { code: 'line-ended' }, { code: 'rights-by-law' }],
      },
    });
    expect(await db.claim.count()).toBe(0);
    expect(await db.job.count({ where: { kind: 'claim' } })).toBe(0);
  });

  it('is told so before a photo is asked for', async () => {
    const { assessment } = await askAboutClaim({
      certificateNumber: number,
      revision: null,
      serial: CLOSE_SERIAL,
      symptom: 'Does not charge',
      now: AFTER_GRACE,
    });
    expect(assessment.answer).toBe('lapsed');
  });

  it('opens no more than the right serial would where the fault is outside the cover', async () => {
    const ask = (serial: string) =>
      askClaim({ number, serial, symptom: 'Screen cracked', photos: [somePhoto()], now: RUNNING });
    const right = await ask('HW2-10480-K');
    const close = await ask(CLOSE_SERIAL);
    expect(right.opened ? '' : right.assessment.answer).toBe('outside-cover');
    expect(close.opened ? '' : close.assessment.answer).toBe('outside-cover');
  });

  it('is shown the claim that is open already instead of being asked for a photo again', async () => {
    await makeClaim({ number, now: RUNNING });
    const second = await askClaim({ number, serial: CLOSE_SERIAL, photos: [somePhoto()], now: RUNNING });
    expect(second.opened ? '' : second.assessment.answer).toBe('already-open');
    expect(await db.claim.count()).toBe(1);
  });
});

describe('a claim with the right serial', () => {
  it('is late in the days of grace', async () => {
    const { number: claim } = await makeClaim({ number, now: IN_GRACE });
    expect((await db.claim.findUniqueOrThrow({ where: { number: claim } })).isLate).toBe(true);
  });

  it('is not ruled on before somebody says whether it is let in', async () => {
    const claim = await makeClaim({ number, now: IN_GRACE });
    await takeIn(claim.jobId, IN_GRACE);
    await moveTo(claim.jobId, 'assess', IN_GRACE);
    const rule = async (isLetIn: boolean | null) =>
      ruleOnClaim({
        claimId: claim.claimId,
        jobVersion: (await jobNow(claim.jobId)).version,
        cause: 'workmanship',
        alsoFound: null,
        isEvidenceClear: true,
        mayTell: true,
        isLetIn,
        reasonText: 'A joint of ours cracked.',
        lesson: '',
        actor: BENCH,
        now: IN_GRACE,
      });
    await expect(rule(null)).rejects.toMatchObject({ code: 'invalid', field: 'letIn' });
    expect(await rule(true)).toEqual({ ruling: 'covered', isFinal: true });
    const stored = await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } });
    expect(stored.isLetIn).toBe(true);
  });

  it.each([
    ['workmanship', 'fault', 'You can have it repaired as a paid job'],
    ['no-fault-found', 'no-fault', 'We send the unit back as it is'],
  ] as const)('not let in is told that cover had ended: %s', async (cause, afterCover, what) => {
    const claim = await makeClaim({ number, now: IN_GRACE });
    await takeIn(claim.jobId, IN_GRACE);
    await moveTo(claim.jobId, 'assess', IN_GRACE);
    const photo = somePhoto();
    const look = { item: 'outside-damage', answer: 'yes', note: '', photo } as const;
    await inspect({ claimId: claim.claimId, ...look, actor: BENCH, now: IN_GRACE });
    const jobVersion = async () => (await jobNow(claim.jobId)).version;
    const ruled = {
      claimId: claim.claimId,
      isEvidenceClear: true,
      mayTell: false,
      alsoFound: null,
      lesson: '',
      now: IN_GRACE,
    };
    const reasonText = 'It came after the cover had ended.';
    await ruleOnClaim({
      ...ruled,
      cause,
      isLetIn: false,
      reasonText,
      jobVersion: await jobVersion(),
      actor: BENCH,
    });
    const stored = await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } });
    expect([stored.ruling, stored.isLetIn]).toEqual(['not-covered', false]);
    await takeSecondLook({
      claimId: claim.claimId,
      jobVersion: await jobVersion(),
      isConfirmed: true,
      actor: OWNER,
      now: IN_GRACE,
    });
    const mail = await db.mail.findFirstOrThrow({ where: { jobId: claim.jobId, template: 'claim-ruled' } });
    expect(mail.data).toMatchObject({ ruling: 'not-covered', afterCover });
    const letter = await drawMail(mail);
    expect(letter.text).toContain('The cover had ended when you opened this claim');
    expect(letter.text).toContain(what);
  });

  it('opens nothing after them', async () => {
    const asked = await askClaim({ number, now: AFTER_GRACE });
    expect(asked.opened ? '' : asked.assessment.answer).toBe('lapsed');
  });
});
