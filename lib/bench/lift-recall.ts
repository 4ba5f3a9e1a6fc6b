import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { liftUnits, recallsOf } from './recall-records';
import { forgetRecalledUnits } from './stored-recalled-units';

/**
 * Lifts the recall of a lot that was made by mistake: its pieces are stock again, units leave with them, and the warnings end. Who was
 * written to about it and still has a piece is written to again, once; each job's history says so, all in one transaction. The recall
 * itself stays as it was. Refuses where none is in force, where another one is than was looked at, and where the list is no longer as long;
 * the same words sent twice lift once.
 */
export async function liftRecall(
  o: ByStaff & {
    lotId: string;
    /** The letter, or why it is lifted where nobody was written to. */
    text: string;
    /** Letters the person saw before pressing. */
    letters: number;
    /** The recalls in force that the person saw, by id. */
    recalls: readonly string[];
  },
): Promise<void> {
  await transaction(async (tx) => {
    const lot = await tx.lot.findUnique({
      where: { id: o.lotId },
      select: { code: true, part: { select: { name: true } } },
    });
    if (!lot) throw new Refusal('not-found', 'This lot is no longer on the list.');
    // Whoever recalls it, takes a piece of it or lifts it too waits, and then finds it as it is left here.
    await tx.$queryRaw`SELECT 1 FROM "lot" WHERE "id" = ${o.lotId} FOR UPDATE`;
    const recalls = await recallsOf(o.lotId, tx);
    const inForce = recalls.filter(({ lifted }) => lifted === null);
    if (inForce.length === 0) {
      if (recalls.some(({ lifted }) => lifted?.text === o.text)) return;
      throw new Refusal('conflict', 'No recall of this lot is in force any more.');
    }
    // As many letters may go out for another recall: what is lifted has to be what was read.
    const ids = inForce.map(({ id }) => id);
    if (ids.length !== o.recalls.length || ids.some((id) => !o.recalls.includes(id))) {
      throw new Refusal(
        'conflict',
        'This lot was recalled again since you looked at it. Read what is in force now before you lift it.',
      );
    }
    const units = await liftUnits(o.lotId, ids, tx);
    const letters = units.filter(({ what }) => what === 'letter');
    if (letters.length !== o.letters) {
      throw new Refusal(
        'conflict',
        'The list has changed since you looked at it. Look at it again, then lift the recall.',
      );
    }
    const { text } = o;
    await tx.lotRecallLifted.createMany({
      data: inForce.map(({ id }) => ({
        recallId: id,
        text,
        mails: letters.length,
        at: o.now,
        userId: o.actor.id,
      })),
    });
    const about = { part: lot.part.name, lot: lot.code };
    for (const { jobId, email, what } of units) {
      const isTold = what === 'letter';
      if (isTold) {
        const mail = { template: 'lot-recall-lifted' as const, data: { ...about, text } };
        await queueMail(tx, { to: email, jobId, now: o.now, ...mail });
      }
      await writeEvent(tx, {
        jobId,
        actor: o.actor,
        now: o.now,
        event: { kind: 'lot-recall-lifted', data: { ...about, isTold } },
      });
    }
  });
  forgetRecalledUnits();
}
