import 'server-only';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { type FormPhotos, formPhotos } from '@/app/form-photos';
import { onlyPlain } from '@/app/only-plain';
import { refusedAfresh } from '@/app/refused-afresh';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { now } from '@/lib/clock';
import { findJobByToken } from '@/lib/jobs/private-link';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { attempt } from '@/lib/outcome';

const GONE = 'This link opens no job any more. Use the newest link we sent you.';

/**
 * What every action of the private page does around its one use case: does the link open a job, does the form parse,
 * and afterwards the page again with a word of what was done, or the refusal with everything typed.
 */
export async function onLink<S extends z.ZodType, R>(
  token: string,
  formData: FormData,
  o: {
    schema: S;
    /** what the page says was done, and where on it to lead; the use case may name it itself */
    done: string | ((result: R) => string);
    /** photos of the form, stored once `mayBring` has let them; they are kept for it where something else is refused */
    photos?: Photos;
    work: (call: { jobId: string; data: z.output<S>; photos: readonly NewPhoto[]; now: Date }) => Promise<R>;
  },
): Promise<FormState> {
  onlyPlain(token);
  const found = await findJobByToken(token);
  // The page still stands in the browser, with what was typed: it can be copied to the newer link.
  if (!found) return { message: GONE, values: typedValues(formData) };
  const { jobId } = found;
  const brought = await attempt(() => bring(jobId, formData, o.photos));
  if (!brought.ok) return refusedAfresh(brought.refusal, typedValues(formData));
  const { photos, problem, ...kept } = brought.value;
  const parsed = parseForm(o.schema, formData);
  if (!parsed.ok || problem !== null) {
    const errors = {
      ...(parsed.ok ? {} : parsed.state.errors),
      ...(problem !== null && { photos: [problem] }),
    };
    return { ...(parsed.ok ? {} : parsed.state), errors, values: { ...typedValues(formData), ...kept } };
  }
  const outcome = await attempt(() => o.work({ jobId, data: parsed.data, photos, now: now() }));
  if (!outcome.ok) {
    return refusedAfresh(outcome.refusal, { ...typedValues(formData), ...kept });
  }
  const done = typeof o.done === 'string' ? o.done : o.done(outcome.value);
  redirect(`/job/${token}?done=${done}`);
}

type Photos = { most: number; mayBring: (jobId: string) => Promise<void> };

/** What a form brings of photos, with their slips for the page; nothing of a form that asks for none. */
async function bring(
  jobId: string,
  formData: FormData,
  asked: Photos | undefined,
): Promise<Omit<FormPhotos, 'kept'> & { kept?: string[] }> {
  if (!asked) return { photos: [], problem: null };
  await asked.mayBring(jobId);
  return formPhotos(formData, { most: asked.most, now: now() });
}
