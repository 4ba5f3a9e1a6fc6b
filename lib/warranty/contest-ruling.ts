import { transaction } from '@/lib/db/transaction';
import { readStage } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { PROMISE_WAITS } from '@/lib/promise/rules/after-wait';
import { writePromiseMove } from '@/lib/promise/write-move';
import { writeWatch } from '@/lib/returns/write-watch';
import { readWorkshop } from '@/lib/workshop/records';
import { mayContest } from './rules/ruling';
import { readRuling } from './stored-ruling';

/**
 * The customer's one contest. The claim opens again for a fresh look and the job goes back to assessing; the first
 * ruling stays readable in the history. A price that waited for an answer is off, and the days it waited are put on the
 * promise.
 *
 * Staff may be moving the same job: the update names the stages a contest can come from, so a unit that has just been
 * handed to the carrier is not called back, and the customer is told so. The form may be sent twice: the claim's own
 * row decides, and the second finds it contested.
 */
export async function contestRuling(o: { jobId: string; text: string; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { jobId: o.jobId },
      select: {
        id: true,
        number: true,
        certificateNumber: true,
        cause: true,
        ruling: true,
        secondLookAt: true,
        contestedAt: true,
        job: { select: { id: true, stage: true, promisedOn: true, events: { orderBy: { version: 'asc' } } } },
      },
    });
    const ruled = claim ? readRuling(claim) : null;
    if (!claim || !ruled?.isFinal) throw new Refusal('not-found', 'There is no ruling to contest.');
    const answer = mayContest({ ruling: ruled.ruling, timesContested: claim.contestedAt ? 1 : 0 });
    if (!answer.allowed) throw new Refusal('conflict', 'You have asked us to look again once already.');
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: { kind: 'customer' },
      now: o.now,
      expected: { stages: moveOf('contest').from },
      // It is no longer ready, and waits for the bench as any other.
      set: { readyAt: null },
      from: readStage(claim.job.stage),
      to: 'assessing',
      event: { kind: 'claim-contested', data: { claim: claim.number } },
    });
    const { count } = await tx.claim.updateMany({
      where: { id: claim.id, state: 'ruled', contestedAt: null },
      data: {
        state: 'open',
        contestedAt: o.now,
        contestText: o.text,
        cause: null,
        alsoFound: null,
        ruling: null,
        isLetIn: null,
        secondLookAt: null,
        secondLookBy: null,
      },
    });
    if (count === 0) throw new Refusal('conflict', 'You have asked us to look again once already.');
    await writeWatch(tx, [claim.certificateNumber]);
    await tx.quoteRevision.updateMany({
      where: { quote: { jobId: o.jobId }, state: 'sent' },
      data: { state: 'replaced' },
    });
    const workshop = await readWorkshop(tx);
    const waitedAs = PROMISE_WAITS.find((stage) => stage === claim.job.stage);
    if (waitedAs) {
      const by = { actor: { kind: 'customer' }, now: o.now } as const;
      await writePromiseMove(tx, { job: claim.job, furtherDays: 0, waitedAs, workshop, ...by });
    }
    const { email } = workshop;
    if (email === '') return;
    await queueMail(tx, {
      template: 'claim-contested',
      data: { claimNumber: claim.number, text: o.text },
      to: email,
      jobId: o.jobId,
      now: o.now,
    });
  });
}
