import { dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { type AnsweredBy, answerer, requireTold } from '@/lib/jobs/actor';
import { readJob } from '@/lib/jobs/records';
import { lockJob } from '@/lib/jobs/write-lock';
import { settleTold } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { openedAgainFacts } from './opened-again-facts';
import { mayContest } from './rules/ruling';
import { readRuling } from './stored-ruling';
import { OPENED_AGAIN, writeOpenedAgain } from './write-opened-again';

const ONCE = 'You have asked us to look again once already.';

/**
 * The customer's one contest. The claim opens again for a fresh look and the job goes back to assessing; the first
 * ruling stays readable in the history.
 *
 * The form may be sent twice: the claim's own row decides, and the second finds it contested.
 *
 * One that was told to staff is as good as one on the page, as long as that could be pressed: until the unit leaves. It was said after
 * the customer was told the ruling; they get back by mail what was written down, in the place of the mail that tells the workshop.
 */
export async function contestRuling(
  o: {
    jobId: string;
    /** in the customer's words */
    text: string;
    now: Date;
  } & AnsweredBy,
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const claim = await tx.claim.findUnique({
      where: { jobId: o.jobId },
      select: {
        ...OPENED_AGAIN,
        cause: true,
        ruling: true,
        ruledAt: true,
        secondLookAt: true,
        contestedAt: true,
      },
    });
    const job = o.told ? await readJob({ id: o.jobId }, tx) : null;
    const workshop = await readWorkshop(tx);
    const { locale, timeZone } = workshop;
    const { actor, told } = answerer(o);
    const ruled = claim ? readRuling(claim) : null;
    if (!claim || !ruled?.isFinal) throw new Refusal('not-found', 'There is no ruling to contest.');
    const answer = mayContest({ ruling: ruled.ruling, timesContested: claim.contestedAt ? 1 : 0 });
    if (!answer.allowed) throw new Refusal('conflict', ONCE);
    const toldAt = claim.secondLookAt ?? claim.ruledAt ?? o.now;
    if (job) {
      const [since, today] = [dayInZone(toldAt, timeZone), dayInZone(o.now, timeZone)];
      requireTold(o, { version: job.version, since, today, locale });
    }
    const opened = await writeOpenedAgain(tx, {
      claim,
      move: 'contest',
      event: { kind: 'claim-contested', data: { claim: claim.number, ...(told && { told }) } },
      set: { contestedAt: o.now, contestText: o.text },
      workshop,
      actor,
      now: o.now,
      ...(job && { jobVersion: job.version }),
    });
    if (!opened) throw new Refusal('conflict', ONCE);
    const about = { jobId: o.jobId, now: o.now };
    if (job && told) {
      await settleTold(tx, o);
      await queueMail(tx, {
        template: 'contest-recorded',
        data: {
          claimNumber: claim.number,
          told,
          ...openedAgainFacts(job, opened, { workshop, now: o.now }),
        },
        to: job.customer.email,
        ...about,
      });
    } else if (workshop.email !== '') {
      await queueMail(tx, {
        template: 'claim-contested',
        data: { claimNumber: claim.number, text: o.text },
        to: workshop.email,
        ...about,
      });
    }
  });
}
