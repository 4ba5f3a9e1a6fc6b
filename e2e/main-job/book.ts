import { textOf } from '@/tests/documents/read-pdf';
import { booking } from '../screens/booking';
import { bare } from '../screens/docket';
import { priceList } from '../screens/price-list';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { canPaintPages, fetchPaper, readCode } from '../world/paper';
import { place } from '../world/place';
import { expect, test } from '../world/test';
import type { BookedJob, People } from './people';

/** From the price list to a number, a packing slip and a private link. */
export async function bookFromThePriceList({ page, who }: People): Promise<BookedJob> {
  const job = privateJob(page);
  let number = '';
  let link = '';

  await test.step('the customer finds the repair and its price', async () => {
    const prices = priceList(page);
    await prices.open();
    await prices.search('gull button');
    await expect(prices.found).toContainText('found for “gull button”');
    await prices.openModel('Tideline Gull');
    await expect(prices.repair('Buttons renewed')).toContainText('£46.00');
    await expect(prices.repair('Buttons renewed')).toContainText('4 working days');
    await expect(prices.repair('Buttons renewed')).toContainText('12 months on work and parts');
    await prices.book('Buttons renewed');
  });

  await test.step('and books it in five steps', async () => {
    const book = booking(page);
    await book.start();
    await expect(book.heading).toHaveText('Which unit is it?');
    await book.serial.fill('g 209 417');
    await book.goOn();
    await expect(book.heading).toHaveText('What is wrong with it?');
    await book.wrong.fill('The record button has to be pressed three times.');
    await book.history('It was dropped or knocked').check();
    await book.goOn();
    await expect(book.heading).toHaveText('What goes in the parcel?');
    await book.sendsAlong('USB cable').check();
    await book.otherAccessory.fill('Lanyard');
    await book.battery('Nothing odd about it').check();
    await book.recordings('I have saved a copy of what I need').check();
    await book.goOn();
    await expect(book.heading).toHaveText('Where do we send it back?');
    await book.address.fill(who);
    await book.goOn();
    await expect(book.heading).toHaveText('Check and book');
    await expect(page.getByRole('main')).toContainText('9 Capstan Steps');
    await expect(page.getByRole('main')).toContainText('£46.00, to pay when the repair is done');
    await book.terms.check();
    await book.startSoon.check();
    await book.book.click();
    await expect(job.heading).toHaveText('Your repair is booked');
  });

  await test.step('gets a number, a packing slip and a mail whose link opens the job', async () => {
    number = await job.docket.number();
    await expect(job.docket.stampNow).toContainText('Booked');
    const slip = await fetchPaper(page, job.slip);
    expect(slip.contentType).toBe('application/pdf');
    expect(Buffer.from(slip.bytes.subarray(0, 5)).toString()).toBe('%PDF-');
    expect(textOf(slip.bytes)).toContain(number);
    if (canPaintPages) expect(readCode(slip.bytes)).toBe(`${place.origin}/track/${bare(number)}`);

    const mail = await waitForMail(who.email, /is booked/);
    expect(mail.subject).toContain(number);
    expect(mail.text).toContain('£46.00');
    link = mail.links.find((address) => address.includes('/job/')) ?? '';
    await job.open(link);
    expect(await job.docket.number()).toBe(number);
  });
  return { number, link };
}
