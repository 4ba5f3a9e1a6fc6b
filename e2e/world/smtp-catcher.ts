/** A post office for tests: takes every message over SMTP and shows it over HTTP. GET lists. */
import { createServer } from 'node:http';
import { type AddressObject, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import type { Mail } from './mailbox';
import { place } from './place';

const mails: Mail[] = [];

const smtp = new SMTPServer({
  authOptional: true,
  disabledCommands: ['STARTTLS'],
  onData(stream, _session, done) {
    simpleParser(stream).then((message) => {
      mails.push({
        to: addresses(message.to),
        subject: message.subject ?? '',
        text: message.text ?? '',
        html: message.html || '',
        links: [...(message.html || '').matchAll(/href="(https?:[^"]+)"/g)].map(([, link = '']) =>
          readable(link),
        ),
        attachments: message.attachments.map(({ filename = '', contentType, size }) => ({
          filename,
          contentType,
          size,
        })),
      });
      done();
    }, done);
  },
});

const http = createServer((_request, response) => {
  response.setHeader('content-type', 'application/json').end(JSON.stringify(mails));
});

smtp.listen(place.smtpPort, '127.0.0.1');
http.listen(place.mailboxPort, '127.0.0.1');

function addresses(field: AddressObject | AddressObject[] | undefined): string[] {
  return [field ?? []].flat().flatMap(({ value }) => value.map(({ address }) => address ?? ''));
}

function readable(link: string): string {
  return link.replaceAll('&amp;', '&');
}
