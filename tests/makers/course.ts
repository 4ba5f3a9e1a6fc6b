import { recordCheck } from '@/lib/bench/record-check';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { arrive } from '@/lib/jobs/arrive';
import { moveJob, type PlainMove } from '@/lib/jobs/move';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import { dispatch } from '@/lib/warranty/dispatch';
import { openClaim } from '@/lib/warranty/open-claim';
import { ADDRESS, makeBooking, SERIAL } from './job';
import { BENCH, type makeWorkshop } from './workshop';

type World = Awaited<ReturnType<typeof makeWorkshop>>;

export async function versionOf(jobId: string): Promise<number> {
  return (await db.job.findUniqueOrThrow({ where: { id: jobId }, select: { version: true } })).version;
}

export async function takeMove(jobId: string, move: PlainMove, now: Date, note = ''): Promise<void> {
  await moveJob({ jobId, version: await versionOf(jobId), move, note, actor: BENCH, now });
}

/** Lets a job wait for a part that is not on the list. */
export async function waitForPart(jobId: string, now: Date, name = 'Long display'): Promise<void> {
  const parts = [{ name, quantity: 1 }];
  await waitForParts({ jobId, version: await versionOf(jobId), parts, expectedOn: null, actor: BENCH, now });
}

export async function takeIn(jobId: string, now: Date): Promise<void> {
  await arrive({
    jobId,
    version: await versionOf(jobId),
    serial: SERIAL,
    arrived: ['Power supply'],
    extra: [],
    photos: [],
    actor: BENCH,
    now,
  });
  await takeMove(jobId, 'assess', now);
}

/** A job booked, taken in and being assessed. */
export async function assessedJob(world: World, now: Date): Promise<string> {
  const { jobId } = await makeBooking({ repairId: world.repairId, now });
  await takeIn(jobId, now);
  return jobId;
}

/** From the bench to ready: work recorded and every check passed. */
export async function proved(world: World, jobId: string, now: Date): Promise<void> {
  await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now });
  await takeMove(jobId, 'prove', now);
  await recordCheck({ jobId, checkId: world.voltage, given: { reading: 5 }, note: '', actor: BENCH, now });
  await recordCheck({ jobId, checkId: world.tilt, given: { tick: true }, note: '', actor: BENCH, now });
  await takeMove(jobId, 'pass-checks', now);
}

/** A paid job that is ready to go back. */
export async function readyJob(world: World, now: Date): Promise<string> {
  const jobId = await assessedJob(world, now);
  await takeMove(jobId, 'start-bench', now);
  await proved(world, jobId, now);
  await recordPayment({
    jobId,
    amount: 7200,
    method: 'card',
    reference: '',
    receivedOn: day(now.toISOString().slice(0, 10)),
    actor: BENCH,
    now,
  });
  return jobId;
}

export async function sendBack(jobId: string, now: Date) {
  return dispatch({
    jobId,
    version: await versionOf(jobId),
    handover: { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'HP-1001' },
    postage: 0,
    actor: BENCH,
    now,
  });
}

/** The number of a certificate in force, issued for a finished job. */
export async function issuedCertificate(world: World, now: Date): Promise<string> {
  const { certificate } = await sendBack(await readyJob(world, now), now);
  if (!certificate) throw new Error('no certificate was issued');
  return certificate.number;
}

export function askForClaim(certificateNumber: string, now: Date, over: { serial?: string } = {}) {
  return openClaim({
    certificateNumber,
    revision: null,
    serial: over.serial ?? SERIAL,
    symptom: 'Does not charge',
    details: '',
    batteryAnswer: 'healthy',
    dataAnswer: 'saved',
    address: ADDRESS,
    photos: [],
    now,
  });
}
