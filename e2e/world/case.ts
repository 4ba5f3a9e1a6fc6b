import { randomUUID } from 'node:crypto';
import { type APIRequestContext, expect, type Page } from '@playwright/test';
import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { askForPrice } from '../screens/ask-for-price';
import { booking } from '../screens/booking';
import { bare, docket } from '../screens/docket';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { priceList } from '../screens/price-list';
import { quoteDesk } from '../screens/quote-desk';
import { readMails } from './mailbox';
import { customer } from './people';
import { phonePhoto } from './photo';
import { place } from './place';

/** What to put into the places of the table of routes, and what nobody may learn who may not open them. */
export type Case = { places: Record<string, string>; secrets: { serial: string; others: string[] } };

/**
 * A finished job of the demonstration with everything on it: certificate, photos, private link; beside it the link of
 * another job, an unfinished booking, and one of each thing that has an address. Found as the owner would find them.
 */
export async function findCase(owner: Page, visitor: Page): Promise<Case> {
  const { request } = owner;
  const [job = '', other = ''] = await closedJobs(request);
  const link = await renewedLink(owner, job);
  const otherLink = await renewedLink(owner, other);
  const sheet = jobSheet(owner);
  await sheet.open(job);
  const [serial = '', name = '', email = '', address = ''] = await Promise.all(
    ['Serial booked', 'Name', 'E-mail', 'Address'].map((term) => fact(owner, term).textContent()),
  ).then((texts) => texts.map((text) => text ?? ''));
  const html = await owner.content();
  const certificateFile = found(html, /\/workshop\/certificate\/([\w-]+)/);
  const paper = await request.get(`/workshop/certificate/${certificateFile}`);
  const cover = readCertificatePayload(new Uint8Array(await paper.body()));
  if (!cover) throw new Error('the certificate of the case carries no cover');
  const draft = await unfinishedBooking(visitor);
  const quoteLink = await askedForPrice(visitor, 'asked');
  const quotePhoto = found(await visitor.content(), /\/photo\/([\w-]+)/);
  const quote = bare(await docket(visitor).number());
  await sendPrice(owner, quote);
  const otherQuoteLink = await askedForPrice(visitor, 'asked-too');

  const read = async (path: string, pattern: RegExp) =>
    found(await (await request.get(path)).text(), pattern);
  const model = await read('/workshop/catalogue', /\/catalogue\/models\/([\da-f-]{36})/);
  const carrier = await read('/workshop/settings/carriers', /\/carriers\/([\da-f-]{36})/);
  const part = await read('/workshop/parts', /\/parts\/([\da-f-]{36})/);
  const [connectorJob, connectorCheck] = await connectorSheet(request);
  // Only a unit that is still to be posted has a packing slip.
  const bookedJob = await read('/workshop/jobs?stage=booked', /\/workshop\/jobs\/(J\w{8})/);
  const certificate = cover.certificate.number;
  const code = cover.token;
  return {
    places: {
      job,
      connectorJob,
      connectorCheck,
      bookedJob,
      bookedLink: await renewedLink(owner, bookedJob),
      link,
      otherLink,
      draft,
      quote,
      quoteLink,
      otherQuoteLink,
      quotePhoto,
      certificate,
      carrier,
      certificateFile,
      terms: found(html, /\/terms\/([\w-]{43})/),
      invoice: found(html, /\/workshop\/money\/invoices\/(\d{4}-\d+)/),
      code,
      wrongJob: altered(job),
      wrongLink: altered(link),
      wrongDraft: altered(draft),
      wrongQuoteLink: altered(quoteLink),
      wrongCertificate: altered(certificate),
      wrongCode: altered(code),
      photo: found(html, /\/workshop\/photo\/([\w-]+)/),
      model,
      part,
      modelSlug: await read('/prices', /\/prices\/([\w-]+)/),
      repair: await read(`/workshop/catalogue/models/${model}`, /\/catalogue\/repairs\/([\da-f-]{36})/),
      family: await read('/workshop/catalogue', /\/catalogue\/families\/([\da-f-]{36})/),
      policy: await read('/workshop/catalogue/policies', /\/catalogue\/policies\/([\da-f-]{36})/),
      lot: await read(`/workshop/parts/${part}`, /\/parts\/lots\/([\da-f-]{36})/),
      mail: await read('/workshop/mail', /\/workshop\/mail\/([\da-f-]{36})/),
      person: await read('/workshop/people', /\/workshop\/people\/([\da-f-]{36})/),
      claim: await read('/workshop/claims?show=closed', /\/workshop\/claims\/(C\w{8})/),
    },
    secrets: { serial, others: [name, email, address.split(', ')[0] ?? ''] },
  };
}

/** An address of the table with its places filled; throws on a place that the case does not know. */
export function fill(address: string, places: Case['places']): string {
  return address.replace(/\{(\w+)\}/g, (_, name: string) => {
    const known = places[name];
    if (!known) throw new Error(`the case has no ${name}`);
    return known;
  });
}

async function closedJobs(request: APIRequestContext): Promise<string[]> {
  const list = await (await request.get('/workshop/jobs?stage=closed')).text();
  const numbers = [
    ...new Set([...list.matchAll(/\/workshop\/jobs\/(J\w{8})/g)].map(([, number = '']) => number)),
  ];
  const whole: string[] = [];
  for (const number of numbers) {
    const sheet = await (await request.get(`/workshop/jobs/${number}`)).text();
    const has = (part: string) => sheet.includes(`/workshop/${part}/`);
    const isWhole = has('certificate') && has('photo') && has('money/invoices') && sheet.includes('/terms/');
    if (isWhole) whole.push(number);
    if (whole.length === 2) break;
  }
  return whole;
}

/** A closed job that was proved with a connector sheet, and that check. */
async function connectorSheet(request: APIRequestContext): Promise<[string, string]> {
  const list = await (await request.get('/workshop/jobs?stage=closed')).text();
  for (const [, number = ''] of list.matchAll(/\/workshop\/jobs\/(J\w{8})/g)) {
    const sheet = await (await request.get(`/workshop/jobs/${number}/sheet`)).text();
    const check = /\/sheet\/([\da-f-]{36})/.exec(sheet)?.[1];
    if (check) return [number, check];
  }
  throw new Error('no closed job has a connector sheet');
}

/** Staff never see a private link; a new one goes to the customer by mail, and those before it stop working. */
export async function renewedLink(owner: Page, job: string): Promise<string> {
  const sheet = jobSheet(owner);
  await sheet.open(job);
  const email = (await fact(owner, 'E-mail').textContent()) ?? '';
  const subject = `New private link to job ${await sheet.docket.number()}`;
  const sent = async () => (await readMails(email)).filter((mail) => mail.subject === subject);
  const before = (await sent()).length;
  await sheet.renewLink();
  await expect.poll(async () => (await sent()).length, { timeout: 30_000 }).toBeGreaterThan(before);
  const newest = (await sent()).at(-1);
  return found(newest?.links.join(' ') ?? '', /\/job\/([\w-]+)/);
}

async function unfinishedBooking(page: Page): Promise<string> {
  const book = booking(page);
  const prices = priceList(page);
  await prices.open();
  await prices.openModel('Tideline Gull');
  await prices.book('Buttons renewed');
  await book.start();
  await book.serial.fill('G-330 771');
  await book.goOn();
  await book.wrong.fill('It does not start.');
  await book.goOn();
  await book.battery('Nothing odd about it').check();
  await book.recordings('There is nothing on it that I need').check();
  await book.goOn();
  await book.address.fill(customer('unfinished'));
  await book.goOn();
  await page.waitForURL(`${place.origin}/book/*/confirm`);
  return found(page.url(), /\/book\/([\w-]+)\//);
}

/** Asks for a price with a photo, and gives back the private link that the page led to. */
async function askedForPrice(page: Page, walk: string): Promise<string> {
  const form = askForPrice(page);
  // Somebody new each time: a second request of the same person would be joined to the first and lead nowhere.
  const who = customer(`${walk}.${randomUUID().slice(0, 8)}`);
  await form.open();
  await form.device.selectOption({ label: 'Tideline Gull' });
  await form.words.fill('The lid is torn off.');
  await form.addPhotos(await phonePhoto('lid.jpg'));
  await form.name.fill(who.name);
  await form.email.fill(who.email);
  await form.ask.click();
  await page.waitForURL(/\/quote\/[\w-]{43}/);
  return found(page.url(), /\/quote\/([\w-]+)/);
}

async function sendPrice(owner: Page, quote: string): Promise<void> {
  const desk = quoteDesk(owner);
  await desk.open(quote);
  await desk.writeQuote();
  await desk.repair(/^Buttons renewed/);
  await desk.found.fill('The hinge of the lid has broken off.');
  await desk.proposal.fill('We fit a new lid.');
  await desk.workingDays.fill('6');
  await desk.send.click();
  await expect(desk.prices).toContainText('Revision 1');
}

function found(text: string, pattern: RegExp): string {
  const match = pattern.exec(text)?.[1];
  if (!match) throw new Error(`nothing fits ${pattern}`);
  return match;
}

/** The same length with one character changed in the middle. */
export function altered(text: string): string {
  const at = Math.floor(text.length / 2);
  const other = text[at] === 'A' ? 'B' : 'A';
  return text.slice(0, at) + other + text.slice(at + 1);
}
