import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { idOfSent, writeOnce } from '@/lib/jobs/write-once';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { recallUnits } from './recall-records';
import { forgetRecalledUnits } from './stored-recalled-units';

/**
 * Stops a lot, and writes to everybody whose unit carries a piece of it: one letter a unit, a line in each job's history, and the
 * words kept with the lot, all in one transaction. A unit that is here does not leave before the piece is out, and no more of the lot
 * is fitted. A second press of the same form finds the first one's row and writes to nobody. Refuses where nobody is to be written to
 * and no unit is here, and where the list is no longer the one that was looked at.
 */
export async function recallLot(
  o: ByStaff & {
    lotId: string;
    /** The letter, or why the lot is stopped where nobody is written to. */
    text: string;
    /** Letters the person saw before pressing. */
    letters: number;
    formKey: string;
  },
): Promise<void> {
  await writeOnce('lot_recall_pkey', () =>
    transaction(async (tx) => {
      const lot = await tx.lot.findUnique({
        where: { id: o.lotId },
        select: { code: true, part: { select: { name: true } } },
      });
      if (!lot) throw new Refusal('not-found', 'This lot is no longer on the list.');
      // Whoever takes a piece meanwhile waits, and then finds the lot recalled.
      await tx.$queryRaw`SELECT 1 FROM "lot" WHERE "id" = ${o.lotId} FOR UPDATE`;
      const all = await recallUnits(o.lotId, tx);
      const units = all.filter((unit) => unit.what === 'letter');
      // The row first: of two presses at once the second waits here and then finds it.
      const { id } = await tx.lotRecall.create({
        data: {
          ...idOfSent(o.formKey, [o.lotId, o.text]),
          lotId: o.lotId,
          text: o.text,
          mails: units.length,
          at: o.now,
          userId: o.actor.id,
        },
        select: { id: true },
      });
      const here = all.filter((unit) => unit.what === 'here');
      if (units.length === 0 && here.length === 0) {
        throw new Refusal('invalid', 'No unit that carries this lot is here or can be written about.');
      }
      if (units.length !== o.letters) {
        throw new Refusal(
          'conflict',
          'The list has changed since you looked at it. Look at it again, then send.',
        );
      }
      const about = { part: lot.part.name, lot: lot.code };
      for (const unit of units) {
        const mail = { template: 'lot-recall' as const, data: { ...about, text: o.text } };
        await queueMail(tx, { to: unit.email, jobId: unit.jobId, now: o.now, ...mail });
        await writeEvent(tx, {
          jobId: unit.jobId,
          actor: o.actor,
          now: o.now,
          event: { kind: 'lot-recalled', data: { recallId: id, ...about } },
        });
      }
      for (const unit of here) {
        await writeEvent(tx, {
          jobId: unit.jobId,
          actor: o.actor,
          now: o.now,
          event: { kind: 'lot-recalled', data: { recallId: id, ...about, isHere: true } },
        });
      }
    }),
  );
  forgetRecalledUnits();
}
