import 'server-only';
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
import type { ByStaff } from '@/lib/jobs/actor';
import { attempt } from '@/lib/outcome';
import type { Permission } from '@/lib/people/rules/roles';
import { findClaim } from '@/lib/warranty/claim-desk-case';
import { carriedForm } from './schema';

export type ClaimCall<T> = ByStaff & {
  claimId: string;
  /** the version of the claim's job that the person saw */
  jobVersion: number;
  data: T;
};

/**
 * What every action of the claims desk does around its one use case: who is asking, is there such a claim, does the form
 * parse, and afterwards the page again at the part that changed, or the refusal with everything typed.
 */
export async function onClaim<S extends z.ZodType>(
  number: string,
  formData: FormData,
  o: {
    permission: Permission;
    schema: S;
    /** fields that are lists */
    arrays?: readonly string[];
    part: string;
    work: (call: ClaimCall<z.output<S>>) => Promise<unknown>;
  },
): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf(o.permission, formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const claim = await findClaim(number);
  if (!claim) return { message: 'There is no claim with this number.' };
  const frame = carriedForm.safeParse({ version: formData.get('version') });
  if (!frame.success) return { message: 'This form was not complete. Load the page again.' };
  const parsed = parseForm(o.schema, formData, o.arrays);
  if (!parsed.ok) return parsed.state;
  const { version } = frame.data;
  const outcome = await attempt(() =>
    o.work({
      claimId: claim.id,
      jobVersion: version,
      data: parsed.data,
      actor: staffActor(staff),
      now: now(),
    }),
  );
  const page = `/workshop/claims/${claim.number}` as const;
  if (outcome.ok) redirect(`${page}?saved=${o.part}#${o.part}`);
  const state = await jobRefused(outcome.refusal, {
    jobNumber: claim.jobNumber,
    version,
    values: typedValues(formData, o.arrays),
  });
  return state.conflict ? { ...state, conflict: { ...state.conflict, href: page } } : state;
}
