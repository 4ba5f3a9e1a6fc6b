import 'server-only';
import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import type { z } from 'zod';
import { onlyPlain } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { jobRefused } from '@/app/workshop/job-refused';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import type { OnJob } from '@/lib/jobs/actor';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { attempt } from '@/lib/outcome';
import type { Permission } from '@/lib/people/rules/roles';
import { carriedForm } from './schema';

export type JobCall<T> = OnJob & { jobNumber: string; formKey: string | undefined; data: T };

/**
 * What every action of the job sheet does around its one use case: who is asking, is there such a job, does the form
 * parse, and afterwards the sheet again at the part that changed, or the refusal with everything typed.
 */
export async function onJob<S extends z.ZodType>(
  number: string,
  formData: FormData,
  o: {
    permission: Permission;
    schema: S;
    arrays?: readonly string[];
    part: string;
    /** sub-page of the sheet to lead to; the sheet itself when absent */
    page?: '/sheet';
    /** what the sheet says where it stays as it is, with everything typed */
    done?: string;
    work: (call: JobCall<z.output<S>>) => Promise<unknown>;
  },
): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf(o.permission, formData, o.arrays);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const frame = carriedForm.safeParse({
    version: formData.get('version'),
    formKey: formData.get('formKey') ?? undefined,
  });
  if (!frame.success) return { message: 'This form was not complete. Load the page again.' };
  const parsed = parseForm(o.schema, formData, o.arrays);
  if (!parsed.ok) return parsed.state;
  const { version, formKey } = frame.data;
  const outcome = await attempt(() =>
    o.work({
      jobId: job.id,
      jobNumber: job.number,
      version,
      formKey,
      data: parsed.data,
      actor: staffActor(staff),
      now: now(),
    }),
  );
  const values = typedValues(formData, o.arrays);
  if (!outcome.ok) return jobRefused(outcome.refusal, { jobNumber: job.number, version, values });
  if (o.done) {
    refresh();
    return { values, done: o.done };
  }
  const page = `/workshop/jobs/${job.number}${o.page ?? ''}` as const;
  redirect(`${page}?saved=${o.part}#${o.part}`);
}
