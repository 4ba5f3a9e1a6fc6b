import type { Workshop } from '@/lib/db/generated/client';
import { DEFAULT_PACKING, DEFAULT_PRIVACY, DEFAULT_TERMS } from './default-texts';
import { PLACEHOLDER_NAME } from './rules/missing-settings';

export type Paper = 'A4' | 'LETTER';

/** Every column of the workshop's one row. */
export type WorkshopCard = Omit<Workshop, 'paper'> & { paper: Paper };

/**
 * What the program knows about a workshop before its owner has filled in the settings page.
 *
 * A fresh installation has no row yet. Pages still have to draw and the owner still has to sign in, so reading falls
 * back to these values; lib/workshop/rules/missing-settings.ts says what has to be filled in, and the first save writes the row.
 */
export const blankWorkshop: WorkshopCard = {
  id: 1,
  name: PLACEHOLDER_NAME,
  tagline: 'Repairs by post, with a written warranty',
  addressLines: [],
  postcode: '',
  town: '',
  country: 'GB',
  email: '',
  phone: '',
  timeZone: 'Europe/London',
  currency: 'GBP',
  locale: 'en-GB',
  paper: 'A4',
  pricesIncludeTax: true,
  taxNumber: '',
  taxName: 'VAT',
  taxExemptReason: '',
  holidayCountry: 'GB',
  holidayRegion: 'ENG',
  returnFeeMinor: 0,
  inspectionFeeMinor: 0,
  isInspectionFeeTakenOff: true,
  labourRateMinor: 0,
  capacityMinutesDay: 360,
  promiseAim: 80,
  answerDays: 2,
  approvalDays: 30,
  remindDays: 5,
  dueDays: 14,
  bankHolder: '',
  iban: '',
  bic: '',
  payLink: '',
  withdrawalRule: 'off',
  replacementText: '',
  paymentText: '',
  packingText: DEFAULT_PACKING,
  termsText: DEFAULT_TERMS,
  privacyText: DEFAULT_PRIVACY,
  territory: '',
  unclaimedAfterDays: 21,
  unclaimedEveryDays: 21,
  unclaimedNotices: 3,
  storageText: '',
  parcelRemindDays: 14,
  parcelOverDays: 45,
  keepMonths: 84,
  customsFree: [],
  asksSecondStep: false,
  updatedAt: new Date(0),
};
