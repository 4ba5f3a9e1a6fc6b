import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { mayContest } from './rules/ruling';
import { readRuling } from './stored-ruling';
import { OPENED_AGAIN, writeOpenedAgain } from './write-opened-again';

const ONCE = 'You have asked us to look again once already.';

/**
 * The customer's one contest. The claim opens again for a fresh look and the job goes back to assessing; the first
 * ruling stays readable in the history.
 *
 * The form may be sent twice: the claim's own row decides, and the second finds it contested.
 */
export async function contestRuling(o: { jobId: string; text: string; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { jobId: o.jobId },
      select: { ...OPENED_AGAIN, cause: true, ruling: true, secondLookAt: true, contestedAt: true },
    });
    const ruled = claim ? readRuling(claim) : null;
    if (!claim || !ruled?.isFinal) throw new Refusal('not-found', 'There is no ruling to contest.');
    const answer = mayContest({ ruling: ruled.ruling, timesContested: claim.contestedAt ? 1 : 0 });
    if (!answer.allowed) throw new Refusal('conflict', ONCE);
    const workshop = await readWorkshop(tx);
    const isOpen = await writeOpenedAgain(tx, {
      claim,
      move: 'contest',
      event: { kind: 'claim-contested', data: { claim: claim.number } },
      set: { contestedAt: o.now, contestText: o.text },
      workshop,
      actor: { kind: 'customer' },
      now: o.now,
    });
    if (!isOpen) throw new Refusal('conflict', ONCE);
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
