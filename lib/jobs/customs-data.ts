import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import type { CustomsNoteData } from '@/lib/documents/customs-note';
import { showNumber } from '@/lib/numbers/job-number';
import { countryName } from '@/lib/parcels/rules/country-abroad';
import { customsNote } from '@/lib/parcels/rules/customs-note';
import { batteryOfModel, readParcel } from '@/lib/parcels/stored-parcel';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import type { WorkshopCard } from '@/lib/workshop/records';
import { letterheadOf, postalLines } from '@/lib/workshop/rules/letterhead';
import { type JobRecord, readKind } from './records';
import { isRepaired } from './rules/repaired';

/** Everything a customs form asks about a job's parcel. `family` is the catalogue's name for units of this kind. */
export function customsData(job: JobRecord, o: { workshop: WorkshopCard; family: string }): CustomsNoteData {
  const { workshop } = o;
  const { customer, model } = job;
  const unit = unitName(model);
  const parcel = readParcel(job);
  const { battery, wattHours } = batteryOfModel(job);
  const country = (code: string) => `${countryName(code, workshop.locale)} (${code})`;
  const agreed = agreedOf(job);
  return {
    setting: { paper: workshop.paper, locale: workshop.locale, made: job.readyAt ?? job.bookedAt },
    workshop: letterheadOf(workshop),
    job: job.number,
    jobUrl: `${config.appUrl}/workshop/jobs/${job.number}`,
    unit: { model: unit, serial: job.serialTyped },
    note: customsNote({
      sender: {
        name: workshop.name,
        address: postalLines(workshop),
        country: country(workshop.country),
        phone: workshop.phone,
        email: workshop.email,
      },
      receiver: {
        name: customer.name,
        address: postalLines(customer),
        country: country(customer.country),
        phone: customer.phone,
        email: customer.email,
      },
      unit,
      family: o.family,
      serial: job.serialTyped,
      isRepaired: isRepaired(job.events),
      isClaim: readKind(job.kind) === 'claim',
      unitGrams: model.weightGrams || null,
      parcelGrams: parcel.grams,
      valueMinor: parcel.valueMinor,
      repairMinor: agreed?.grossMinor ?? 0,
      currency: job.quotes[0]?.currency ?? workshop.currency,
      tariffNumber: model.tariffNumber,
      battery: { kind: battery, wattHours, packed: parcel.battery },
      reference: showNumber(job.number),
      invoice: job.invoices.findLast((paper) => paper.kind === 'invoice')?.number ?? null,
    }),
  };
}
