import { recordCheck } from '@/lib/bench/record-check';
import { dayInZone } from '@/lib/calendar/day';
import { factsOf } from '@/lib/jobs/facts';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { assessedJob } from './course';
import { askPrice, PAD } from './offer';
import type { makeFaderRepair } from './second-repair';
import { jobNow, moveTo, sendBack } from './walk';
import { BENCH, type makeWorkshop } from './workshop';

export const SOCKET = { ...PAD, description: 'USB-C socket replaced', amount: 7200 };
export const FADER = { ...PAD, description: 'Fader replaced', amount: 6000 };

type World = Awaited<ReturnType<typeof makeWorkshop>>;
type Fader = Awaited<ReturnType<typeof makeFaderRepair>>;
/** `now`: of the price; `later`: of the yes and all that is done after it. */
type When = { now: Date; later: Date };

const tick = (jobId: string, checkId: string, now: Date) =>
  recordCheck({ jobId, checkId, given: { tick: true }, note: '', actor: BENCH, now });

/** A socket and a fader, both agreed to and done, with the socket's checks passed; gives the job, on which the fader's is still to come. */
export async function makeBothDone(world: World, { now, later }: When): Promise<string> {
  const jobId = await assessedJob(world, now);
  const revision = await askPrice(jobId, now, { lines: [SOCKET, FADER] });
  await decideOffer({ jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now: later });
  await recordWork({ jobId, text: 'Socket and fader replaced', minutes: 80, actor: BENCH, now: later });
  await moveTo(jobId, 'prove', later);
  await tick(jobId, world.tilt, later);
  await recordCheck({
    jobId,
    checkId: world.voltage,
    given: { reading: 5 },
    note: '',
    actor: BENCH,
    now: later,
  });
  return jobId;
}

/** The fader's check, the payment and the way back of such a job; gives the certificate's number. */
export async function sendBothBack(jobId: string, fader: Fader, { later }: When): Promise<string> {
  await tick(jobId, fader.checkId, later);
  await moveTo(jobId, 'pass-checks', later);
  const { owed } = factsOf(await jobNow(jobId));
  await recordPayment({
    jobId,
    amount: owed,
    method: 'card',
    reference: '',
    receivedOn: dayInZone(later, 'Europe/London'),
    actor: BENCH,
    now: later,
  });
  const { certificate } = await sendBack(jobId, later);
  if (!certificate) throw new Error('no certificate was issued');
  return certificate.number;
}
