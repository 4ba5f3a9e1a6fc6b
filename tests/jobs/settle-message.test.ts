import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { longSentBack } from '@/lib/jobs/long-sent-back';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import { sendMessage } from '@/lib/jobs/send-message';
import { settleMessage } from '@/lib/jobs/settle-message';
import { readToday } from '@/lib/jobs/today';
import { readUnanswered } from '@/lib/jobs/unanswered';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { settleMessage as settleOnQuote } from '@/lib/quotes/settle-message';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { jobNow, makeCertificate } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();
beforeEach(resetDatabase);

const NOW = new Date('2026-12-01T10:00:00Z');
const minutesOn = (minutes: number) => new Date(NOW.getTime() + minutes * 60_000);
const days = (count: number) => minutesOn(count * 24 * 60);

async function booked() {
  const world = await makeWorkshop(NOW);
  return { world, ...(await makeBooking({ repairId: world.repairId, now: NOW })) };
}

/** The customer writes; gives the id of the message. */
async function says(jobId: string, text: string, now: Date): Promise<string> {
  await sendMessage({ jobId, text, actor: { kind: 'customer' }, now });
  return (await db.message.findFirstOrThrow({ where: { jobId, text } })).id;
}

const settle = (jobId: string, messageId: string, note = '') =>
  settleMessage({
    jobId,
    messageId,
    how: note === '' ? 'no-answer-needed' : 'answered-otherwise',
    note,
    actor: BENCH,
    now: minutesOn(30),
  });
const waiting = async () => (await readUnanswered()).map(({ number, at }) => [number, at]);

describe('what a customer wrote on a job', () => {
  it('waits from the first word that was not answered, however old', async () => {
    const { jobId, number } = await booked();
    await says(jobId, 'Is it here?', minutesOn(1));
    await says(jobId, 'Hello?', minutesOn(2));
    expect(await waiting()).toEqual([[number, minutesOn(1)]]);
    const { unanswered } = await readToday(days(400));
    expect(unanswered).toMatchObject([{ number, answer: { on: '2026-12-03' } }]);
  });

  it('is answered by any word of ours after it', async () => {
    const { jobId, number } = await booked();
    await says(jobId, 'Is it here?', minutesOn(1));
    await sendMessage({ jobId, text: 'It is.', actor: BENCH, now: minutesOn(2) });
    expect(await waiting()).toEqual([]);
    await says(jobId, 'And when?', minutesOn(3));
    expect(await waiting()).toEqual([[number, minutesOn(3)]]);
  });

  it('is answered up to the message that the answer was written to, and what came meanwhile goes on waiting', async () => {
    const { jobId, number } = await booked();
    await says(jobId, 'Is it here?', minutesOn(1));
    const seen = await says(jobId, 'Hello?', minutesOn(2));
    await says(jobId, 'I have moved, do not post it yet.', minutesOn(3));
    await sendMessage({ jobId, text: 'It is.', seen, actor: BENCH, now: minutesOn(4) });
    expect(await waiting()).toEqual([[number, minutesOn(3)]]);
    expect((await jobNow(jobId)).messages.map(({ settledHow }) => settledHow)).toEqual([
      ...['answered', 'answered', null, null],
    ]);
  });

  it.each([
    ['none was seen', ''],
    ['that one is of no message here', randomUUID()],
  ])('goes on waiting where %s', async (_name, seen) => {
    const { jobId, number } = await booked();
    await says(jobId, 'I have moved.', minutesOn(1));
    await sendMessage({ jobId, text: 'It is ready.', seen, actor: BENCH, now: minutesOn(2) });
    expect(await waiting()).toEqual([[number, minutesOn(1)]]);
  });

  it('that needs no answer is off the list, stays readable and is in the history; nothing is sent', async () => {
    const { jobId } = await booked();
    const id = await says(jobId, 'Thank you, got it.', minutesOn(1));
    const mails = await db.mail.count();
    await settle(jobId, id);
    await settle(jobId, id);
    expect(await waiting()).toEqual([]);
    expect(await db.mail.count()).toBe(mails);
    const { messages, events } = await jobNow(jobId);
    expect(messages).toMatchObject([
      { text: 'Thank you, got it.', settledAt: minutesOn(30), settledHow: 'no-answer-needed' },
    ]);
    expect(events.filter(({ kind }) => kind === 'message-settled')).toMatchObject([
      { actorId: BENCH.id, data: { messageId: id, how: 'no-answer-needed' } },
    ]);
  });

  it('keeps how it was answered elsewhere', async () => {
    const { jobId } = await booked();
    await settle(jobId, await says(jobId, 'What would a new wheel cost?', minutesOn(1)), 'By telephone');
    expect((await jobNow(jobId)).messages).toMatchObject([
      { settledHow: 'answered-otherwise', settledNote: 'By telephone', settledById: BENCH.id },
    ]);
  });

  it('settles what came before the message that was seen, and nothing that came meanwhile', async () => {
    const { jobId, number } = await booked();
    await says(jobId, 'Got it.', minutesOn(1));
    const seen = await says(jobId, 'Thank you.', minutesOn(2));
    await says(jobId, 'But the wheel still sticks!', minutesOn(3));
    await settle(jobId, seen);
    expect(await waiting()).toEqual([[number, minutesOn(3)]]);
    await settle(jobId, seen);
    expect(await waiting()).toEqual([[number, minutesOn(3)]]);
  });

  it('is settled on its own job alone, and words of ours are not', async () => {
    const { jobId, world } = await booked();
    const id = await says(jobId, 'Is it here?', minutesOn(1));
    const other = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-2' });
    await sendMessage({ jobId: other.jobId, text: 'Post it soon.', actor: BENCH, now: NOW });
    const ours = await db.message.findFirstOrThrow({ where: { jobId: other.jobId } });
    for (const messageId of [id, ours.id, randomUUID()]) {
      await expect(settle(other.jobId, messageId)).rejects.toMatchObject({ code: 'not-found' });
    }
    expect(await waiting()).toHaveLength(1);
  });

  it.each([
    ['closes by the passing of time when it needs no answer', '', false],
    ['stays open when it was answered elsewhere: it may tell of a lost parcel', 'By telephone', true],
  ])('and its job, sent back long ago, %s', async (_name, note, isWrittenAbout) => {
    const world = await makeWorkshop(NOW);
    const { jobId } = await makeCertificate(world, NOW, 'HW2-77001-A');
    await db.job.update({ where: { id: jobId }, data: { stage: 'sent-back', closedAt: null } });
    await settle(jobId, await says(jobId, 'Thank you, got it.', days(3)), note);
    expect(await longSentBack(days(20))).toHaveLength(isWrittenAbout ? 0 : 1);
    expect((await readToday(days(20))).lists.onUs).toHaveLength(isWrittenAbout ? 1 : 0);
  });
});

it('what a customer wrote on a price is settled the same way', async () => {
  const world = await makeWorkshop(NOW);
  const { quoteId, number } = await makeRequest({ now: NOW });
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
  await answerQuestion({ quoteId, text: 'Thank you.', photos: [], now: minutesOn(1) });
  expect(await waiting()).toEqual([[number, minutesOn(1)]]);
  const { messages, version } = await quoteNow(quoteId);
  const last = lastWaiting(messages);
  await settleOnQuote({
    quoteId,
    messageId: last?.id ?? '',
    how: 'no-answer-needed',
    note: '',
    actor: BENCH,
    now: minutesOn(2),
  });
  expect(await waiting()).toEqual([]);
  const after = await quoteNow(quoteId);
  expect([after.version, after.events.at(-1)?.kind]).toEqual([version + 1, 'message-settled']);
  expect(lastWaiting(after.messages)).toBeNull();
});
