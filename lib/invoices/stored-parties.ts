import { z } from 'zod';
import type { WorkshopCard } from '@/lib/workshop/card';

/**
 * Both parties of an invoice as they were on the day of issue, kept with its row: an invoice must not change when the
 * workshop moves or a customer is corrected. Stored for good; a shape is never edited in place.
 */
const party = {
  name: z.string(),
  addressLines: z.array(z.string()),
  postcode: z.string(),
  town: z.string(),
  country: z.string(),
  email: z.string(),
};
export const buyer = z.object(party);
export const seller = z.object({
  ...party,
  phone: z.string(),
  taxNumber: z.string(),
  taxName: z.string(),
  taxExemptReason: z.string(),
  bankHolder: z.string(),
  iban: z.string(),
  bic: z.string(),
  payLink: z.string(),
  paymentText: z.string(),
});
export type Buyer = z.output<typeof buyer>;
export type Seller = z.output<typeof seller>;

export function sellerOf(workshop: WorkshopCard): Seller {
  return seller.parse(workshop);
}

export function buyerOf(customer: z.input<typeof buyer>): Buyer {
  return buyer.parse(customer);
}
