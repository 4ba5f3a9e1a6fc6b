import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { erasePerson } from '@/lib/keeping/erase-person';
import { sweepPeople } from '@/lib/keeping/write-sweep';
import { useDatabase } from '@/tests/database';
import {
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  takeIn,
} from '@/tests/makers/walk';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const on = (text: string) => new Date(`${text}T10:00:00Z`);

const begin = madeOnce(async () => {
  const world = await makeWorkshop(on('2027-01-11'));
  await db.workshop.update({ where: { id: 1 }, data: { keepMonths: 6 } });
  const certificate = await makeCertificate(world, on('2027-01-11'));
  await clockRound(on('2027-02-15'));
  return { world, number: certificate.number, firstJobId: certificate.jobId };
});
let made: Awaited<ReturnType<typeof begin>>;
beforeEach(async () => {
  made = await begin();
}, 60_000);

const nameOn = async (jobId: string) =>
  (await db.job.findUniqueOrThrow({ where: { id: jobId }, select: { customer: true } })).customer.name;

describe('cover of a certificate number', () => {
  it('keeps the first booking after a claim renewed it, until the revision in force has ended', async () => {
    // Another person holds the unit by now, and the claim is booked under their name.
    const claim = await makeClaim({ number: made.number, now: on('2027-09-01') });
    await takeIn(claim.jobId, on('2027-09-06'));
    await moveTo(claim.jobId, 'assess', on('2027-09-06'));
    await ruleClaim(claim, { cause: 'workmanship', now: on('2027-09-07') });
    await moveTo(claim.jobId, 'start-bench', on('2027-09-07'));
    await proveJob(claim.jobId, made.world, on('2027-09-08'));
    expect((await sendBack(claim.jobId, on('2027-09-10'))).certificate).toMatchObject({ revision: 2 });
    await clockRound(on('2027-10-15'));

    // Sent on Friday 10 September, there by the 17th. P12M from 11 January 2027 and 16 days given back end on 27 January 2028, a
    // Thursday; 7 days of grace on 3 February.
    for (const day of ['2027-10-15', '2028-01-12', '2028-02-03']) expect(await sweepPeople(on(day))).toBe(0);
    expect(await nameOn(made.firstJobId)).toBe('Maren Holt');
    // The claim's own booking is kept half a year after it was closed, the first one no longer.
    expect(await sweepPeople(on('2028-02-04'))).toBe(1);
    expect(await nameOn(made.firstJobId)).toBe('Data removed');
    expect(await nameOn(claim.jobId)).toBe('Maren Holt');
  }, 60_000);

  it('keeps it while a claim on the number is open, however long ago cover ended', async () => {
    const claim = await makeClaim({ number: made.number, now: on('2028-01-10') });
    await db.customer.updateMany({
      where: { jobs: { some: { id: claim.jobId } } },
      data: { email: 'ines.farrow@example.org', name: 'Ines Farrow' },
    });
    expect(await sweepPeople(on('2028-06-01'))).toBe(0);
    const { number } = await db.job.findUniqueOrThrow({ where: { id: made.firstJobId } });
    const erase = { number, isCoverConfirmed: true, actor: OWNER, now: on('2028-06-01') };
    await expect(erasePerson(erase)).rejects.toMatchObject({ code: 'conflict' });
    expect(await nameOn(made.firstJobId)).toBe('Maren Holt');

    await moveTo(claim.jobId, 'cancel', on('2028-06-02'));
    expect(await sweepPeople(on('2028-06-03'))).toBe(1);
    expect(await nameOn(made.firstJobId)).toBe('Data removed');
  }, 60_000);
});
