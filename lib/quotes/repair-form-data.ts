import { compareDays, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { config } from '@/lib/config';
import type { RepairFormData } from '@/lib/documents/repair-form';
import { quoteAddress } from '@/lib/jobs/private-link';
import { countryName } from '@/lib/parcels/rules/country-abroad';
import { readWorkshop } from '@/lib/workshop/records';
import { letterheadOf, postalLines } from '@/lib/workshop/rules/letterhead';
import { shownRevision } from './quote-data';
import type { QuoteRecord } from './records';
import { isInspectionOnly } from './rules/inspection-fee';
import { revisionTotals, taxNameOf } from './rules/lines';
import { lastHeldDay, repairForm } from './rules/repair-form';
import { readConditions } from './stored-conditions';
import { readLine } from './stored-lines';

/**
 * A quote that was asked for as the European Repair Information Form; null while no price has been sent, and for one
 * that holds for less than the form must. Its conditions are those of the day it was sent; who we are and where we take
 * parcels in are today's, since a parcel has to find us. `token` is that of the private link it was opened by.
 */
export async function repairFormData(
  quote: QuoteRecord,
  { token }: { token?: string } = {},
): Promise<RepairFormData | null> {
  const revision = shownRevision(quote);
  if (!revision) return null;
  const workshop = await readWorkshop();
  const providedOn = dayInZone(revision.issuedAt, workshop.timeZone);
  const validUntil = dayFromDate(revision.validUntil);
  if (compareDays(validUntil, lastHeldDay(providedOn)) < 0) return null;
  const answerUrl = token ? quoteAddress(token) : null;
  const { replacementText, inspectionFeeMinor, isInspectionFeeTakenOff } = readConditions(revision);
  const lines = revision.lines.map(readLine);
  const mode = revision.isGross;
  const { request } = quote;
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: revision.issuedAt },
    workshop: letterheadOf(workshop),
    number: quote.number,
    revision: revision.revision,
    customer: request.name,
    unit: { model: request.device, serial: request.serialTyped || 'not told' },
    providedOn,
    validUntil,
    answerUrl,
    fields: repairForm({
      locale: workshop.locale,
      repairer: {
        name: workshop.name,
        address: postalLines(workshop, countryName(workshop.country, workshop.locale)),
        phone: workshop.phone,
        email: workshop.email,
        online: answerUrl ?? config.appUrl,
      },
      good: { device: request.device, serial: request.serialTyped },
      defect: revision.reason,
      proposal: revision.proposal,
      price: {
        gross: revision.grossMinor,
        currency: quote.currency,
        taxName: taxNameOf(lines, workshop.taxName),
        isInspectionOnly: isInspectionOnly(revision),
      },
      workingDays: revision.workingDays,
      replacementText,
      ancillary: lines
        .filter(({ kind }) => kind === 'postage')
        .map((line) => ({ description: line.description, gross: revisionTotals([line], mode).gross })),
      inspectionFee: { amount: inspectionFeeMinor, isTakenOff: isInspectionFeeTakenOff },
      providedOn,
      validUntil,
      note: revision.note,
    }),
  };
}
