import sharp from 'sharp';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { writeMessage } from '@/app/(front)/job/[token]/actions';
import { db } from '@/lib/db/client';
import { createLink } from '@/lib/jobs/private-link';
import { readJob } from '@/lib/jobs/records';
import { MOST_PHOTOS_OF_MESSAGES } from '@/lib/jobs/rules/most-photos';
import { sendMessage } from '@/lib/jobs/send-message';
import { readContent } from '@/lib/mail/rules/content';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-12-01T10:00:00Z');
const KEY = '019abcde-0000-7000-8000-000000000001';

vi.mock('next/cache', () => ({ refresh: vi.fn() }));
vi.mock('next/headers', () => ({ headers: async () => new Headers() }));
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`led to ${to}`);
  },
}));

useDatabase();

let jobId = '';
let token = '';
let picture: Buffer<ArrayBuffer>;
beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  ({ jobId } = await makeBooking({ repairId: world.repairId, now: NOW }));
  token = await db.$transaction((tx) => createLink(tx, jobId, NOW));
  const drawn = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#804020' } })
    .jpeg()
    .toBuffer();
  picture = Buffer.from(drawn);
}, 30_000);

const photo = (name: string) => ({
  fileKey: `photos/${name}.jpg`,
  thumbKey: `photos/${name}-small.jpg`,
  sha256: name.padEnd(64, '0'),
  width: 60,
  height: 40,
});

async function rows() {
  const job = await readJob({ id: jobId });
  if (!job) throw new Error('there is no such job');
  return { messages: job.messages, photos: job.photos.filter(({ purpose }) => purpose === 'message') };
}

describe('photos that come with a message', () => {
  it('stand at it, once, however often the form is sent, and the mail counts them', async () => {
    const sent = { jobId, text: 'Crushed.', formKey: KEY, actor: { kind: 'customer' }, now: NOW } as const;
    for (let time = 0; time < 2; time += 1) await sendMessage({ ...sent, photos: [photo('a'), photo('b')] });
    const { messages, photos } = await rows();
    expect(messages).toHaveLength(1);
    expect(photos.map(({ messageId, userId }) => [messageId, userId])).toEqual([
      [messages[0]?.id, null],
      [messages[0]?.id, null],
    ]);
    const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'message-from-customer' } });
    expect(readContent(mail).data).toEqual({ text: 'Crushed.', photos: 2 });
    await sendMessage({ jobId, text: 'Sorry to hear.', actor: BENCH, now: NOW });
    expect((await rows()).photos).toHaveLength(2);
  });

  it('are not written twice with another message, nor without end', async () => {
    const before = (await rows()).photos.length;
    const more = (count: number) => Array.from({ length: count }, (_, place) => photo(`more-${place}`));
    const send = (photos: ReturnType<typeof more>) =>
      sendMessage({ jobId, text: 'More.', photos, actor: { kind: 'customer' }, now: NOW });
    await send([photo('a')]);
    expect((await rows()).photos).toHaveLength(before);
    await expect(send(more(MOST_PHOTOS_OF_MESSAGES - before + 1))).rejects.toMatchObject({
      code: 'invalid',
      field: 'photos',
    });
    expect((await rows()).photos).toHaveLength(before);
    await send(more(MOST_PHOTOS_OF_MESSAGES - before));
    expect((await rows()).photos).toHaveLength(MOST_PHOTOS_OF_MESSAGES);
    await db.photo.deleteMany({ where: { jobId, purpose: 'message' } });
  });

  it('are kept for the form that forgot its words, and taken with the next press', async () => {
    const form = new FormData();
    form.set('text', '');
    form.set('photos', new File([picture], 'corner.jpg', { type: 'image/jpeg' }));
    const refused = await writeMessage(token, {}, form);
    expect(refused.errors).toEqual({ text: ['Write your message'] });
    const [slip, ...more] = [refused.values?.kept ?? []].flat();
    expect(more).toEqual([]);
    expect((await rows()).photos).toEqual([]);

    const again = new FormData();
    again.set('text', 'The corner is crushed.');
    again.set('kept', slip ?? '');
    await expect(writeMessage(token, {}, again)).rejects.toThrow(/\?done=message#messages$/);
    const { messages, photos } = await rows();
    const message = messages.find(({ text }) => text === 'The corner is crushed.');
    expect(photos.map(({ messageId, width }) => [messageId, width])).toEqual([[message?.id, 60]]);
  });

  it('that are none are refused at their field, and the words stay', async () => {
    const form = new FormData();
    form.set('text', 'See this.');
    form.set('photos', new File(['not a picture'], 'note.txt', { type: 'text/plain' }));
    const refused = await writeMessage(token, {}, form);
    expect(refused.errors?.photos?.[0]).toContain('note.txt');
    expect(refused.values?.text).toBe('See this.');
    expect((await rows()).messages.map(({ text }) => text)).not.toContain('See this.');
  });
});
