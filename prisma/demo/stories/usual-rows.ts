import { transaction } from '@/lib/db/transaction';
import type { Cause } from '@/lib/warranty/rules/causes';
import { INSPECTION_ITEMS } from '@/lib/warranty/rules/inspection';
import { type BenchWork, benchInOneGo } from '../bench-in-one-go';
import { pick } from '../chance';
import { claimOn } from '../claim-course';
import type { Course } from '../course';
import type { CustomerKey } from '../customers';
import type { Story } from './story';
import { payAndSendBack } from './usual';

export type CameBack = {
  /** calendar days before today on which the claim was opened */
  ago: number;
  symptom: string;
  details: string;
  cause: Cause;
  reasonText: string;
  lesson: string;
  work: string;
  minutes: number;
  part?: readonly [part: string, lot: string];
};

export type UsualRow = BenchWork & {
  key: string;
  ago: number;
  repair: string;
  customer: CustomerKey;
  serial: string;
  problem: string;
  battery?: string;
  cameBack?: CameBack;
};

/** A job like dozens of others, told in fewer queries than those that have something to show; some came back. */
export function usualRow({ key, ago, cameBack, ...o }: UsualRow): Story {
  return {
    key,
    tell: async (shop) => {
      const at = shop.ago(ago, `19:${pick(`${key}/booked`, 10, 50)}`);
      const job = await shop.book(key, { ...o, at });
      job.later(pick(`${key}/post`, 1, 3), `10:${pick(`${key}/arrives`, 10, 50)}`);
      await job.arrive();
      job.later(pick(`${key}/waits`, 1, 3), `11:${pick(`${key}/assess`, 10, 50)}`);
      await benchInOneGo(job, o);
      await job.move('pass-checks', { by: o.by ?? 'bench' });
      await payAndSendBack(job);
      if (cameBack) await comeBack(job, cameBack, o.by);
    },
  };
}

async function comeBack(job: Course, o: CameBack, by: BenchWork['by']): Promise<void> {
  const { shop, key } = job;
  const claim = await claimOn(job, {
    symptom: o.symptom,
    details: o.details,
    at: shop.ago(o.ago, `20:${pick(`${key}/claims`, 10, 50)}`),
  });
  claim.later(pick(`${key}/claim-post`, 2, 4), `10:${pick(`${key}/claim-arrives`, 10, 50)}`);
  await claim.arrive();
  const items = INSPECTION_ITEMS.map(({ key: item }) => ({
    claimId: claim.claimId,
    item,
    answer: item === 'self-test-as-received' ? 'yes' : 'no',
    at: claim.at,
    userId: shop.hands[by ?? 'bench'].id,
  }));
  await transaction((tx) => tx.inspectionEntry.createMany({ data: items }));
  const { cause, reasonText, lesson } = o;
  await claim.rule({ cause, reasonText, lesson, ...(by && { by }) });
  claim.later(1, '11:20');
  await benchInOneGo(claim, {
    work: o.work,
    minutes: o.minutes,
    ...(o.part && { part: o.part }),
    ...(by && { by }),
  });
  await claim.move('pass-checks', { by: by ?? 'bench' });
  claim.later(1, '15:40');
  await claim.sendBack({ postage: 480 });
  await claim.closeByClock();
}
