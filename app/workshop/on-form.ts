import 'server-only';
import type { Route } from 'next';
import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { readWorkshop } from '@/app/read-workshop';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { now } from '@/lib/clock';
import type { ByStaff } from '@/lib/jobs/actor';
import { attempt } from '@/lib/outcome';
import type { Permission } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/records';
import { senderOf } from './sender-of-form';
import { staffActor } from './staff-actor';

/** Of a form that is a button alone nothing is read. */
export const NOTHING_TYPED = z.unknown();

export type FormCall<T> = ByStaff & { data: T };

/**
 * What an action of the workshop does around its one use case: who is asking, does the form parse, and afterwards either another
 * page (`after` gives its address) or this one, made anew, with what it says; a refusal comes back with everything typed. A job, a
 * claim and a quote have kits of their own, since their forms carry a version too.
 *
 * onForm(formData, { permission: 'catalogue', schema: familySchema, work: ({ data }) => saveFamily(data), after: () => '/workshop/catalogue' })
 */
export async function onForm<S extends z.ZodType, R>(
  formData: FormData,
  o: {
    permission: Permission;
    /** fields that are lists */
    arrays?: readonly string[];
    /** a function where amounts are read in the workshop's currency */
    schema: S | ((workshop: WorkshopCard) => S);
    work: (call: FormCall<z.output<S>>) => Promise<R>;
    after: (result: R, data: z.output<S>) => string | FormState;
  },
): Promise<FormState> {
  const sender = await senderOf(o.permission, formData, o.arrays);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const schema = typeof o.schema === 'function' ? o.schema(await readWorkshop()) : o.schema;
  const parsed = parseForm(schema, formData, o.arrays);
  if (!parsed.ok) return parsed.state;
  const { data } = parsed;
  const outcome = await attempt(() => o.work({ data, actor: staffActor(staff), now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData, o.arrays));
  const after = o.after(outcome.value, data);
  if (typeof after === 'string') redirect(after as Route);
  refresh();
  return after;
}
