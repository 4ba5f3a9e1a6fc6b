import { dayInZone, dayToDate } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import { balanceOf } from '@/lib/invoices/rules/balance';
import type { Actor } from '@/lib/jobs/actor';
import { requireMove } from '@/lib/jobs/facts';
import { type JobRecord, readJob, staffNames } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { checkS10 } from '@/lib/numbers/s10';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import { carriersInUse } from '@/lib/parcels/records';
import { problemSentences } from '@/lib/parcels/rules/carrier-sentences';
import { askCarrier, findCarrier, trackingAddress } from '@/lib/parcels/rules/carriers';
import { batteryOfModel, type ParcelFacts, parcelToAsk, readParcel } from '@/lib/parcels/stored-parcel';
import { writeParcel } from '@/lib/parcels/write-parcel';
import { writeWatch } from '@/lib/returns/write-watch';
import { readCalendar, readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { missingSettings, missingWords } from '@/lib/workshop/rules/missing-settings';
import { type DrawnCertificate, drawPlan } from './draw-plan';
import { type CertificatePlan, planWarranty, type WarrantyPlan } from './plan-certificate';
import { closeClaim } from './write-closed-claim';

export type Dispatch = {
  jobId: string;
  version: number;
  carrier: string;
  carrierReference: string;
  /** what the workshop paid for the parcel, minor units; kept as cost of a claim */
  postage: number;
  /** the parcel as it is packed; absent: as it is kept already */
  parcel?: ParcelFacts;
  actor: Extract<Actor, { id: string }>;
  now: Date;
};

/**
 * Sends a unit back and issues its certificate.
 *
 * Drawing and storing the document takes longer than a transaction should be open, so it is done first, on the
 * version the person saw. The transaction then names that version: whoever presses second, or presses after the job
 * changed, writes nothing, and the file drawn for nothing is removed. Any other failure leaves the file: when a
 * connection breaks at the commit, nobody knows whether the certificate was issued, and then its document must be there.
 */
export async function dispatch(
  o: Dispatch,
): Promise<{ certificate: { number: string; revision: number } | null }> {
  const job = await readJob({ id: o.jobId });
  if (!job) throw new Refusal('not-found', 'There is no such job.');
  if (job.version !== o.version) {
    throw new Refusal('conflict', 'This job changed while you had it open. Nothing was sent back.');
  }
  const reference = checkS10(o.carrierReference);
  if (reference.form === 's10' && !reference.valid) {
    throw new Refusal(
      'invalid',
      'This looks like a postal reference, and one character looks wrong. Check it against the receipt.',
      'carrierReference',
    );
  }
  requireMove({ ...job, carrier: o.carrier, carrierReference: o.carrierReference }, 'dispatch', o.actor);

  const workshop = await readWorkshop();
  await requireCarrier(job, o, workshop);
  const calendar = await readCalendar(workshop, dayInZone(o.now, workshop.timeZone));
  const plan = await planWarranty(job, { now: o.now, timeZone: workshop.timeZone, calendar });
  if (plan.certificate) requireGuarantor(workshop);
  const drawn = plan.certificate
    ? await drawPlan(plan.certificate, job, { workshop, staff: await staffNames(), now: o.now })
    : null;
  try {
    await transaction((tx) => write(tx, { ...o, job, plan, drawn }));
  } catch (error) {
    // A file that cannot be removed just now goes when lib/keeping/write-left-files.ts comes by.
    if (drawn && error instanceof Refusal) await deleteFile(drawn.fileKey).catch(() => {});
    throw error;
  }
  const { certificate } = plan;
  return { certificate: certificate && { number: certificate.number, revision: certificate.revision } };
}

/** A carrier of the workshop's list is asked before it is given the parcel; one that is typed by hand has no limits here. */
async function requireCarrier(job: JobRecord, o: Dispatch, money: WorkshopCard): Promise<void> {
  const carrier = findCarrier(o.carrier, await carriersInUse());
  if (!carrier) return;
  const answer = askCarrier(carrier, parcelToAsk(o.parcel ?? readParcel(job), batteryOfModel(job)));
  const sentences = problemSentences(answer, money);
  if (sentences.length > 0) throw new Refusal('invalid', sentences.join(' '), 'carrier');
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
  const { owed } = balanceOf(job);
  const tracking = trackingAddress(o.carrier, o.carrierReference, await carriersInUse(tx));
  const version = o.parcel ? await writeParcel(tx, { ...o, parcel: o.parcel }) : o.version;
  await writeEvent(tx, {
    jobId: job.id,
    actor: o.actor,
    now: o.now,
    expected: { version, stages: moveOf('dispatch').from },
    set: { carrier: o.carrier, carrierReference: o.carrierReference, sentBackAt: o.now },
    from: 'ready',
    to: 'sent-back',
    event: {
      kind: 'sent-back',
      data: {
        carrier: o.carrier,
        reference: o.carrierReference,
        certificate: plan.certificate?.number ?? null,
      },
    },
  });
  await writeHeld(tx, o);
  await closeClaim(tx, job, o);
  if (plan.certificate && drawn) await writeCertificate(tx, plan.certificate, drawn, o);
  await writeWatch(
    tx,
    [job.claim?.certificateNumber, plan.certificate?.number].filter((number) => number !== undefined),
  );
  await queueMail(tx, {
    template: 'unit-sent-back',
    data: {
      carrier: o.carrier,
      carrierReference: o.carrierReference,
      certificateNumber: plan.certificate?.number ?? null,
      revision: plan.certificate?.revision ?? null,
      ...(tracking && { tracking }),
      ...(owed > 0 && { owed }),
    },
    to: job.customer.email,
    jobId: job.id,
    now: o.now,
  });
}

async function writeHeld(tx: Tx, { job, plan }: DispatchWrite): Promise<void> {
  if (!job.claim || !plan.heldNow) return;
  await tx.heldInterval.create({
    data: {
      certificateNumber: job.claim.certificateNumber,
      claimNumber: plan.heldNow.claimNumber,
      fromDay: dayToDate(plan.heldNow.from),
      toDay: dayToDate(plan.heldNow.to),
    },
  });
}

async function writeCertificate(
  tx: Tx,
  plan: CertificatePlan,
  drawn: DrawnCertificate,
  o: DispatchWrite,
): Promise<void> {
  if (plan.replaces) {
    const { count } = await tx.certificate.updateMany({
      where: { id: plan.replaces.id, supersededAt: null },
      data: { supersededAt: o.now },
    });
    if (count === 0)
      throw new Refusal('conflict', 'This certificate was reissued meanwhile. Nothing was sent back.');
  }
  await tx.certificate.create({
    data: {
      number: plan.number,
      revision: plan.revision,
      jobId: o.job.id,
      policyVersionId: plan.policyVersionId,
      modelName: `${o.job.model.maker} ${o.job.model.name}`,
      serialTyped: o.job.serialTyped,
      serialKey: foldSerial(o.job.serialTyped),
      issuedAt: o.now,
      issuedOn: dayToDate(drawn.issuedOn),
      endsOn: dayToDate(drawn.endsOn),
      keyId: drawn.keyId,
      signature: drawn.token,
      fileKey: drawn.fileKey,
      sha256: drawn.sha256,
      lines: {
        create: plan.lines.map((line, position) => ({
          position,
          key: line.id,
          kind: line.kind,
          description: line.description,
          symptoms: line.symptoms,
          term: line.term,
          startsOn: dayToDate(line.startsOn),
          renewedUntil: line.renewedUntil ? dayToDate(line.renewedUntil) : null,
          endsOn: dayToDate(drawn.ends.get(line.id) ?? drawn.endsOn),
          lotId: plan.lots.get(line.id) ?? null,
        })),
      },
    },
  });
}
