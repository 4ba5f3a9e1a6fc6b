import type { Tx } from '@/lib/db/transaction';
import { type AddressAnswers, addressLinesOf } from './rules/address';

/** Writes the customer of a job; every job has a row of its own, as its papers name them. */
export async function writeCustomer(tx: Tx, o: AddressAnswers, now: Date): Promise<{ id: string }> {
  const { name, email, phone, postcode, town, country } = o;
  return tx.customer.create({
    data: { name, email, phone, postcode, town, country, addressLines: addressLinesOf(o), createdAt: now },
    select: { id: true },
  });
}
