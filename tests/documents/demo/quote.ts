import { day } from '@/lib/calendar/day';
import type { QuoteData } from '@/lib/documents/quote';
import type { RepairFormData } from '@/lib/documents/repair-form';
import { repairForm } from '@/lib/quotes/rules/repair-form';
import { price } from './price';
import { customer, job, setting, stamp, unit, workshop } from './shared';

export const quote: QuoteData = {
  setting,
  workshop,
  number: 'Q9ZQV600A',
  revision: 2,
  job,
  customer,
  unit,
  issuedOn: day('2026-12-08'),
  validUntil: day('2027-01-07'),
  answerUrl: 'https://quay-alder.example.org/q/7tR2mKcVx9LhYpWb',
  stamps: [
    stamp('Quote sent', '2026-12-08'),
    stamp('Your answer', null),
    stamp('On the bench', null),
    stamp('Sent back', null),
  ],
  found: [
    'The USB socket is torn off on one side. Four pads came away with it, so the new socket has nothing to hold on to until they are rebuilt.',
    'The charging circuit behind it is sound: we measured it with a bench supply. Nothing else was damaged.',
  ],
  proposed: [
    'Rebuild the four pads with fine wire and fit a new socket, both anchors soldered through.',
    'It takes 8 working days from the day the unit arrives.',
  ],
  price,
  before: { revision: 1, gross: 7180 },
  ifYes: [
    'We order nothing you have to wait for: the socket is here.',
    'We repair, prove and send your recorder back by Thursday 7 January.',
    'You pay £130.60 before it leaves, and it comes with a certificate for 12 months.',
  ],
  ifNo: [
    'We put the recorder together again and send it back unrepaired within three working days.',
    'You pay the return fee of £9.00, and nothing else.',
  ],
  outcome: null,
};

export const form: RepairFormData = {
  setting,
  workshop,
  number: 'Q9ZQV600A',
  revision: 1,
  customer,
  unit,
  providedOn: day('2026-12-08'),
  validUntil: day('2027-01-07'),
  answerUrl: quote.answerUrl,
  fields: repairForm({
    locale: setting.locale,
    repairer: {
      name: workshop.name,
      address: workshop.address,
      phone: workshop.phone ?? '',
      email: workshop.email ?? '',
      online: 'https://quay-alder.example.org',
    },
    good: { device: unit.model, serial: unit.serial },
    defect: quote.found[0] ?? '',
    proposal: quote.proposed[0] ?? '',
    price: { gross: price.totals.gross, currency: 'GBP', taxName: 'VAT', isInspectionOnly: false },
    workingDays: 8,
    replacementText: '',
    ancillary: [{ description: 'Postage back, tracked', gross: 780 }],
    inspectionFee: { amount: 1800, isTakenOff: true },
    providedOn: day('2026-12-08'),
    validUntil: day('2027-01-07'),
    note: 'Recordings on the internal memory stay where they are.',
  }),
};
