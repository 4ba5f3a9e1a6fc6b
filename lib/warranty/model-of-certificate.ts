import { db } from '@/lib/db/client';

/** The model a certificate's unit is of, by the job that issued it. */
export async function modelOfCertificate(jobId: string) {
  const job = await db.job.findUniqueOrThrow({
    where: { id: jobId },
    select: { model: { select: { slug: true, battery: true, batteryWh: true, serialPlace: true } } },
  });
  return job.model;
}
