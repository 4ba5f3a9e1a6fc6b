import type { Day } from '@/lib/calendar/day';
import type { TaxBreakdown, TaxCategory } from '@/lib/money/tax';

/** A party of an invoice as it was on the day of issue. */
export type Party = {
  name: string;
  addressLines: readonly string[];
  postcode: string;
  town: string;
  /** ISO 3166-1 alpha-2 */
  country: string;
  email: string;
};

export type SellerParty = Party & {
  phone: string;
  taxNumber: string;
  taxName: string;
  taxExemptReason: string;
  bankHolder: string;
  iban: string;
  bic: string;
};

export type PaperLine = {
  description: string;
  /** without tax, minor units */
  net: number;
  category: TaxCategory;
  rateBps: number;
};

/** What an invoice or credit note says, as plain data. Amounts are minor units; a credit note's are positive too. */
export type Paper = {
  kind: 'invoice' | 'credit-note';
  number: string;
  /** the invoice that a credit note takes something off */
  corrects: { number: string; issuedOn: Day } | null;
  reason: string;
  currency: string;
  issuedOn: Day;
  /** the day the work was done; null where it was not when this was issued */
  suppliedOn: Day | null;
  dueOn: Day;
  seller: SellerParty;
  buyer: Party;
  lines: readonly PaperLine[];
  breakdown: readonly TaxBreakdown[];
  net: number;
  tax: number;
  rounding: number;
  payable: number;
  /** received before it was issued, of what is payable */
  prepaid: number;
};
