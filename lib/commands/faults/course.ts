import { createHash } from 'node:crypto';
import { recordChecks } from '@/lib/bench/record-check';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { db } from '@/lib/db/client';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { readWholeInvoice } from '@/lib/invoices/records';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { arrive } from '@/lib/jobs/arrive';
import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { readDraft, startDraft } from '@/lib/jobs/draft';
import { moveJob, type PlainMove } from '@/lib/jobs/move';
import { findJobByToken, hashToken } from '@/lib/jobs/private-link';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { type JobRecord, readJob } from '@/lib/jobs/records';
import { draftAnswers } from '@/lib/jobs/rules/booking';
import { dispatch } from '@/lib/warranty/dispatch';
import { carrierFor } from '@/prisma/demo/carriers';
import { DEMO_REPAIRS } from '@/prisma/demo/catalogue';
import { addressOf } from '@/prisma/demo/customers';
import { passingEntry } from '@/prisma/demo/readings';
import type { Acknowledged } from './journal';

const ZONE = 'Europe/London';

/** A booking filled in, with its answers saved in one write; what opens it. */
export async function draft(n: number): Promise<string> {
  const repair = DEMO_REPAIRS[n % DEMO_REPAIRS.length];
  if (!repair) throw new Error('the catalogue has no repairs');
  const token = await startDraft({ repairId: repair.id, now: now() });
  const answers = draftAnswers.parse({
    unit: { serial: `FX${String(10_000 + n)}` },
    problem: { problem: 'It does not charge any more.', history: [] },
    parcel: { accessories: [], otherAccessory: '', battery: 'healthy', data: 'saved' },
    address: addressOf('desmond-achebe'),
  });
  await db.bookingDraft.update({ where: { tokenHash: hashToken(token) }, data: { answers } });
  return token;
}

/** The confirm button; pressed again when the answer was lost. */
export async function confirm(token: string): Promise<Acknowledged & { jobId: string }> {
  const begun = await readDraft(token);
  const shown = begun && (await readBookingRepair(begun.repairId));
  if (!shown) throw new Error('the booking that was filled in is gone');
  const booked = await book({
    draftToken: token,
    shownMinor: shown.grossMinor,
    isStartAsked: true,
    now: now(),
  });
  const found = await findJobByToken(booked.token);
  if (!found) throw new Error(`the booked job ${booked.number} was not found by its link`);
  const { jobId } = found;
  return { step: 'book', jobId, number: booked.number, kind: 'booked', version: 1, mail: 'job-booked' };
}

/** Takes the next step of a job, whichever that is by its records; null when it was sent back. */
export async function onward(o: { jobId: string; payment: string }): Promise<Acknowledged | null> {
  const job = await readJob({ id: o.jobId });
  if (!job) throw new Error(`the job ${o.jobId} is gone`);
  const done = await nextStep(job, o.payment);
  if (!done) return null;
  const last = await db.jobEvent.findFirstOrThrow({
    where: { jobId: job.id },
    orderBy: { version: 'desc' },
    select: { version: true, kind: true },
  });
  return { ...done, jobId: job.id, number: job.number, version: last.version, kind: last.kind };
}

/** The document of a job's invoice: drawn once, the same ever after. */
export async function paper(number: string): Promise<Acknowledged> {
  const whole = await readWholeInvoice(number);
  if (!whole) throw new Error(`the invoice ${number} is gone`);
  const sha256 = createHash('sha256')
    .update(await invoiceFile(whole))
    .digest('hex');
  return { step: 'paper', invoice: number, sha256 };
}

async function nextStep(job: JobRecord, payment: string): Promise<Acknowledged | null> {
  const frame = { jobId: job.id, version: job.version, actor: await hand(), now: now() };
  const move = async (step: PlainMove): Promise<Acknowledged> => {
    await moveJob({ ...frame, move: step, note: '' });
    return { step };
  };
  switch (job.stage) {
    case 'booked':
      await arrive({ ...frame, serial: job.serialTyped, arrived: [], extra: [], photos: [] });
      return { step: 'arrive', mail: 'unit-arrived' };
    case 'arrived':
      return move('assess');
    case 'assessing':
      return move('start-bench');
    case 'on-bench':
      if (job.work.length > 0) return move('prove');
      await recordWork({ ...frame, text: 'Socket replaced', minutes: 40 });
      return { step: 'work' };
    case 'proving':
      if (job.checkEntries.length > 0) {
        await move('pass-checks');
        return { step: 'pass-checks', mail: 'unit-ready', ...(await invoiceOf(job.id)) };
      }
      await recordChecks({ ...frame, results: resultsOf(job) });
      return { step: 'checks' };
    case 'ready':
      return job.payments.length === 0 ? pay(job, payment) : sendBack(job);
    default:
      return null;
  }
}

function resultsOf(job: JobRecord) {
  return job.sheet.checks.map((check) => ({
    checkId: check.id,
    given: passingEntry(check, job.number),
    note: '',
  }));
}

async function pay(job: JobRecord, formKey: string): Promise<Acknowledged> {
  await recordPayment({
    jobId: job.id,
    amount: balanceOf(job).owed,
    method: 'card',
    reference: '',
    receivedOn: dayInZone(now(), ZONE),
    formKey,
    actor: await hand(),
    now: now(),
  });
  return { step: 'pay', mail: 'payment-received' };
}

async function sendBack(job: JobRecord): Promise<Acknowledged> {
  const { certificate } = await dispatch({
    jobId: job.id,
    version: job.version,
    handover: carrierFor('GB', job.number),
    postage: 0,
    actor: await hand(),
    now: now(),
  });
  if (!certificate) throw new Error(`no certificate was issued for ${job.number}`);
  return { step: 'dispatch', mail: 'unit-sent-back', certificate: certificate.number };
}

async function invoiceOf(jobId: string): Promise<{ invoice?: string }> {
  const found = await db.invoice.findFirst({ where: { jobId }, select: { number: true } });
  return found ? { invoice: found.number } : {};
}

let known: { kind: 'owner'; id: string; initials: string } | undefined;

async function hand() {
  known ??= {
    kind: 'owner',
    ...(await db.user.findFirstOrThrow({ select: { id: true, initials: true } })),
  };
  return known;
}
