import { db } from '@/lib/db/client';
import { type AddressAnswers, addressFieldsOf } from '@/lib/jobs/rules/address';

/**
 * Whose unit it was when its certificate was last issued, as fields of a form; each empty once their data was removed. The unit may
 * have passed on since, so whoever takes this over compares it.
 */
export async function newestContact(jobId: string): Promise<AddressAnswers> {
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
  const { addressLines, erasedAt, ...contact } = customer;
  return { ...contact, name: erasedAt === null ? contact.name : '', ...addressFieldsOf(addressLines) };
}
