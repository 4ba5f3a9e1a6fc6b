'use server';
import { z } from 'zod';
import type { FormState } from '@/app/ui/forms/form-state';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { readMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { OFFERED_KINDS, type QuoteLine } from '@/lib/quotes/rules/lines';
import { writeOffer } from '@/lib/quotes/write-offer';
import { readWorkshop } from '@/lib/workshop/records';
import { onJob } from '../action-kit';
import { OFFER_LINES, offerForm } from '../schema';
import { taxesFor, taxValue } from './taxes';

const kindOf = z.enum(OFFERED_KINDS);

export async function writeChangedPrice(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onJob({
    permission: 'money',
    number,
    schema: offerForm,
    formData,
    part: 'money',
    work: async (call) => {
      const lines = await offerLines(call.jobNumber, formData);
      await writeOffer({ ...call, ...call.data, lines });
    },
  });
}

/**
 * Filled lines of the form, each with the tax chosen for it, or the repair's own where there was nothing to choose. A
 * line with a text and no amount, or the other way, is refused. What a claim covers and an inspection fee are no lines
 * of the form: the offer brings them along.
 */
async function offerLines(jobNumber: string, formData: FormData): Promise<QuoteLine[]> {
  const job = await jobByNumber(jobNumber);
  if (!job) throw new Refusal('not-found', 'There is no such job.');
  const taxes = await taxesFor(job);
  const { currency } = await readWorkshop();
  const lines: QuoteLine[] = [];
  for (let index = 0; index < OFFER_LINES; index += 1) {
    const description = text(formData, `description-${index}`);
    const amount = text(formData, `amount-${index}`);
    if (description === '' && amount === '') continue;
    if (description === '') throw new Refusal('invalid', 'Say what this line is for', `description-${index}`);
    const reading = readMoney(amount, currency);
    if (!reading.ok) throw new Refusal('invalid', 'Enter the amount like 24.00', `amount-${index}`);
    const kind = kindOf.safeParse(text(formData, `kind-${index}`));
    if (!kind.success) throw new Refusal('invalid', 'Choose the kind of this line', `kind-${index}`);
    const chosen = text(formData, `tax-${index}`);
    const tax = chosen === '' ? taxes[0] : taxes.find((each) => taxValue(each) === chosen);
    if (!tax) throw new Refusal('invalid', 'Choose a tax of the catalogue', `tax-${index}`);
    const isLess = kind.data === 'discount';
    lines.push({
      kind: kind.data,
      description: description.slice(0, 200),
      amount: isLess ? -Math.abs(reading.minor) : reading.minor,
      ...tax,
    });
  }
  if (lines.length === 0) throw new Refusal('invalid', 'Give at least one line', 'description-0');
  return lines;
}

function text(formData: FormData, name: string): string {
  const value = formData.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
