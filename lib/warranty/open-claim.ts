import { randomUUID } from 'node:crypto';
import type { z } from 'zod';
import { dayInZone, dayToDate } from '@/lib/calendar/day';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { openJob } from '@/lib/jobs/open-job';
import type { addressAnswers } from '@/lib/jobs/rules/booking';
import { writeEvent } from '@/lib/jobs/write-event';
import { type NewPhoto, writePhotos } from '@/lib/jobs/write-photos';
import { queueMail } from '@/lib/mail/queue';
import { newNumber } from '@/lib/numbers/draw';
import { showNumber } from '@/lib/numbers/job-number';
import { bookedLine, coveredLines } from '@/lib/quotes/rules/lines';
import { taxCategory } from '@/lib/quotes/stored-lines';
import { readWorkshop } from '@/lib/workshop/records';
import { assessClaim } from './assess-claim';
import type { Assessment } from './rules/reasons';
import { symptomWords } from './rules/standing';

export type ClaimRequest = {
  certificateNumber: string;
  /** the revision printed on the paper the customer holds; the one in force when not given */
  revision: number | null;
  serial: string;
  symptom: string;
  details: string;
  batteryAnswer: string;
  address: z.output<typeof addressAnswers>;
  photos: readonly NewPhoto[];
  now: Date;
};

export type OpenedClaim =
  | { opened: true; claimNumber: string; jobNumber: string; token: string }
  | { opened: false; assessment: Assessment };

/**
 * Answers that open a claim: in cover, in the days of grace (a person decides), or a serial a person must confirm. The
 * last is only given where the right serial would open one too (rules/behind-serial.ts).
 */
export function opensClaim(assessment: Assessment, hasPhoto: boolean): boolean {
  switch (assessment.answer) {
    case 'covered-subject-to-inspection':
      return true;
    case 'lapsed':
      return assessment.nextStep?.kind === 'ask-a-person';
    case 'confirm-serial':
      return hasPhoto;
    default:
      return false;
  }
}

/**
 * Opens a claim and its free-of-charge job, or says why not.
 *
 * Two people may open a claim on one certificate at the same moment, for instance from the paper and from the mail.
 * The answer is worked out again inside the transaction, and where both still pass, the database's index of one open
 * claim a certificate lets the first in; the loser is told that a claim is open.
 */
export async function openClaim(o: ClaimRequest): Promise<OpenedClaim> {
  try {
    return await transaction((tx) => open(tx, o));
  } catch (error) {
    if (!isUniqueViolation(error, 'claim_one_open_per_certificate')) throw error;
    const { assessment } = await transaction((tx) => assessClaim(tx, o));
    return { opened: false, assessment };
  }
}

async function open(tx: Tx, o: ClaimRequest): Promise<OpenedClaim> {
  const { assessment, chain, isLate } = await assessClaim(tx, o);
  if (!chain || !opensClaim(assessment, o.photos.length > 0)) return { opened: false, assessment };

  const certificate = chain.inForce;
  const first = await tx.job.findUniqueOrThrow({
    where: { id: certificate.jobId },
    select: { modelId: true, repairId: true, repair: true },
  });
  const workshop = await readWorkshop(tx);
  const { address } = o;
  const customer = await tx.customer.create({
    data: {
      name: address.name,
      email: address.email,
      phone: address.phone,
      addressLines: [address.address1, address.address2].filter((line) => line !== ''),
      postcode: address.postcode,
      town: address.town,
      country: address.country,
      createdAt: o.now,
    },
    select: { id: true },
  });
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
    dataAnswer: 'none',
    accessories: [],
    lines: coveredLines(line, shown),
    isGross: workshop.pricesIncludeTax,
    isInspectionFeeTakenOff: workshop.isInspectionFeeTakenOff,
    reason: `Claim on certificate ${shown}`,
    agreedText: `Free of charge under certificate ${shown}, subject to inspection.`,
    currency: workshop.currency,
    validDays: workshop.approvalDays,
    timeZone: workshop.timeZone,
    actor: { kind: 'customer' },
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
    actor: { kind: 'customer' },
    now: o.now,
  });
  await writeEvent(tx, {
    jobId: job.id,
    actor: { kind: 'customer' },
    now: o.now,
    event: { kind: 'claim-opened', data: { claim: claimNumber, certificate: certificate.number } },
  });
  await queueMail(tx, {
    template: 'claim-opened',
    data: {
      claimNumber,
      certificateNumber: certificate.number,
      ...(isLate && { isLate }),
      ...(assessment.answer === 'confirm-serial' && { isSerialClose: true }),
    },
    to: address.email,
    jobId: job.id,
    now: o.now,
  });
  return { opened: true, claimNumber, jobNumber: job.number, token: job.token };
}
