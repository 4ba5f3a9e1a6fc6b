import { keepAgreed } from '@/lib/bench/write-besides';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { offerOf } from '@/lib/quotes/rules/agreed';
import type { OnJob } from './actor';
import { factsOf } from './facts';
import { readJob } from './records';
import { mayPutUnder, namesOldAlone, UNDER_REPAIR_REASONS, UNDER_REPAIR_STAGES } from './rules/under-repair';
import { writeUnderRepair } from './write-under-repair';

/**
 * Puts a job under the repair that the unit turned out to need, for one that was booked, or guessed at arrival, before anybody had
 * looked. No price changes by it and nobody is written to: another price needs the customer's yes. Where the agreed price names both
 * repairs, the one it was agreed under is proved beside it, since the customer pays for it. Refused while a price that still
 * names the repair before in all its labour waits to be asked for: a yes to it would be to work that is not done.
 */
export async function putUnderRepair(o: OnJob & { repairId: string }): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    const answer = mayPutUnder(factsOf(job));
    if (!answer.allowed) throw new Refusal('conflict', UNDER_REPAIR_REASONS[answer.reason]);
    if (job.repair.id === o.repairId)
      throw new Refusal('conflict', `This job is under “${job.repair.name}” already.`, 'repair');
    const offer = offerOf(job);
    if (offer && namesOldAlone(offer.lines, job.repair))
      throw new Refusal(
        'conflict',
        `A price is written for “${job.repair.name}”. Write it for the other repair first.`,
        'repair',
      );
    await writeUnderRepair(tx, {
      job,
      repairId: o.repairId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: UNDER_REPAIR_STAGES },
    });
    await keepAgreed(tx, { jobId: job.id, before: job.sheet, actor: o.actor, now: o.now });
  });
}
