import { expect } from '@playwright/test';
import { place } from './place';

export type Mail = {
  to: string[];
  subject: string;
  text: string;
  html: string;
  /** Addresses of the links, in reading order. */
  links: string[];
  attachments: { filename: string; contentType: string; size: number }[];
};

/** What the app has sent so far, oldest first; to one person, when an address is given. */
export async function readMails(to?: string): Promise<Mail[]> {
  const answer = await fetch(place.mailbox);
  const mails: Mail[] = await answer.json();
  return to === undefined ? mails : mails.filter((mail) => mail.to.includes(to));
}

/** Waits for a message to this person whose subject matches, and returns the newest such. Fails after 20 s. */
export async function waitForMail(to: string, subject: RegExp): Promise<Mail> {
  let found: Mail | undefined;
  await expect
    .poll(
      async () => {
        found = (await readMails(to)).findLast((mail) => subject.test(mail.subject));
        return found?.subject;
      },
      { message: `a message to ${to} with ${subject} as its subject`, timeout: 20_000 },
    )
    .toBeDefined();
  if (!found) throw new Error('unreachable: the poll above has found it');
  return found;
}
