import { recordCheck } from '@/lib/bench/record-check';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { arrive } from '@/lib/jobs/arrive';
import { moveJob, type PlainMove } from '@/lib/jobs/move';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { readJob } from '@/lib/jobs/records';
import { dispatch } from '@/lib/warranty/dispatch';
import { inspect } from '@/lib/warranty/inspect';
import { openClaim } from '@/lib/warranty/open-claim';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { type Cause, causeRow } from '@/lib/warranty/rules/causes';
import type { AlsoFound } from '@/lib/warranty/rules/ruling';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { ADDRESS, makeBooking, SERIAL } from './job';
import { BENCH, type makeWorkshop, OWNER } from './workshop';

type World = Awaited<ReturnType<typeof makeWorkshop>>;

/** The job as it stands; for tests that act on its newest version. */
export async function jobNow(jobId: string) {
  const job = await readJob({ id: jobId });
  if (!job) throw new Error('no such job');
  return job;
}

export async function moveTo(jobId: string, move: PlainMove, now: Date) {
  await moveJob({ jobId, version: (await jobNow(jobId)).version, move, note: '', actor: BENCH, now });
}

/** Takes the unit in, with the serial that was booked unless another was read from it. */
export async function takeIn(jobId: string, now: Date, serial?: string) {
  const job = await jobNow(jobId);
  return arrive({
    jobId,
    version: job.version,
    serial: serial ?? job.serialTyped,
    arrived: job.accessories.map((each) => each.name),
    extra: [],
    photos: [],
    actor: BENCH,
    now,
  });
}

/** From the bench to ready: work, both checks of the sheet passed. */
export async function proveJob(jobId: string, world: World, now: Date) {
  await recordWork({ jobId, text: 'Socket replaced, anchors soldered', minutes: 45, actor: BENCH, now });
  await moveTo(jobId, 'prove', now);
  await recordCheck({ jobId, checkId: world.voltage, given: { reading: 5.02 }, note: '', actor: BENCH, now });
  await recordCheck({ jobId, checkId: world.tilt, given: { tick: true }, note: '', actor: BENCH, now });
  await moveTo(jobId, 'pass-checks', now);
}

export async function sendBack(jobId: string, now: Date) {
  const { version } = await jobNow(jobId);
  const handover = { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'HP-2201' } as const;
  return dispatch({ jobId, version, handover, postage: 420, actor: BENCH, now });
}

/**
 * A repair booked, done with so many single pieces of the lot and one of each other lot given, paid and sent back on one day;
 * gives its certificate's number.
 */
export async function makeCertificate(
  world: World,
  now: Date,
  serial = SERIAL,
  pieces = 0,
  others: readonly string[] = [],
) {
  const { jobId } = await makeBooking({ repairId: world.repairId, now, serial });
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await moveTo(jobId, 'start-bench', now);
  for (const lotId of [...Array<string>(pieces).fill(world.lotId), ...others]) {
    const { version } = await jobNow(jobId);
    await usePartOnJob({ jobId, version, lotId, quantity: 1, actor: BENCH, now });
  }
  await proveJob(jobId, world, now);
  const amount = (await jobNow(jobId)).quotes[0]?.revisions[0]?.grossMinor ?? 0;
  const receivedOn = day(now.toISOString().slice(0, 10));
  await recordPayment({
    jobId,
    amount,
    method: 'bank transfer',
    reference: '',
    receivedOn,
    actor: BENCH,
    now,
  });
  const { certificate } = await sendBack(jobId, now);
  if (!certificate) throw new Error('no certificate was issued');
  return { number: certificate.number, jobId };
}

export type ClaimAsked = {
  number: string;
  now: Date;
  serial?: string;
  symptom?: string;
  photos?: Parameters<typeof openClaim>[0]['photos'];
};

export function askClaim(o: ClaimAsked) {
  return openClaim({
    certificateNumber: o.number,
    revision: null,
    serial: o.serial ?? SERIAL,
    symptom: o.symptom ?? 'Does not charge',
    details: '',
    batteryAnswer: 'healthy',
    dataAnswer: 'saved',
    address: ADDRESS,
    photos: o.photos ?? [],
    now: o.now,
  });
}

/** Opens a claim and gives its ids; throws when none was opened. */
export async function makeClaim(o: ClaimAsked) {
  const opened = await askClaim(o);
  if (!opened.opened) throw new Error(`no claim was opened: ${opened.assessment.answer}`);
  const claim = await db.claim.findUniqueOrThrow({
    where: { number: opened.claimNumber },
    select: { id: true, jobId: true, number: true },
  });
  return { claimId: claim.id, jobId: claim.jobId, number: claim.number, token: opened.token };
}

/**
 * Rules on a claim that is being assessed. Anything but a plain covered gets its photo and the owner's second look, so that it is
 * final and told.
 */
export async function ruleClaim(
  { claimId, jobId }: { claimId: string; jobId: string },
  o: { cause: Cause; alsoFound?: AlsoFound | null; now: Date },
) {
  const { cause, now, alsoFound = null } = o;
  const version = async () => (await jobNow(jobId)).version;
  const needsMore = causeRow(cause).ruling !== 'covered' || alsoFound !== null;
  const photo = somePhoto();
  const look = { item: 'outside-damage', answer: 'yes', note: '', photo } as const;
  if (needsMore) await inspect({ claimId, ...look, actor: BENCH, now });
  await ruleOnClaim({
    claimId,
    jobVersion: await version(),
    cause,
    alsoFound,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'The photo shows what we found on the unit.',
    lesson: '',
    actor: BENCH,
    now,
  });
  if (needsMore)
    await takeSecondLook({ claimId, jobVersion: await version(), isConfirmed: true, actor: OWNER, now });
}

let made = 0;

/** A photo as the store hands it over; its file is never read. */
export function somePhoto() {
  made += 1;
  const key = `photos/made-${made}`;
  return { fileKey: key, thumbKey: `${key}-thumb`, sha256: String(made), width: 640, height: 480 };
}
