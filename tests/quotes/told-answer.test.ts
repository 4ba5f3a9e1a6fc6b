import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import type { ToldBy } from '@/lib/jobs/rules/told';
import { sendMessage } from '@/lib/jobs/send-message';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { jobQuoteData } from '@/lib/quotes/quote-data';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { standingNoOfJob } from '@/lib/quotes/stored-held-no';
import { useDatabase } from '@/tests/database';
import { assessedJob, versionOf } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

/** A Wednesday: five working days on, the promise is Wednesday 2 December; the price holds to the end of Friday 25 December. */
const ASKED = new Date('2026-11-25T09:00:00Z');
/** The Monday after: three working days on. */
const MONDAY = new Date('2026-11-30T09:00:00Z');
const AFTER_IT_HELD = new Date('2026-12-28T09:00:00Z');

useDatabase();

let jobId: string;
const begin = madeOnce(async () => {
  const id = await assessedJob(await makeWorkshop(ASKED), ASKED);
  await askPrice(id, ASKED);
  return id;
});
beforeEach(async () => {
  jobId = await begin();
}, 60_000);

type Over = { on?: string; how?: ToldBy; words?: string; now?: Date; version?: number; seen?: string };

async function by({
  on = '2026-11-30',
  how = 'telephone',
  words = 'Yes, go ahead.',
  now = MONDAY,
  version,
  seen,
}: Over) {
  const told = { how, on: day(on), words };
  return { actor: OWNER, told, version: version ?? (await versionOf(jobId)), now, seen };
}
const answer = async (decision: 'accepted' | 'declined', over: Over = {}) =>
  decideOffer({ jobId, revision: 2, decision, ...(await by(over)) });
const yesAfterAll = async (over: Over = {}) => approveAfterNo({ jobId, revision: 2, ...(await by(over)) });
const refusalOf = async (work: () => Promise<unknown>) => {
  const outcome = await attempt(work);
  return outcome.ok ? 'done' : `${outcome.refusal.field ?? ''} ${outcome.refusal.message}`;
};
const lastMail = async () =>
  (
    await drawMail(
      await db.mail.findFirstOrThrow({
        where: { jobId, template: 'approval-recorded' },
        orderBy: { id: 'desc' },
      }),
    )
  ).text.replace(/\s+/g, ' ');

describe('a yes on the telephone', () => {
  it('is kept as told, by whom it was written down, and never as words that were pressed', async () => {
    await answer('accepted');
    const job = await jobNow(jobId);
    expect(job.stage).toBe('on-bench');
    expect(agreedOf(job)).toMatchObject({
      decidedBy: 'told',
      agreedText:
        'Told us by telephone on Monday 30 November 2026: I agree to £96.00 with tax for this repair, instead of £72.00.',
    });
    const decided = job.events.find(({ kind }) => kind === 'offer-decided');
    expect(decided).toMatchObject({
      actorKind: 'owner',
      actorId: OWNER.id,
      data: { decision: 'accepted', told: { how: 'telephone', on: '2026-11-30', words: 'Yes, go ahead.' } },
    });
    expect((await jobQuoteData(job))?.outcome).toMatch(
      /^Told us by telephone on Monday 30 November 2026: I agree/,
    );
  });

  it('is told back to the customer, with the way to say that it was not so', async () => {
    await answer('accepted');
    const text = await lastMail();
    expect(text).toContain(
      'You told us by telephone on Monday 30 November 2026, and we wrote it down as your yes',
    );
    expect(text).toContain('Yes, go ahead.');
    expect(text).toContain('Not so? Tell us at once.');
    expect(text).toContain('/job/');
  });

  it('counts by its own day: the price held then, and the promise waited until then', async () => {
    await answer('accepted', { on: '2026-11-27', now: MONDAY });
    const job = await jobNow(jobId);
    // Asked on Wednesday, told on Friday: two working days beside the Wednesday that was promised.
    expect(job.promisedOn && dayFromDate(job.promisedOn)).toBe('2026-12-04');
  });

  it.each([
    ['said on the last day that it held', '2026-12-25', 'done'],
    [
      'said a day later',
      '2026-12-26',
      ' This price is no longer valid. We will write to you with a new one.',
    ],
  ])('%s, and written down after it', async (_name, on, said) => {
    expect(await refusalOf(() => answer('accepted', { on, now: AFTER_IT_HELD }))).toBe(said);
  });

  it('is not written down on a day before the price, nor on one to come, nor on a job that changed', async () => {
    expect(await refusalOf(() => answer('accepted', { on: '2026-11-24' }))).toMatch(/^on Enter the day/);
    expect(await refusalOf(() => answer('accepted', { on: '2026-12-01' }))).toMatch(/^on Enter the day/);
    expect(await refusalOf(() => answer('accepted', { version: 1 }))).toMatch(/This job changed/);
    expect((await jobNow(jobId)).stage).toBe('awaiting-approval');
  });

  it('sent twice is one yes', async () => {
    await answer('accepted');
    await answer('accepted', { version: 1 });
    expect(await db.mail.count({ where: { jobId, template: 'approval-recorded' } })).toBe(1);
  });

  it('is refused where it would make the contract: the customer agrees to the terms on their page', async () => {
    await db.job.update({ where: { id: jobId }, data: { termsAcceptedAt: null } });
    expect(await refusalOf(() => answer('accepted'))).toMatch(/^answer This yes makes the contract/);
    expect(await refusalOf(() => answer('declined'))).toBe('done');
  });
});

describe('an answer that stood in a message', () => {
  const write = async (text: string) => {
    await sendMessage({ jobId, text, actor: { kind: 'customer' }, now: MONDAY });
    return lastWaiting((await jobNow(jobId)).messages)?.id;
  };
  const waits = async () => lastWaiting((await jobNow(jobId)).messages) !== null;

  it.each(['accepted', 'declined'] as const)(
    '%s, leaves nothing unanswered that was seen',
    async (decision) => {
      const seen = (await write('This is my answer.')) ?? '';
      await answer(decision, { how: 'e-mail', seen });
      expect(await waits()).toBe(false);
    },
  );

  it('a yes after all does so too', async () => {
    await answer('declined');
    const seen = (await write('I thought again: yes.')) ?? '';
    await yesAfterAll({ how: 'e-mail', seen });
    expect(await waits()).toBe(false);
  });

  it.each([
    ['that was said on the telephone', 'telephone', true],
    ['written down where no message was seen', 'e-mail', false],
  ] as const)('one %s leaves the message waiting', async (_name, how, isSeen) => {
    const seen = await write('And can you clean the keys?');
    await answer('accepted', { how, ...(isSeen && seen && { seen }) });
    expect(await waits()).toBe(true);
  });
});

describe('a no in person', () => {
  it('sends the unit back for the return fee, and may still become a yes, pressed or told', async () => {
    await answer('declined', { how: 'in-person', words: 'Too dear for me.' });
    const job = await jobNow(jobId);
    expect(job.stage).toBe('declined');
    expect(agreedOf(job)).toMatchObject({ grossMinor: 960, decidedBy: 'told' });
    const text = await lastMail();
    expect(text).toContain(
      'You told us in person on Monday 30 November 2026, and we wrote it down as your no',
    );
    expect(text).toContain('Too dear for me.');
    await yesAfterAll({ words: 'I thought again: yes.' });
    const after = await jobNow(jobId);
    expect(after.stage).toBe('on-bench');
    expect(agreedOf(after)?.agreedText).toMatch(
      /^Told us by telephone on .*: I said no to this price before\./,
    );
    expect(await lastMail()).toContain('I thought again: yes.');
  });

  it('becomes a yes by the day that was said, and not on a day before the no', async () => {
    await answer('declined');
    expect(await refusalOf(() => yesAfterAll({ on: '2026-11-27', now: MONDAY }))).toMatch(
      /^on Enter the day/,
    );
    expect(await refusalOf(() => yesAfterAll({ on: '2026-12-26', now: AFTER_IT_HELD }))).toMatch(
      /not held any more/,
    );
    // The form offers it after that day too, and hands over the price that the no was given to.
    expect(standingNoOfJob(await jobNow(jobId))?.revision).toBe(2);
    expect(await refusalOf(() => yesAfterAll({ on: '2026-12-25', now: AFTER_IT_HELD }))).toBe('done');
    expect(standingNoOfJob(await jobNow(jobId))).toBeNull();
  });
});
