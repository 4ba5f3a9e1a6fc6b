import 'server-only';
import { now } from '@/lib/clock';
import { readMessages } from '@/lib/jobs/read-messages';
import { whoIsSignedIn } from './workshop/who';

/** Whether the workshop wrote something that the customer has not read yet. */
export function isUnread(messages: readonly { author: string; readAt: Date | null }[]): boolean {
  return messages.some(({ author, readAt }) => author === 'staff' && readAt === null);
}

/**
 * Marks what the workshop wrote as read by the customer who opens a private page. A member of staff who follows the address
 * from a letter to look at the page is signed in, and reads nothing for the customer.
 */
export async function readByCustomer(about: { jobId: string } | { quoteId: string }): Promise<void> {
  if (await whoIsSignedIn()) return;
  await readMessages({ about, reader: 'customer', now: now() });
}
