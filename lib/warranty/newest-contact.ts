import { db } from '@/lib/db/client';

/**
 * Whose unit it was when its certificate was last issued, as fields of a form; each empty once their data was removed. The unit may
 * have passed on since, so whoever takes this over compares it.
 */
export async function newestContact(jobId: string) {
  const { customer } = await db.job.findUniqueOrThrow({
    where: { id: jobId },
    select: {
      customer: {
        select: {
          name: true,
          email: true,
          phone: true,
          addressLines: true,
          postcode: true,
          town: true,
          country: true,
          erasedAt: true,
        },
      },
    },
  });
  const { name, email, phone, postcode, town, country } = customer;
  const [address1 = '', ...rest] = customer.addressLines;
  return {
    name: customer.erasedAt === null ? name : '',
    email,
    phone,
    address1,
    address2: rest.join(', '),
    postcode,
    town,
    country,
  };
}
