import { holdLotsOf } from '@/lib/bench/write-lot-hold';
import { dayInZone, dayToDate } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import { balanceOf } from '@/lib/invoices/rules/balance';
import type { OnJob } from '@/lib/jobs/actor';
import { asShown, requireMove } from '@/lib/jobs/facts';
import { type JobRecord, readJob, staffNames } from '@/lib/jobs/records';
import { type Handover, isHandoverNamed, isNotGone, wasAway } from '@/lib/jobs/rules/handover';
import { moveOf } from '@/lib/jobs/rules/stages';
import { recalledInUnit, unitOfJob } from '@/lib/jobs/stored-recall';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { carriersInUse } from '@/lib/parcels/records';
import { trackingAddress } from '@/lib/parcels/rules/carriers';
import type { ParcelFacts } from '@/lib/parcels/stored-parcel';
import { readTransitDays } from '@/lib/parcels/stored-transit';
import { writeParcel } from '@/lib/parcels/write-parcel';
import { writeWatch } from '@/lib/returns/write-watch';
import { readCalendar, readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { missingSettings, missingWords } from '@/lib/workshop/rules/missing-settings';
import { type DrawnCertificate, drawPlan } from './draw-plan';
import { planWarranty, type WarrantyPlan } from './plan-certificate';
import { requireCarrier, requireReference } from './require-carrier';
import { coveredUntilFact } from './stored-cover-ends';
import { writeCertificate } from './write-certificate';
import { closeClaim } from './write-closed-claim';

export type Dispatch = OnJob & {
  handover: Handover;
  /** what the workshop paid for the parcel, minor units; kept as cost of a claim */
  postage: number;
  /** the parcel as it is packed; absent: as it is kept already */
  parcel?: ParcelFacts;
};

/**
 * Sends a unit back and issues its certificate. One that its customer collects is theirs at once: its job is closed in
 * the same transaction.
 *
 * Drawing and storing the document takes longer than a transaction should be open, so it is done first, on the
 * version the person saw. The transaction then names that version: whoever presses second, or presses after the job
 * changed, writes nothing, and the file drawn for nothing is removed. Any other failure leaves the file: when a
 * connection breaks at the commit, nobody knows whether the certificate was issued, and then its document must be there.
 */
export async function dispatch(
  o: Dispatch,
): Promise<{ certificate: { number: string; revision: number } | null }> {
  const job = asShown(await readJob({ id: o.jobId }), o.version, 'Nothing was sent back.');
  requireReference(o.handover);
  await requireDispatch(job, o);

  const workshop = await readWorkshop();
  const handover = await requireCarrier(job, o, workshop);
  const isCollected = handover.by === 'collected';
  const calendar = await readCalendar(workshop, dayInZone(o.now, workshop.timeZone));
  const plan = await planWarranty(job, {
    now: o.now,
    timeZone: workshop.timeZone,
    calendar,
    transitDays: await readTransitDays(job, handover, workshop),
  });
  if (plan.certificate) requireGuarantor(workshop);
  const drawn = plan.certificate
    ? await drawPlan(plan.certificate, job, { workshop, staff: await staffNames(), isCollected, now: o.now })
    : null;
  try {
    await transaction((tx) => write(tx, { ...o, handover, job, plan, drawn }));
  } catch (error) {
    // A file that cannot be removed just now goes when lib/keeping/write-left-files.ts comes by.
    if (drawn && error instanceof Refusal) await deleteFile(drawn.fileKey).catch(() => {});
    throw error;
  }
  const { certificate } = plan;
  return { certificate: certificate && { number: certificate.number, revision: certificate.revision } };
}

/** Asked of every job's pieces in the unit, since a claim carries none itself. */
async function requireDispatch(job: JobRecord, { actor, handover }: Dispatch, tx?: Tx): Promise<void> {
  requireMove(job, 'dispatch', actor, null, {
    isHandoverNamed: isHandoverNamed(handover),
    recalledParts: await recalledInUnit(job, tx),
  });
}

/** A certificate names who stands behind it and where it holds (Directive (EU) 2019/771 Art. 17(2)(b), (e)). */
function requireGuarantor(workshop: WorkshopCard): void {
  const missing = missingSettings(workshop, 'certificate');
  if (missing.length === 0) return;
  throw new Refusal(
    'invalid',
    `No certificate can be issued yet. Missing under Settings, Details: ${missingWords(missing)}. The owner fills it in.`,
  );
}

type DispatchWrite = Dispatch & { job: JobRecord; plan: WarrantyPlan; drawn: DrawnCertificate | null };

async function write(tx: Tx, o: DispatchWrite): Promise<void> {
  const { job, plan, drawn } = o;
  // A lot recalled meanwhile is written to the job that fitted the piece, so that the version of this one says nothing of it.
  await holdLotsOf(tx, unitOfJob(job));
  await requireDispatch(job, o, tx);
  const { owed } = balanceOf(job);
  const isCollected = o.handover.by === 'collected';
  const { carrier, carrierReference } =
    o.handover.by === 'carrier' ? o.handover : { carrier: '', carrierReference: '' };
  const tracking = trackingAddress(carrier, carrierReference, await carriersInUse(tx));
  const packed = o.parcel ? await writeParcel(tx, { ...o, parcel: o.parcel }) : o.version;
  const version = await writeEvent(tx, {
    jobId: job.id,
    actor: o.actor,
    now: o.now,
    expected: { version: packed, stages: moveOf('dispatch').from },
    set: { carrier, carrierReference, sentBackAt: o.now },
    from: 'ready',
    to: 'sent-back',
    event: {
      kind: 'sent-back',
      data: {
        carrier,
        reference: carrierReference,
        certificate: plan.certificate?.number ?? null,
        ...(isCollected && { isCollected }),
        ...(job.claim && o.postage > 0 && { postage: o.postage }),
      },
    },
  });
  if (isCollected) await writeClosed(tx, { ...o, version });
  await writeHeld(tx, o);
  await closeClaim(tx, job, o);
  if (plan.certificate && drawn) await writeCertificate(tx, plan.certificate, drawn, o);
  await writeWatch(
    tx,
    [
      job.claim?.certificateNumber,
      plan.certificate?.number,
      ...plan.held.map(({ certificateNumber }) => certificateNumber),
    ].filter((number) => number !== undefined),
  );
  const isAgain = wasAway(job.events);
  const isAfterMistake = isNotGone(job.events);
  const standing = job.certificates.at(-1);
  await queueMail(tx, {
    template: 'unit-sent-back',
    data: {
      carrier,
      carrierReference,
      certificateNumber: plan.certificate?.number ?? standing?.number ?? null,
      revision: plan.certificate?.revision ?? standing?.revision ?? null,
      ...(isAgain && { isAgain }),
      ...(isAfterMistake && { isAfterMistake }),
      ...(standing && (await coveredUntilFact(standing, tx))),
      ...(tracking && { tracking }),
      ...(owed > 0 && { owed }),
      ...(isCollected && { isCollected }),
    },
    to: job.customer.email,
    jobId: job.id,
    now: o.now,
  });
}

/** The unit is with its customer: there is no delivery to wait for. */
async function writeClosed(tx: Tx, o: DispatchWrite): Promise<void> {
  const { from, to } = moveOf('close');
  await writeEvent(tx, {
    jobId: o.job.id,
    actor: o.actor,
    now: o.now,
    expected: { version: o.version, stages: from },
    set: { closedAt: o.now },
    from: 'sent-back',
    to,
    event: { kind: 'moved', data: { move: 'close', note: 'Closed: the unit is with the customer' } },
  });
}

/** A stay that is kept already ends later: its unit leaves for the second time. */
async function writeHeld(tx: Tx, { plan }: DispatchWrite): Promise<void> {
  for (const { certificateNumber, claimNumber, from, to, isByMistake = false } of plan.held) {
    const toDay = dayToDate(to);
    await tx.heldInterval.upsert({
      where: { claimNumber },
      create: { certificateNumber, claimNumber, fromDay: dayToDate(from), toDay, isByMistake },
      update: { toDay },
    });
  }
}
