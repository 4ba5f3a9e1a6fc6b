import 'server-only';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { typedValues } from '@/app/ui/forms/typed-values';
import { now } from '@/lib/clock';
import { findQuoteByToken } from '@/lib/jobs/private-link';

const GONE = 'This link opens no quote any more. Use the newest link we sent you.';

/** What every action of the private page of a quote asks first: does the link open one, and what time is it. */
export async function onQuoteLink(
  token: string,
  formData: FormData,
  work: (call: { quoteId: string; now: Date }) => Promise<FormState>,
): Promise<FormState> {
  onlyPlain(token);
  const found = await findQuoteByToken(token);
  // The page still stands in the browser, with what was typed: it can be copied to the newer link.
  if (!found) return { message: GONE, values: typedValues(formData) };
  return work({ quoteId: found.quoteId, now: now() });
}
