'use server';
import { redirect } from 'next/navigation';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { importFile } from '@/lib/catalogue/import-file';
import { changeCounts, lookOf } from '@/lib/catalogue/rules/file-look';
import { forgetUploadedList, keepUploadedList, readUploadedList } from '@/lib/catalogue/uploaded-list';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { requireStaff } from '../../../who';
import { importSchema, uploadSchema } from './schema';

/** Keeps the chosen file and leads to what it would do; nothing is written to the catalogue yet. */
export const uploadListAction: FormAction = async (_before, formData) => {
  const staff = await requireStaff('catalogue');
  const parsed = parseForm(uploadSchema, formData);
  if (!parsed.ok) return parsed.state;
  const bytes = new Uint8Array(await parsed.data.file.arrayBuffer());
  const outcome = await attempt(() => keepUploadedList(staff.id, bytes));
  if (!outcome.ok) return refused(outcome.refusal, { file: parsed.data.file.name });
  redirect('/workshop/catalogue/file/check');
};

/** Imports the file that waits, if it would still do what the person saw. */
export const importListAction: FormAction = async (_before, formData) => {
  const staff = await requireStaff('catalogue');
  const parsed = parseForm(importSchema, formData);
  if (!parsed.ok) return parsed.state;
  const text = await readUploadedList(staff.id);
  if (text === null) redirect('/workshop/catalogue/file');
  const by = { now: now(), userId: staff.id };
  const outcome = await attempt(() => importFile({ text, mark: parsed.data.mark, by }));
  // The page is made anew, so that it shows what the file would do now.
  if (!outcome.ok) redirect('/workshop/catalogue/file/check?moved=yes');
  await forgetUploadedList(staff.id);
  const { kind, settings } = outcome.value;
  const { added, changed } = changeCounts(lookOf(outcome.value, settings));
  redirect(`/workshop/catalogue/file?file=${kind}&added=${added}&changed=${changed}`);
};
