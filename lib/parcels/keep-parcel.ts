import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { readJob } from '@/lib/jobs/records';
import { Refusal } from '@/lib/outcome';
import type { ParcelFacts } from './stored-parcel';
import { writeParcel } from './write-parcel';

/** Keeps what a packed parcel weighs, measures and is worth, before anybody chooses who takes it. */
export async function keepParcel(o: OnJob & { parcel: ParcelFacts }): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    await writeParcel(tx, { ...o, job });
  });
}
