import { dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { findPerson } from './records';
import { REMOVAL_SENTENCES, removalProblems } from './rules/retention';
import { noteSeenWhole } from './seen';
import { readRemovalFacts } from './stored-removal';
import { type Removed, writeRemoval } from './write-removal';

/**
 * Removes what is known of the person behind a job or quote, by the owner. Refused while one of their jobs is open, a price
 * waits, their parcel is looked for, they wait for their postage, or cover lives that the owner has not confirmed. A second time there is nothing left, and nothing changes.
 */
export async function erasePerson(
  o: ByStaff & { number: string; isCoverConfirmed: boolean },
): Promise<Removed> {
  return transaction(async (tx) => {
    if (o.actor.kind !== 'owner') throw new Refusal('not-allowed', 'Only the owner removes data.');
    const person = await findPerson(o.number, tx);
    if (!person) throw new Refusal('not-found', 'There is nobody behind this number.');
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    const facts = await readRemovalFacts(person, { today, workshop }, tx);
    const [problem] = removalProblems(facts, o.isCoverConfirmed);
    if (problem && person.email !== '') {
      throw new Refusal(
        problem === 'live-cover' ? 'invalid' : 'conflict',
        REMOVAL_SENTENCES[problem],
        problem === 'live-cover' ? 'cover' : undefined,
      );
    }
    await tx.$executeRaw`
      delete from "booking_draft"
      where "jobId" is null and lower(btrim("answers"->'address'->>'email')) = ${person.email}`;
    const removed = await writeRemoval(tx, { ...person, actor: o.actor, now: o.now });
    if (person.email !== '') {
      const seen = { userId: o.actor.id, what: 'erased', email: person.email, now: o.now } as const;
      await noteSeenWhole(seen, person, tx);
    }
    return removed;
  });
}
