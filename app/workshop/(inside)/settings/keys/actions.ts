'use server';
import { refresh } from 'next/cache';
import type { FormAction } from '@/app/ui/forms/form-state';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { rotateSigningKey } from '@/lib/warranty/signing-key';

export const changeKey: FormAction = async (_before, _formData) => {
  await requireStaff('settings');
  const key = await rotateSigningKey(now());
  refresh();
  return { done: `Key ${key.id} signs from now on.` };
};
