import 'server-only';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { now } from '@/lib/clock';
import { findQuoteByToken } from '@/lib/jobs/private-link';

const GONE: FormState = { message: 'This link opens no quote any more. Use the newest link we sent you.' };

/** What every action of the private page of a quote asks first: does the link open one, and what time is it. */
export async function onQuoteLink(
  token: string,
  work: (call: { quoteId: string; now: Date }) => Promise<FormState>,
): Promise<FormState> {
  onlyPlain(token);
  const found = await findQuoteByToken(token);
  return found ? work({ quoteId: found.quoteId, now: now() }) : GONE;
}
