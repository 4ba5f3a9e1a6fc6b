'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { importList } from '@/lib/catalogue/import-list';
import { forgetUploadedList, keepUploadedList, readUploadedList } from '@/lib/catalogue/uploaded-list';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { importSchema, uploadSchema } from './schema';

/** Keeps the chosen file and leads to what it would do; nothing is written to the catalogue yet. */
export async function uploadListAction(_before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(uploadSchema, formData);
  if (!parsed.ok) return parsed.state;
  const bytes = new Uint8Array(await parsed.data.file.arrayBuffer());
  const outcome = await attempt(() => keepUploadedList(staff.id, bytes));
  if (!outcome.ok) return refused(outcome.refusal, { file: parsed.data.file.name });
  redirect('/workshop/catalogue/file/check' as Route);
}

/** Imports the file that waits, if it would still do what the person saw. */
export async function importListAction(_before: FormState, formData: FormData): Promise<FormState> {
  const staff = await requireStaff(rolesThatMay('catalogue'));
  const parsed = parseForm(importSchema, formData);
  if (!parsed.ok) return parsed.state;
  const text = await readUploadedList(staff.id);
  if (text === null) redirect('/workshop/catalogue/file' as Route);
  const by = { now: now(), userId: staff.id };
  const outcome = await attempt(() => importList({ text, mark: parsed.data.mark, by }));
  // The page is made anew, so that it shows what the file would do now.
  if (!outcome.ok) redirect('/workshop/catalogue/file/check?moved=yes' as Route);
  await forgetUploadedList(staff.id);
  const { families, models, repairs } = outcome.value.plan;
  const added = [...families, ...models, ...repairs].filter((change) => change.id === null).length;
  const changed = families.length + models.length + repairs.length - added;
  redirect(`/workshop/catalogue/file?added=${added}&changed=${changed}` as Route);
}
