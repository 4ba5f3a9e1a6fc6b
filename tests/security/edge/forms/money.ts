import { type Form, lines } from './form';

/** The workshop's money, which two schemas read. */
export const money: Form = {
  fields: {
    currency: 'GBP',
    pricesIncludeTax: 'yes',
    taxName: 'VAT',
    taxNumber: 'GB 123',
    taxExemptReason: '',
    returnFee: '8.00',
    inspectionFee: '0',
    labourRate: '40.00',
    isInspectionFeeTakenOff: 'yes',
    approvalDays: '30',
    remindDays: '5',
    dueDays: '14',
    bankHolder: 'Quay & Alder',
    // The registry's own example for the United Kingdom (ISO 13616, SWIFT IBAN registry).
    iban: 'GB29 NWBK 6016 1331 9268 19',
    bic: 'NWBKGB2L',
    payLink: '',
    withdrawalRule: 'uk',
    replacementText: lines,
  },
};
