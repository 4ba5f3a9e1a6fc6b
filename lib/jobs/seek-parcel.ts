import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import type { OnJob } from './actor';
import { asShown, factsOf } from './facts';
import { readJob, readStage } from './records';
import { maySeek, needsWords, SEEK_REASONS, type SearchEnd } from './rules/parcel-search';
import { LEFT_STAGES } from './rules/stage-sets';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';

type Call = OnJob & {
  /** what the carrier says, or what we do about it, in words for the customer */
  note: string;
};

/**
 * Keeps that a parcel on its way back is looked for, and tells its customer. Until that ends it is on Today, and its job is closed by
 * nobody; one that is closed already stays so.
 */
export async function seekParcel(o: Call): Promise<void> {
  await transaction(async (tx) => {
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version);
    const answer = maySeek({
      isWithCarrier: factsOf(job).isWithCarrier,
      isSought: job.soughtSince !== null,
      isErased: job.customer.erasedAt !== null,
    });
    if (!answer.allowed) throw new Refusal('conflict', SEEK_REASONS[answer.reason]);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: LEFT_STAGES },
      set: { soughtSince: o.now },
      event: { kind: 'parcel-sought', data: { note: o.note } },
    });
    await queueMail(tx, {
      template: 'parcel-sought',
      data: { carrier: job.carrier, note: o.note },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}

/**
 * Ends the search for a parcel: it was delivered, or it is lost. Either way there is nothing left to wait for, and a job that is not
 * closed is. Money is given back by a credit note, as ever. A parcel that comes back to us ends it too (came-back.ts).
 */
export async function endSearch(o: Call & { how: SearchEnd }): Promise<void> {
  if (o.note === '' && needsWords(o.how)) {
    throw new Refusal('invalid', 'Say what becomes of it, in words for the customer', 'note');
  }
  await transaction(async (tx) => {
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version);
    if (job.soughtSince === null) throw new Refusal('conflict', 'This parcel is not looked for.');
    const { from, to } = moveOf('close');
    const stage = readStage(job.stage);
    const closes = from.includes(stage);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: LEFT_STAGES },
      set: { soughtSince: null, ...(closes && { closedAt: o.now }) },
      ...(closes && { from: stage, to }),
      event: { kind: 'search-ended', data: { how: o.how, note: o.note } },
    });
    if (job.customer.erasedAt) return;
    await queueMail(tx, {
      template: 'search-ended',
      data: { how: o.how, note: o.note },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
