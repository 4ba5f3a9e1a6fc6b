import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { newestFirst } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { readStage } from '@/lib/jobs/records';
import { parseEvent } from '@/lib/jobs/rules/events';
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
      unit: unitName(job.model),
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

/** Letters about a lot so far and stops without one, the newest first; `lifted` is set on those that were a mistake. */
export async function recallsOf(lotId: string, client: Tx = db) {
  return client.lotRecall.findMany({ where: { lotId }, orderBy: newestFirst, include: { lifted: true } });
}

/** A unit that carries a piece of a recalled lot, with who hears that the recall was a mistake. */
export type LiftUnit = Omit<RecallUnit, 'what'> & {
  /** letter: was written to, and is again. untold: was not, so no word of it is needed. no-address: was, and the customer's data was erased since. */
  what: 'letter' | 'untold' | 'no-address';
};

/** Every unit that carries a piece of a lot, with whether its customer was written to by one of these recalls; those who were first. */
export async function liftUnits(
  lotId: string,
  recallIds: readonly string[],
  client: Tx = db,
): Promise<LiftUnit[]> {
  const [units, events] = [
    await recallUnits(lotId, client),
    await client.jobEvent.findMany({
      where: { kind: 'lot-recalled', job: { partUses: { some: { lotId, takenOutAt: null } } } },
      select: { jobId: true, data: true },
    }),
  ];
  const told = new Set(
    events.flatMap(({ jobId, data }) => {
      const event = parseEvent('lot-recalled', data);
      const isTold =
        event.kind === 'lot-recalled' && !event.data.isHere && recallIds.includes(event.data.recallId);
      return isTold ? [jobId] : [];
    }),
  );
  const lifted = units.map(
    ({ what: _, ...unit }): LiftUnit => ({
      ...unit,
      what: !told.has(unit.jobId) ? 'untold' : unit.email === '' ? 'no-address' : 'letter',
    }),
  );
  return [
    ...lifted.filter((unit) => unit.what === 'letter'),
    ...lifted.filter((unit) => unit.what !== 'letter'),
  ];
}
