'use server';
import { refresh } from 'next/cache';
import type { FormState } from '@/app/ui/forms/form-state';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { rotateSigningKey } from '@/lib/warranty/signing-key';

export async function changeKey(_before: FormState, _formData: FormData): Promise<FormState> {
  await requireStaff('settings');
  const key = await rotateSigningKey(now());
  refresh();
  return { done: `Key ${key.id} signs from now on.` };
}
