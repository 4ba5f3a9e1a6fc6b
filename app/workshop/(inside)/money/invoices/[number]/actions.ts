'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import type { WholeInvoice } from '@/lib/invoices/records';
import { creditField } from '@/lib/invoices/rules/credit';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import { attempt, Refusal } from '@/lib/outcome';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { invoiceByNumber } from '../../open-invoice';
import { creditForm } from './schema';

export async function creditAction(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(number);
  const staff = await requireStaff(rolesThatMay('money'));
  const whole = await invoiceByNumber(number);
  if (!whole) return { message: 'There is no invoice with this number.' };
  const parsed = parseForm(creditForm, formData);
  if (!parsed.ok) return parsed.state;
  const { choice, reason, formKey } = parsed.data;
  const outcome = await attempt(() =>
    creditInvoice({
      number,
      choice: choice === 'everything' ? 'everything' : chosenLines(whole, formData),
      reason,
      formKey,
      actor: staffActor(staff),
      now: now(),
    }),
  );
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/money/invoices/${number}?credited=yes` as Route);
}

function chosenLines({ facts }: WholeInvoice, formData: FormData): ReadonlyMap<number, number> {
  const chosen = new Map<number, number>();
  for (const { position } of facts.lines) {
    const field = creditField(position);
    const typed = formData.get(field);
    if (typeof typed !== 'string' || typed.trim() === '') continue;
    const reading = readKeptMoney(typed, facts.currency);
    if (!reading.ok) {
      const sentence = keptMoneySentence(reading.reason, facts.currency, 'Enter the amount like 96.00');
      throw new Refusal('invalid', sentence, field);
    }
    chosen.set(position, reading.minor);
  }
  return chosen;
}
