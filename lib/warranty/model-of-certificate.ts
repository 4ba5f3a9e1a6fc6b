import { db } from '@/lib/db/client';
import { MODEL_OF_CERTIFICATE } from './records';

/** The model a certificate's unit is of, by the job that issued it. */
export async function modelOfCertificate(jobId: string) {
  const job = await db.job.findUniqueOrThrow({
    where: { id: jobId },
    select: { model: { select: MODEL_OF_CERTIFICATE } },
  });
  return job.model;
}
