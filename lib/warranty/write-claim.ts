import { randomUUID } from 'node:crypto';
import { cellsOf, recalledPieces } from '@/lib/bench/stored-recalls';
import { dayInZone, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { openJob } from '@/lib/jobs/open-job';
import type { AddressAnswers } from '@/lib/jobs/rules/address';
import type { DataAnswer } from '@/lib/jobs/rules/booking';
import { postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { writeCustomer } from '@/lib/jobs/write-customer';
import { writeEvent } from '@/lib/jobs/write-event';
import { type NewPhoto, writePhotos } from '@/lib/jobs/write-photos';
import { queueMail } from '@/lib/mail/queue';
import { newNumber } from '@/lib/numbers/draw';
import { showNumber } from '@/lib/numbers/job-number';
import { BY_CERTIFICATE } from '@/lib/quotes/rules/agreed';
import { bookedLine, coveredLines } from '@/lib/quotes/rules/lines';
import { taxCategory } from '@/lib/quotes/stored-lines';
import { readWorkshop } from '@/lib/workshop/records';
import { type Chain, repairOfCertificate, unitOfChain } from './records';
import type { Assessment } from './rules/reasons';
import { symptomWords } from './rules/standing';

/** What is told of a unit that failed again, whoever writes it down. */
export type ClaimTold = {
  serial: string;
  symptom: string;
  details: string;
  batteryAnswer: string;
  dataAnswer: DataAnswer;
  address: AddressAnswers;
  photos: readonly NewPhoto[];
  now: Date;
};

export type NewClaim = ClaimTold & {
  chain: Chain;
  /** the preliminary answer it is opened on */
  assessment: Assessment;
  isLate: boolean;
  /** the owner's, where cover had ended beyond the days of grace */
  reason?: string | undefined;
  /** the unit came before the claim was opened */
  isHere?: boolean;
  actor: Actor;
};

export type WrittenClaim = {
  claimNumber: string;
  jobId: string;
  jobNumber: string;
  /** of the job, as this left it */
  version: number;
  token: string;
};

/** Writes a claim on the certificate in force with its free-of-charge job, its event and its mail. */
export async function writeClaim(tx: Tx, o: NewClaim): Promise<WrittenClaim> {
  const { actor, assessment, isLate, address, reason } = o;
  const isByUs = actor.kind !== 'customer';
  const certificate = o.chain.inForce;
  const first = await repairOfCertificate(certificate.number, tx);
  const workshop = await readWorkshop(tx);
  const customer = await writeCustomer(tx, address, o.now);
  const shown = showNumber(certificate.number);
  const line = bookedLine({ ...first.repair, taxCategory: taxCategory.parse(first.repair.taxCategory) });
  const job = await openJob(tx, {
    kind: 'claim',
    customerId: customer.id,
    modelId: first.modelId,
    repairId: first.repairId,
    serial: o.serial,
    problem: [symptomWords(o.symptom), o.details].filter((text) => text !== '').join('. '),
    history: [],
    batteryAnswer: o.batteryAnswer,
    dataAnswer: o.dataAnswer,
    accessories: [],
    lines: coveredLines(line, shown),
    isGross: workshop.pricesIncludeTax,
    isInspectionFeeTakenOff: workshop.isInspectionFeeTakenOff,
    reason: `Claim on certificate ${shown}`,
    agreedText: `Free of charge under certificate ${shown}, subject to inspection.`,
    ...(isByUs && { decidedBy: BY_CERTIFICATE }),
    currency: workshop.currency,
    validDays: workshop.approvalDays,
    timeZone: workshop.timeZone,
    actor,
    now: o.now,
  });
  const claimNumber = newNumber('C');
  await tx.claim.create({
    data: {
      id: randomUUID(),
      number: claimNumber,
      certificateId: certificate.id,
      certificateNumber: certificate.number,
      jobId: job.id,
      state: 'open',
      openedOn: dayToDate(dayInZone(o.now, workshop.timeZone)),
      openedAt: o.now,
      isLate,
      symptom: o.symptom,
      details: o.details,
      preliminary: { ...assessment },
    },
  });
  await writePhotos(tx, {
    jobId: job.id,
    purpose: 'claim',
    photos: o.photos,
    actor,
    now: o.now,
  });
  const version = await writeEvent(tx, {
    jobId: job.id,
    actor,
    now: o.now,
    event: {
      kind: 'claim-opened',
      data: { claim: claimNumber, certificate: certificate.number, ...(reason && { reason }) },
    },
  });
  const cells = cellsOf(await recalledPieces(unitOfChain(o.chain), tx));
  const mustNotPost = !o.isHere && postedAnswer(first.model, o.batteryAnswer, cells).may === 'do-not-post';
  await queueMail(tx, {
    template: 'claim-opened',
    data: {
      claimNumber,
      certificateNumber: certificate.number,
      ...(isLate && { isLate }),
      ...(assessment.reasons.some(({ code }) => code === 'serial-close') && { isSerialClose: true }),
      ...(isByUs && { byUs: true }),
      ...(o.isHere && { isHere: true }),
      ...(mustNotPost && { mustNotPost }),
    },
    to: address.email,
    jobId: job.id,
    now: o.now,
  });
  return { claimNumber, jobId: job.id, jobNumber: job.number, version, token: job.token };
}
