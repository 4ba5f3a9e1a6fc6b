import 'server-only';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { onlyPlain } from '@/app/only-plain';
import { refusedAfresh } from '@/app/refused-afresh';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { now } from '@/lib/clock';
import { findJobByToken } from '@/lib/jobs/private-link';
import { attempt } from '@/lib/outcome';

const GONE = 'This link opens no job any more. Use the newest link we sent you.';

/**
 * What every action of the private page does around its one use case: does the link open a job, does the form parse,
 * and afterwards the page again with a word of what was done, or the refusal with everything typed.
 */
export async function onLink<S extends z.ZodType, R>(o: {
  token: string;
  schema: S;
  formData: FormData;
  /** what the page says was done, and where on it to lead; the use case may name it itself */
  done: string | ((result: R) => string);
  work: (call: { jobId: string; data: z.output<S>; now: Date }) => Promise<R>;
}): Promise<FormState> {
  onlyPlain(o.token);
  const found = await findJobByToken(o.token);
  // The page still stands in the browser, with what was typed: it can be copied to the newer link.
  if (!found) return { message: GONE, values: typedValues(o.formData) };
  const parsed = parseForm(o.schema, o.formData);
  if (!parsed.ok) return parsed.state;
  const outcome = await attempt(() => o.work({ jobId: found.jobId, data: parsed.data, now: now() }));
  if (!outcome.ok) {
    return refusedAfresh(outcome.refusal, typedValues(o.formData));
  }
  const done = typeof o.done === 'string' ? o.done : o.done(outcome.value);
  redirect(`/job/${o.token}?done=${done}` as Route);
}
