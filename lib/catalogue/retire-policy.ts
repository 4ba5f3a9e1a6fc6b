import { db } from '@/lib/db/client';
import { Refusal } from '@/lib/outcome';

/**
 * Takes a policy out of the choice for repairs, or puts it back; repairs that have it, and what was booked, keep it. Of two owners who
 * press at once the second is told: the update asks how the policy stood.
 */
export async function retirePolicy(o: { id: string; isRetired: boolean; now: Date }): Promise<void> {
  const { count } = await db.policy.updateMany({
    where: { id: o.id, retiredAt: o.isRetired ? null : { not: null } },
    data: { retiredAt: o.isRetired ? o.now : null },
  });
  if (count === 0)
    throw new Refusal(
      'conflict',
      'Somebody changed this policy meanwhile. Load the page again to see it as it is.',
    );
}
