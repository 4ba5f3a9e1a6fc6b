import type { Page } from '@playwright/test';
import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';

export type Issued = { number: string; token: string; serial: string; email: string };

/**
 * A certificate of the demonstration with the serial and the customer of its job, found as the owner would find it; one
 * in cover and without an open claim, if a claim is to be asked for.
 */
export async function issuedCertificate(owner: Page, { mayClaim = false } = {}): Promise<Issued> {
  const list = await (await owner.request.get('/workshop/jobs?stage=closed')).text();
  for (const [, job = ''] of list.matchAll(/\/workshop\/jobs\/(J\w{8})/g)) {
    const sheet = await (await owner.request.get(`/workshop/jobs/${job}`)).text();
    const file = /\/workshop\/certificate\/([\w-]+)/.exec(sheet)?.[1];
    if (!file) continue;
    const paper = await owner.request.get(`/workshop/certificate/${file}`);
    const cover = readCertificatePayload(new Uint8Array(await paper.body()));
    if (!cover) throw new Error('the certificate carries no cover');
    if (mayClaim && !(await canBeClaimed(owner, cover.certificate.number))) continue;
    await jobSheet(owner).open(job);
    const text = async (term: string) => (await fact(owner, term).textContent()) ?? '';
    return {
      number: cover.certificate.number,
      token: cover.token,
      serial: await text('Serial booked'),
      email: await text('E-mail'),
    };
  }
  throw new Error('the demonstration holds no certificate');
}

async function canBeClaimed(owner: Page, number: string): Promise<boolean> {
  const shown = await (await owner.request.get(`/certificate/${number}`)).text();
  return shown.includes('>Covered until') && shown.includes('has it failed again?');
}
