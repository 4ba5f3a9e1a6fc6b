import { beforeEach, describe, expect, it, vi } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { previewMail } from '@/lib/mail/preview';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeRequest } from '@/tests/makers/quote';
import { makeQueuedMail, NOW } from './booking';

const server = vi.hoisted(() => ({ isThere: true }));
vi.mock('@/lib/mail/mail-server', () => ({
  hasMailServer: () => server.isThere,
  ifMailed: (words: string, otherwise = '') => (server.isThere ? words : otherwise),
}));

useDatabase();
beforeEach(async () => {
  await resetDatabase();
  server.isThere = true;
});

async function shown(id: string) {
  const preview = await previewMail(id);
  if (!preview?.drawn) throw new Error('nothing was drawn');
  return preview.drawn;
}

describe('a message as staff look at it', () => {
  it('has the words of its button, and neither the address nor a way to the customer’s page', async () => {
    const { mail, token } = await makeQueuedMail();
    expect((await drawMail(mail)).html).toContain(`href="${config.appUrl}/job/${token}"`);
    const { html, text } = await shown(mail.id);
    for (const form of [html, text]) {
      expect(form).not.toContain(token);
      expect(form).not.toContain('/job/');
      expect(form).toContain('Open the job and print the packing slip');
    }
  });

  it('is no way in to a quote either', async () => {
    const { quoteId, token } = await makeRequest({ now: NOW });
    const mail = await db.mail.findFirstOrThrow({ where: { quoteId, toAddress: { contains: '@' } } });
    expect(JSON.stringify(await shown(mail.id))).not.toContain(token);
  });

  it('writes the address out where no message leaves, and nothing opens it', async () => {
    server.isThere = false;
    const { mail, token } = await makeQueuedMail();
    const { html, text } = await shown(mail.id);
    expect(text).toContain(`${config.appUrl}/job/${token}`);
    expect(html).toContain(`${config.appUrl}/job/${token}`);
    expect(html).not.toContain(`href="${config.appUrl}/job/`);
  });
});
