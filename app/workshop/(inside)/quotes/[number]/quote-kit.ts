import 'server-only';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import { countedField } from '@/app/ui/forms/counted-field';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import type { ByStaff } from '@/lib/jobs/actor';
import { showNumber } from '@/lib/numbers/job-number';
import { attempt, type Refusal } from '@/lib/outcome';
import type { Permission } from '@/lib/people/rules/roles';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import { quoteChangesSince } from '@/lib/quotes/quote-changes-since';
import type { QuoteRecord } from '@/lib/quotes/records';

export type QuoteCall<T> = ByStaff & { quote: QuoteRecord; quoteId: string; version: number; data: T };

/**
 * What every action on a quote does around its one use case: who is asking, is there such a quote, does the form parse,
 * and afterwards the quote's page again at the part that changed, or the refusal with everything typed.
 */
export async function onQuote<S extends z.ZodType, R>(
  number: string,
  formData: FormData,
  o: {
    permission: Permission;
    schema: S;
    part: string;
    work: (call: QuoteCall<z.output<S>>) => Promise<R>;
    /** what the form says where its page stays on it; null leads on */
    stays?: (result: R) => FormState | null;
  },
): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf(o.permission, formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const quote = await quoteByNumber(number);
  if (!quote) return { message: 'There is no quote with this number.' };
  const version = countedField.safeParse(formData.get('version'));
  if (!version.success) return { message: 'This form was not complete. Load the page again.' };
  const parsed = parseForm(o.schema, formData);
  if (!parsed.ok) return parsed.state;
  const call = {
    quote,
    quoteId: quote.id,
    version: version.data,
    data: parsed.data,
    actor: staffActor(staff),
    now: now(),
  };
  const outcome = await attempt(() => o.work(call));
  const values = typedValues(formData);
  if (!outcome.ok)
    return quoteRefused(outcome.refusal, { number: quote.number, version: version.data, values });
  const stays = o.stays?.(outcome.value);
  if (stays) return { values, ...stays };
  redirect(`/workshop/quotes/${quote.number}?saved=${o.part}#${o.part}`);
}

/** The loser of a race sees what changed since the version they had, and keeps what they typed. */
async function quoteRefused(
  refusal: Refusal,
  o: { number: string; version: number; values: FormState['values'] },
): Promise<FormState> {
  if (refusal.code !== 'conflict') return refused(refusal, o.values);
  return {
    values: o.values,
    conflict: {
      message: `${refusal.message} This is what happened to ${showNumber(o.number)} meanwhile:`,
      changes: await quoteChangesSince(o.number, o.version),
      href: `/workshop/quotes/${o.number}`,
    },
  };
}
