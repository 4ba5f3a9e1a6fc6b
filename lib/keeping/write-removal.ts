import type { Tx } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import type { Actor } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { WAITING_REQUESTS } from '@/lib/quotes/rules/request-states';
import { writeQuoteEvent } from '@/lib/quotes/write-quote-event';
import type { RemovalRows } from './stored-removal';
import { writeWordsLeave } from './write-words-leave';

/** What stands in the place of a name that was removed. */
export const REMOVED_NAME = 'Data removed';

export type Removed = { bookings: number; requests: number; messages: number; photos: number; mails: number };

/**
 * Takes name, address, ways to reach them, their words and their photos out of bookings and requests, inside the caller's
 * transaction. What bookkeeping and claims need stays (rules/retention.ts). Rows removed before are left alone, so that a
 * second run changes nothing.
 *
 * Files go last and before the commit: when the process dies in between, the rows still name them and the next run ends
 * the work. Deleted after the commit they could stay behind with nobody knowing of them.
 */
export async function writeRemoval(tx: Tx, o: RemovalRows & { actor: Actor; now: Date }): Promise<Removed> {
  // The owner and the clocks of several instances may come at once: the first locks the rows, the others wait and then
  // find them removed.
  const left = await tx.$queryRaw<{ id: string }[]>`
    select "id" from "customer" where "id" = any(${[...o.customerIds]}) and "erasedAt" is null
    order by "id" for update`;
  const customers = await tx.customer.findMany({
    where: { id: { in: left.map(({ id }) => id) } },
    select: { id: true, jobs: { select: { id: true, quotes: { select: { id: true } } } } },
  });
  const jobs = customers.flatMap((customer) => customer.jobs);
  const jobIds = jobs.map(({ id }) => id);
  const quoteIds = [...new Set([...o.quoteIds, ...jobs.flatMap((job) => job.quotes.map(({ id }) => id))])];
  const about = { OR: [{ jobId: { in: jobIds } }, { quoteId: { in: quoteIds } }] };

  const photos = await tx.photo.findMany({
    where: about,
    select: { id: true, fileKey: true, thumbKey: true },
  });
  await tx.photo.deleteMany({ where: { id: { in: photos.map(({ id }) => id) } } });
  const messages = await tx.message.deleteMany({ where: about });
  await tx.privateLink.deleteMany({ where: about });
  await tx.bookingDraft.deleteMany({ where: about });
  const mails = await removeFromMail(tx, jobIds, quoteIds);
  await writeWordsLeave(tx, jobIds, quoteIds);
  await endRequests(tx, quoteIds, o);
  const requests = await tx.quoteRequest.updateMany({
    where: { quoteId: { in: quoteIds }, emailKey: { not: '' } },
    data: {
      name: REMOVED_NAME,
      email: '',
      emailKey: '',
      phone: '',
      problem: '',
      symptoms: [],
      serialTyped: '',
      serialKey: '',
    },
  });
  await tx.claim.updateMany({ where: { jobId: { in: jobIds } }, data: { details: '', postageTo: '' } });
  await tx.claim.updateMany({
    where: { jobId: { in: jobIds }, contestText: { not: null } },
    data: { contestText: '' },
  });
  for (const jobId of jobIds) {
    await writeEvent(tx, {
      jobId,
      actor: o.actor,
      now: o.now,
      set: { problem: '', inboundReference: '', carrierReference: '' },
      event: { kind: 'data-removed', data: {} },
    });
  }
  await tx.customer.updateMany({
    where: { id: { in: customers.map(({ id }) => id) } },
    data: {
      name: REMOVED_NAME,
      email: '',
      phone: '',
      addressLines: [],
      postcode: '',
      town: '',
      erasedAt: o.now,
    },
  });
  for (const { fileKey, thumbKey } of photos) {
    await deleteFile(fileKey);
    await deleteFile(thumbKey);
  }
  return {
    bookings: customers.length,
    requests: requests.count,
    messages: messages.count,
    photos: photos.length,
    mails,
  };
}

/** Requests that still waited end: nobody is left to answer or to book. */
async function endRequests(tx: Tx, quoteIds: string[], o: { actor: Actor; now: Date }): Promise<void> {
  // Whoever comes second waits for the quotes' rows and then finds nothing that waits.
  await tx.$queryRaw`
    select 1 from "quote" where "id" = any(${quoteIds}) and "jobId" is null order by "id" for update`;
  const open = await tx.quoteRequest.findMany({
    where: { quoteId: { in: quoteIds }, state: { in: [...WAITING_REQUESTS] } },
    select: { quoteId: true, state: true },
    orderBy: { quoteId: 'asc' },
  });
  for (const { quoteId, state } of open) {
    await writeQuoteEvent(tx, {
      quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'data-removed', data: {} },
      to: state === 'quoted' || state === 'accepted' ? 'lapsed' : 'turned-down',
    });
    await tx.quoteRevision.updateMany({
      where: { quoteId, state: { in: ['sent', 'accepted'] } },
      data: { state: 'lapsed' },
    });
  }
}

/** Letters that left stay as a record that they did, without address and without anybody's words; others are dropped. */
async function removeFromMail(tx: Tx, jobIds: string[], quoteIds: string[]): Promise<number> {
  const about = { OR: [{ jobId: { in: jobIds } }, { quoteId: { in: quoteIds } }] };
  await tx.mail.deleteMany({ where: { ...about, state: { not: 'sent' } } });
  const { count } = await tx.mail.updateMany({
    where: { ...about, toAddress: { not: '' } },
    data: { toAddress: '', bounceNote: '', toldNote: '' },
  });
  return count;
}
