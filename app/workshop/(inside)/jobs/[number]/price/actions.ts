'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { Refusal } from '@/lib/outcome';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { writeOffer } from '@/lib/quotes/write-offer';
import { readWorkshop } from '@/lib/workshop/records';
import { readPriceLines } from '../../../price-lines/read-price-lines';
import { taxesFor } from '../../../price-lines/taxes';
import { onJob } from '../action-kit';
import { offerForm } from '../schema';

export const writeChangedPrice: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'money',
    schema: offerForm,
    part: 'money',
    work: async (call) => {
      const lines = await offerLines(call.jobNumber, formData);
      const { repair: repairId, ...data } = call.data;
      const customerAsked = data.customerAsked === 'yes';
      await writeOffer({ ...call, ...data, customerAsked, repairId, lines });
    },
  });

/**
 * Filled lines of the form, each with the tax chosen for it, or the repair's own where there was nothing to choose. What a
 * claim covers and an inspection fee are no lines of the form: the offer brings them along.
 */
async function offerLines(jobNumber: string, formData: FormData): Promise<QuoteLine[]> {
  const job = await jobByNumber(jobNumber);
  if (!job) throw new Refusal('not-found', 'There is no such job.');
  const [taxes, { currency }] = [await taxesFor(job), await readWorkshop()];
  const lines = readPriceLines(formData, { taxes, currency });
  if (lines.length === 0) throw new Refusal('invalid', 'Give at least one line', 'description-0');
  return lines;
}
