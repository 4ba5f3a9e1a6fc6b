import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { moveJob } from '@/lib/jobs/move';
import { cancelClaimWords } from '@/lib/jobs/rules/again-words';
import { drawMail } from '@/lib/mail/draw';
import { readClaimAgain } from '@/lib/warranty/stored-claim-again';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { askClaim, jobNow, makeCertificate, makeClaim } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

// P12M from 3 December 2026 ends on Friday 3 December 2027; the policy of the makers gives 7 days of grace.
const SENT = new Date('2026-12-03T16:00:00Z');
const RUNNING = new Date('2027-03-01T09:00:00Z');
const IN_GRACE = new Date('2027-12-08T09:00:00Z');
const AFTER = new Date('2027-12-11T00:30:00Z');

let number = '';
const begin = madeOnce(async () => ({
  number: (await makeCertificate(await makeWorkshop(SENT), SENT)).number,
}));
beforeEach(async () => {
  ({ number } = await begin());
}, 60_000);

const again = async (jobId: string, now: Date) => {
  const { claim } = await jobNow(jobId);
  if (!claim) throw new Error('not a claim');
  const workshop = await readWorkshop();
  return readClaimAgain(claim, { workshop, today: dayInZone(now, workshop.timeZone) });
};
const cancel = async (jobId: string, now: Date) => {
  await moveJob({ jobId, move: 'cancel', note: '', actor: { kind: 'customer' }, now });
  return (
    await drawMail(await db.mail.findFirstOrThrow({ where: { jobId, template: 'job-cancelled' } }))
  ).text.replace(/\s+/g, ' ');
};

describe('a claim opened in cover and given up', () => {
  it('while cover runs, can be opened again until its last day, and is told so', async () => {
    const { jobId } = await makeClaim({ number, now: RUNNING });
    expect(await again(jobId, RUNNING)).toEqual({
      endsOn: '2027-12-03',
      until: '2027-12-03',
      lateUntil: null,
    });
    expect(await cancel(jobId, RUNNING)).toContain(
      'claim again from your certificate until Friday 3 December 2027',
    );
    expect((await askClaim({ number, now: RUNNING })).opened).toBe(true);
  });

  it('in the days of grace, would only come back late', async () => {
    const { jobId } = await makeClaim({ number, now: RUNNING });
    expect(await again(jobId, IN_GRACE)).toEqual({
      endsOn: '2027-12-03',
      until: null,
      lateUntil: '2027-12-10',
    });
    expect(await cancel(jobId, IN_GRACE)).toContain('a person decides whether it is let in');
  });

  it('after them is lost, which is said before and after, and the mail sends nobody to the certificate', async () => {
    const { jobId } = await makeClaim({ number, now: RUNNING });
    const told = await cancel(jobId, AFTER);
    expect(told).toContain('you cannot claim this again from your certificate');
    expect(told).toContain('Your rights by law stay open');
    expect(told).not.toContain('You can claim again');
    expect((await askClaim({ number, now: AFTER })).opened).toBe(false);
  });
});

it('before it is cancelled the customer is told the day that would be lost', () => {
  const over = { endsOn: day('2027-12-03'), until: null, lateUntil: null };
  const words = (mayPost: boolean) =>
    cancelClaimWords({ countsFrom: day('2027-03-01'), claim: over, mayPost }, 'en-GB');
  expect(words(true)).toContain('counts from Monday 1 March 2027, however late the unit comes');
  expect(words(true)).toContain(
    'post it when it suits you. If you cancel it, that day is lost. Cover ended on',
  );
  expect(words(false)).not.toContain('post');
});
