import { day } from '@/lib/calendar/day';
import { recordPayment } from '@/lib/jobs/record-payment';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, moveTo, proveJob, takeIn } from '@/tests/makers/walk';
import { BENCH, type makeWorkshop } from '@/tests/makers/workshop';

type World = Awaited<ReturnType<typeof makeWorkshop>>;

/** A repair that is done and waits to go back, paid unless it is said otherwise. */
export async function makeReady(
  world: World,
  now: Date,
  o: { serial?: string; battery?: string; isPaid?: boolean } = {},
) {
  const { isPaid = true, ...booking } = o;
  const { jobId, number, token } = await makeBooking({ repairId: world.repairId, now, ...booking });
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await moveTo(jobId, 'start-bench', now);
  await proveJob(jobId, world, now);
  if (isPaid) {
    await recordPayment({
      jobId,
      amount: (await jobNow(jobId)).quotes[0]?.revisions[0]?.grossMinor ?? 0,
      method: 'bank transfer',
      reference: '',
      receivedOn: day(now.toISOString().slice(0, 10)),
      actor: BENCH,
      now,
    });
  }
  return { jobId, number, token };
}
