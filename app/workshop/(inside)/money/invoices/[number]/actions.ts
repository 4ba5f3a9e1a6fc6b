'use server';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { now } from '@/lib/clock';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { attempt } from '@/lib/outcome';
import { invoiceByNumber } from '../../open-invoice';
import { readCredit } from './read-credit';
import { creditForm } from './schema';

export async function creditAction(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(number);
  const sender = await senderOf('money', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const whole = await invoiceByNumber(number);
  if (!whole) return { message: 'There is no invoice with this number.' };
  const parsed = parseForm(creditForm, formData);
  if (!parsed.ok) return parsed.state;
  const { choice, reason, left, formKey } = parsed.data;
  const outcome = await attempt(() =>
    creditInvoice({
      number,
      choice: readCredit(choice, whole.facts, formData),
      reason,
      shownLeft: left,
      formKey,
      actor: staffActor(staff),
      now: now(),
    }),
  );
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/money/invoices/${number}?credited=yes`);
}
