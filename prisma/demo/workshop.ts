import { addDays, type Day, dayOf, isoWeekday, partsOf } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { blankWorkshop, type WorkshopCard } from '@/lib/workshop/card';
import { writeCarriers } from './carriers';
import { PACKING, PAYMENT, PRIVACY, TERMS } from './texts';

/** Quay & Alder of Sandmouth. Invented, down to the postcode, which begins with a letter that no postcode begins with. */
export const DEMO_WORKSHOP = {
  ...blankWorkshop,
  name: 'Quay & Alder',
  tagline: 'Portable music electronics, repaired by post and proved before they go back',
  addressLines: ['The Net Loft', '4 Slip Lane'],
  postcode: 'QM1 4QA',
  town: 'Sandmouth',
  country: 'GB',
  email: 'bench@quayandalder.example.org',
  phone: '01632 960142',
  timeZone: 'Europe/London',
  currency: 'GBP',
  locale: 'en-GB',
  paper: 'A4',
  pricesIncludeTax: true,
  taxNumber: 'GB 000 0000 00',
  taxName: 'VAT',
  taxExemptReason: '',
  holidayCountry: 'GB',
  holidayRegion: 'ENG',
  returnFeeMinor: 960,
  inspectionFeeMinor: 1800,
  isInspectionFeeTakenOff: true,
  labourRateMinor: 4500,
  capacityMinutesDay: 420,
  approvalDays: 30,
  remindDays: 5,
  dueDays: 14,
  bankHolder: 'Quay & Alder',
  iban: '',
  bic: '',
  payLink: 'https://pay.example.org/quayandalder?amount={amount}&currency={currency}&for={reference}',
  withdrawalRule: 'uk',
  replacementText: '',
  paymentText: PAYMENT,
  packingText: PACKING,
  termsText: TERMS,
  privacyText: PRIVACY,
  territory: 'the United Kingdom, Ireland and the countries of the European Union',
  unclaimedAfterDays: 21,
  unclaimedEveryDays: 21,
  unclaimedNotices: 3,
  storageText:
    'We keep it dry and safe meanwhile. After the last notice the owner decides by local law what happens with it.',
  parcelRemindDays: 14,
  parcelOverDays: 45,
  keepMonths: 84,
  customsFree: [],
} satisfies WorkshopCard;

export async function writeWorkshop(tx: Tx, now: Date): Promise<void> {
  await tx.workshop.create({ data: { ...DEMO_WORKSHOP, updatedAt: now } });
  await writeCarriers(tx);
}

/** Days the workshop is closed besides public holidays, in the years around today. */
export function closingDaysAround(today: Day): { day: Day; name: string }[] {
  const { year } = partsOf(today);
  return [year - 2, year - 1, year, year + 1].flatMap((each) => [
    { day: firstFriday(each, 6), name: 'Herring fair: the lane is closed' },
    { day: dayOf(each, 9, 15), name: 'Stocktaking' },
    ...[29, 30, 31].map((date) => ({ day: dayOf(each, 12, date), name: 'Between the years' })),
  ]);
}

function firstFriday(year: number, month: number): Day {
  const first = dayOf(year, month, 1);
  return addDays(first, (5 - isoWeekday(first) + 7) % 7);
}
