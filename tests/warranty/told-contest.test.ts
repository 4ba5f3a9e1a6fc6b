import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { db } from '@/lib/db/client';
import { recordFinding } from '@/lib/jobs/record-finding';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import type { ToldBy } from '@/lib/jobs/rules/told';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { countClaims } from '@/lib/warranty/claim-desk';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { useDatabase } from '@/tests/database';
import { PAD, writePrice } from '@/tests/makers/offer';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
/** A Monday; the ruling is told on it. */
const RULED = new Date('2027-02-08T10:00:00Z');
const FOUND = new Date('2027-02-10T10:00:00Z');
const WORDS = 'It was never wet.';

let claim: Awaited<ReturnType<typeof makeClaim>>;
let jobId: string;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT);
  const claim = await makeClaim({ number, now: RULED });
  await takeIn(claim.jobId, RULED);
  await moveTo(claim.jobId, 'assess', RULED);
  return claim;
});
beforeEach(async () => {
  claim = await begin();
  jobId = claim.jobId;
}, 60_000);

type Over = { on?: string; how?: ToldBy; version?: number; seen?: string };

const contest = async ({ on = '2027-02-09', how = 'telephone', version, seen }: Over = {}) =>
  contestRuling({
    ...{ jobId, text: WORDS, actor: BENCH, now: FOUND, seen },
    told: { how, on: day(on), words: WORDS },
    version: version ?? (await jobNow(jobId)).version,
  });
const refusalOf = async (work: () => Promise<unknown>) => {
  const outcome = await attempt(work);
  return outcome.ok ? 'done' : `${outcome.refusal.field ?? ''} ${outcome.refusal.message}`;
};
const letter = async () => {
  const mails = await db.mail.findMany({ where: { jobId, template: 'contest-recorded' } });
  expect(mails).toHaveLength(1);
  const [mail] = mails;
  return mail ? (await drawMail(mail)).text.replace(/\s+/g, ' ') : '';
};

describe('a contest that the customer told some other way', () => {
  it('stands where one stands that was pressed, and its customer reads what was written down', async () => {
    await ruleClaim(claim, { cause: 'damage-after-return', now: RULED });
    await moveTo(jobId, 'return-unrepaired', RULED);
    await contest();
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'assessing', readyAt: null });
    expect(job.claim).toMatchObject({ state: 'open', ruling: null, contestedAt: FOUND, contestText: WORDS });
    expect(job.events.find(({ kind }) => kind === 'claim-contested')).toMatchObject({
      actorId: BENCH.id,
      data: { claim: claim.number, told: { how: 'telephone', on: '2027-02-09', words: WORDS } },
    });
    expect(await countClaims()).toMatchObject({ contested: 1, ruled: 0 });
    const { lists } = await readToday(FOUND);
    expect(lists.claims.find((row) => row.job.number === job.number)?.job.claim).toMatchObject({
      standing: 'contested',
    });
    const text = await letter();
    expect(text).toContain('You told us by telephone on Tuesday 9 February 2027');
    expect(text).toContain('we wrote it down as your wish that we look again. Not so? Tell us at once.');
    expect(text).toContain(WORDS);
    expect(text).toContain('It is not ready to go back any more');
    const promised = job.promisedOn && dayFromDate(job.promisedOn);
    expect(text).toContain(`We promise it ready by ${promised && formatDay(promised, 'en-GB', 'weekday')}`);
    // The workshop wrote it down itself.
    expect(await db.mail.count({ where: { jobId, template: 'claim-contested' } })).toBe(0);
  });

  it('takes off a price that was asked for with the ruling', async () => {
    await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: RULED });
    await ruleClaim(claim, { cause: 'separate-fault', now: RULED });
    await writePrice(jobId, RULED, { lines: [{ ...PAD, amount: 6000 }] });
    await moveTo(jobId, 'ask-approval', RULED);
    await contest({ how: 'letter' });
    expect((await jobNow(jobId)).quotes[0]?.revisions.map(({ state }) => state)).toEqual([
      'accepted',
      'replaced',
    ]);
    const text = await letter();
    expect(text).toContain('in a letter of Tuesday 9 February 2027');
    expect(text).toContain('You need not answer the price of £60.00 with tax');
    expect(text).not.toContain('not ready to go back');
  });

  it('is of a day from the ruling to today, of the job as it was seen, and given once', async () => {
    await ruleClaim(claim, { cause: 'damage-after-return', now: RULED });
    expect(await refusalOf(() => contest({ on: '2027-02-07' }))).toBe(
      'on Enter the day they told us: Monday 8 February 2027 or after',
    );
    expect(await refusalOf(() => contest({ on: '2027-02-11' }))).toBe(
      'on Enter the day they told us: today or before',
    );
    expect(await refusalOf(() => contest({ version: 1 }))).toMatch(/This job changed/);
    expect(await refusalOf(() => contest({ on: '2027-02-08' }))).toBe('done');
    expect(await refusalOf(() => contest())).toMatch(/no ruling to contest/);
    await ruleClaim(claim, { cause: 'damage-after-return', now: FOUND });
    expect(await refusalOf(() => contest({ on: '2027-02-10' }))).toMatch(/once already/);
  });

  it('is not written down of a unit that has left', async () => {
    await ruleClaim(claim, { cause: 'damage-after-return', now: RULED });
    await moveTo(jobId, 'return-unrepaired', RULED);
    await sendBack(jobId, FOUND);
    expect(await refusalOf(() => contest())).not.toBe('done');
    expect((await jobNow(jobId)).claim).toMatchObject({ state: 'closed', contestedAt: null });
  });

  it('answers the message that it stood in', async () => {
    await ruleClaim(claim, { cause: 'damage-after-return', now: RULED });
    await sendMessage({ jobId, text: WORDS, actor: { kind: 'customer' }, now: FOUND });
    const seen = lastWaiting((await jobNow(jobId)).messages)?.id ?? '';
    await contest({ how: 'e-mail', on: '2027-02-10', seen });
    expect(lastWaiting((await jobNow(jobId)).messages)).toBeNull();
  });
});
