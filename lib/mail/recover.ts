import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { requeue } from './queue';

const batch = 100;
const longestTry = 5 * 60_000;

type Lost = { id: string; state: string; attempts: number; queueState: string | null };

/**
 * Finds messages that wait and that no job of the queue will ever carry, and puts them right: after a worker died in
 * its last try, after a restore of a database without the queue, after the queue forgot an old job. Returns how many.
 *
 * A message whose last try never ended is not sent again by itself, because it may have left: it is failed, with that
 * reason, and a person decides.
 */
export async function recoverMail(now: Date): Promise<number> {
  const claimedBefore = new Date(now.getTime() - longestTry);
  // Claimed by a clock that was ahead and has been set right since.
  const claimedAfter = new Date(now.getTime() + longestTry);
  const lost = await db.$queryRaw<Lost[]>`
    select m.id, m.state, m.attempts, j.state::text as "queueState"
    from mail m left join pgboss.job j on j.name = 'mail' and j.id::text = m.id
    where (m.state = 'queued' or (m.state = 'sending'
        and (m."claimedAt" < ${claimedBefore} or m."claimedAt" > ${claimedAfter})))
      and (j.id is null or j.state > 'active')
    order by m."queuedAt" limit ${batch}`;
  for (const mail of lost) await (isUnsure(mail) ? giveUp(mail) : putBack(mail));
  return lost.length;
}

function isUnsure(mail: Lost): boolean {
  return mail.state === 'sending' && mail.queueState === 'failed';
}

async function giveUp({ id, attempts }: Lost): Promise<void> {
  const lastError = 'The last try did not come to an end. The message may have left.';
  await db.mail.updateMany({
    where: { id, state: 'sending', attempts },
    data: { state: 'failed', lastError },
  });
}

async function putBack({ id, state, attempts }: Lost): Promise<void> {
  await transaction(async (tx) => {
    const changed = await tx.mail.updateMany({ where: { id, state, attempts }, data: { state: 'queued' } });
    if (changed.count === 1) await requeue(tx, id);
  });
}
