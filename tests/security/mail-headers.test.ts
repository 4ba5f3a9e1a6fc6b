import { simpleParser } from 'mailparser';
import { createTransport } from 'nodemailer';
import { expect, test } from 'vitest';

// The transport lib/mail/deliver.ts sends with, writing the message down instead of sending it.
const transport = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });

async function written(o: { to: string; name: string; subject: string }) {
  const sent = await transport.sendMail({
    from: { name: o.name, address: 'workshop@quayandalder.example.org' },
    to: { name: o.name, address: o.to },
    subject: o.subject,
    text: 'Your unit is here.',
  });
  return { recipients: sent.envelope.to, mail: await simpleParser(sent.message as Buffer) };
}

test.each([
  'Bryn\r\nBcc: other@example.net',
  'Bryn\nBcc: other@example.net',
  'Bryn\rBcc: other@example.net',
  '"Bryn" <other@example.net>, x',
])('a name or subject %j adds no header and no recipient', async (said) => {
  const { recipients, mail } = await written({ to: 'bryn@example.net', name: said, subject: said });
  expect(recipients).toEqual(['bryn@example.net']);
  expect(mail.bcc).toBeUndefined();
  expect([...mail.headers.keys()].toSorted()).toEqual([
    'content-transfer-encoding',
    'content-type',
    'date',
    'from',
    'message-id',
    'mime-version',
    'subject',
    'to',
  ]);
});
