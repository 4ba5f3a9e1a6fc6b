import type { Day } from '@/lib/calendar/day';
import { pick } from '../chance';
import type { Course } from '../course';
import type { Shot } from '../photos';
import type { DemoBooking, Shop } from '../shop';
import type { HandName } from '../staff';
import type { Story } from './story';

export type UsualWork = {
  finding: string;
  shots?: Shot[];
  work: string;
  minutes: number;
  /** part code and lot, each once, or with a number of pieces */
  parts?: (readonly [part: string, lot: string, quantity?: number])[];
  by?: HandName;
  /** the work done, before the case is closed */
  proof?: Shot;
  /** working days more than usual before the bench comes to it */
  waits?: number;
};

/** From arrival to ready in the usual way. */
export async function repairAsUsual(job: Course, o: UsualWork): Promise<void> {
  const by = o.by ?? 'bench';
  job.later(pick(`${job.key}/post`, 1, 3), `10:${pick(`${job.key}/arrives`, 10, 50)}`);
  await job.arrive();
  job.later(pick(`${job.key}/waits`, 1, 3) + (o.waits ?? 0), `11:${pick(`${job.key}/assess`, 10, 50)}`);
  await job.move('assess', { by });
  await job.find(o.finding, o.shots, by);
  job.later(pick(`${job.key}/bench`, 1, 2), '13:10');
  await job.move('start-bench', { by });
  await repairOnBench(job, o);
}

/** The work at the bench, its parts, and the proof. */
export async function repairOnBench(job: Course, o: Omit<UsualWork, 'finding'>): Promise<void> {
  const by = o.by ?? 'bench';
  for (const [part, lot, quantity] of o.parts ?? []) await job.use(part, lot, quantity, by);
  await job.work(o.work, o.minutes, by);
  await job.move('prove', { by });
  await job.passChecks(by);
  if (o.proof) await job.photograph('proof', [o.proof], by);
  await job.move('pass-checks', { by });
}

/** Paid, sent back and, ten days later, closed by the clock. Returns the certificate's number, if one was issued. */
export async function payAndSendBack(job: Course, sentOn?: Day): Promise<string | null> {
  job.later(pick(`${job.key}/pays`, 0, 2), '17:20');
  await job.pay();
  if (sentOn) job.on(sentOn, '16:05');
  else job.later(1, '16:05');
  const certificate = await job.sendBack();
  await job.closeByClock();
  return certificate;
}

type PastJob = UsualWork &
  Omit<DemoBooking, 'at'> & {
    key: string;
    ago: number;
    time?: string;
    /** the day it went back, where it matters when its cover ends */
    sentOn?: (shop: Shop) => Day;
  };

/** A job that went from booking to closing as most do, booked some calendar days ago. */
export function pastJob({ key, ago, time = '20:14', ...o }: PastJob): Story {
  return {
    key,
    tell: async (shop) => {
      const job = await shop.book(key, { ...o, at: shop.ago(ago, time) });
      await repairAsUsual(job, o);
      await payAndSendBack(job, o.sentOn?.(shop));
    },
  };
}
