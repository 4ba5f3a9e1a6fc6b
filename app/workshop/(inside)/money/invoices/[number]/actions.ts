'use server';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { Refusal } from '@/lib/outcome';
import { invoiceByNumber } from '../../open-invoice';
import { readCredit } from './read-credit';
import { creditForm } from './schema';

export const creditAction: FormAction<[number: string]> = async (number, _before, formData) => {
  onlyPlain(number);
  return onForm(formData, {
    permission: 'money',
    schema: creditForm,
    work: async ({ data: { choice, reason, left, formKey }, ...by }) => {
      const whole = await invoiceByNumber(number);
      if (!whole) throw new Refusal('not-found', 'There is no invoice with this number.');
      const asked = readCredit(choice, whole.facts, formData);
      await creditInvoice({ number, choice: asked, reason, shownLeft: left, formKey, ...by });
    },
    after: () => `/workshop/money/invoices/${number}?credited=yes`,
  });
};
