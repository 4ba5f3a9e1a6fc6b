import type { Tx } from '@/lib/db/transaction';

/** Who a job is for, as a form takes it: an address in two lines. */
export type NewCustomer = {
  name: string;
  email: string;
  phone: string;
  address1: string;
  address2: string;
  postcode: string;
  town: string;
  country: string;
};

/** Writes the customer of a job; every job has a row of its own, as its papers name them. */
export async function writeCustomer(tx: Tx, o: NewCustomer, now: Date): Promise<{ id: string }> {
  const { name, email, phone, postcode, town, country } = o;
  return tx.customer.create({
    data: { name, email, phone, postcode, town, country, addressLines: addressLinesOf(o), createdAt: now },
    select: { id: true },
  });
}

/** The lines of an address below its name, without empty ones. */
export function addressLinesOf({ address1, address2 }: Pick<NewCustomer, 'address1' | 'address2'>): string[] {
  return [address1, address2].filter((line) => line !== '');
}
