import { db } from '@/lib/db/client';

/**
 * Marks what the other side wrote on a job, or on a quote that was asked for, as read, once: opening the page again does not
 * change when it was first read. It is no change to the job, so no version is raised and nobody's form is made stale.
 */
export async function readMessages(o: {
  about: { jobId: string } | { quoteId: string };
  reader: 'customer' | 'staff';
  now: Date;
}): Promise<void> {
  await db.message.updateMany({
    where: { ...o.about, author: o.reader === 'staff' ? 'customer' : 'staff', readAt: null },
    data: { readAt: o.now },
  });
}
