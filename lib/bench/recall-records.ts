import { db } from '@/lib/db/client';
import { newestFirst } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { readStage } from '@/lib/jobs/records';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';

export type RecallUnit = {
  jobId: string;
  jobNumber: string;
  stage: string;
  unit: string;
  serial: string;
  customer: string;
  email: string;
  /** letter: goes out. here: the unit is with us. no-address: the customer's data was erased. */
  what: 'letter' | 'here' | 'no-address';
};

/**
 * Every unit that carries a piece of a lot, each job once, with who would get a letter about it; those who would first. A piece that
 * was noted as out is carried no more.
 */
export async function recallUnits(lotId: string, client: Tx = db): Promise<RecallUnit[]> {
  const jobs = await client.job.findMany({
    where: { partUses: { some: { lotId, takenOutAt: null } } },
    orderBy: { number: 'asc' },
    select: {
      id: true,
      number: true,
      stage: true,
      serialTyped: true,
      model: { select: { maker: true, name: true } },
      customer: { select: { name: true, email: true, erasedAt: true } },
    },
  });
  const units = jobs.map(
    ({ customer, ...job }): RecallUnit => ({
      jobId: job.id,
      jobNumber: job.number,
      stage: job.stage,
      unit: `${job.model.maker} ${job.model.name}`,
      serial: job.serialTyped,
      customer: customer.name,
      email: customer.email,
      what: !LEFT_STAGES.includes(readStage(job.stage))
        ? 'here'
        : customer.erasedAt !== null || customer.email === ''
          ? 'no-address'
          : 'letter',
    }),
  );
  return [
    ...units.filter((unit) => unit.what === 'letter'),
    ...units.filter((unit) => unit.what !== 'letter'),
  ];
}

/** Letters about a lot so far, the newest first. */
export async function recallsOf(lotId: string) {
  return db.lotRecall.findMany({ where: { lotId }, orderBy: newestFirst });
}
