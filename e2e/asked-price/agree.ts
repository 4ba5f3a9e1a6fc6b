import { textOf } from '@/tests/documents/read-pdf';
import { booking } from '../screens/booking';
import { fact } from '../screens/fact';
import { privateJob } from '../screens/private-job';
import { quoteDesk } from '../screens/quote-desk';
import { quoteLink } from '../screens/quote-link';
import { waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { AskedQuote, BookedQuote, People } from './people';

/** From the answered question to a price, its form, a yes, and a booking with what is known filled in. */
export async function agreeAndBook(
  { page, who, front }: People,
  { number, link }: AskedQuote,
): Promise<BookedQuote> {
  const quote = quoteLink(page);
  const desk = quoteDesk(front);
  const job = privateJob(page);
  let jobNumber = '';

  await test.step('the front desk writes the quote from the catalogue and a free line', async () => {
    await desk.open(number);
    await expect(desk.messages).toContainText('Yes, flat it charges.');
    await desk.writeQuote();
    await desk.repair(/^Buttons renewed/);
    await desk.line(1).what.fill('Case half replaced');
    await desk.line(1).amount.fill('27.50');
    await desk.found.fill('The case is cracked beside the battery, and the holder has lost its spring.');
    await desk.proposal.fill('New case half, battery holder set right, buttons renewed.');
    await desk.workingDays.fill('6');
    // 30 calendar days are the least (Directive (EU) 2024/1799 Art. 5).
    await desk.validDays.fill('29');
    await desk.send.click();
    await expect(desk.validDays).toHaveAccessibleDescription(/holds for 30 to 365 days/);
    await expect(desk.line(1).amount).toHaveValue('27.50');
    await desk.validDays.fill('30');
    await desk.send.click();
    await expect(desk.prices).toContainText('Revision 1: £73.50, waits for an answer');
  });

  await test.step('the customer reads it on the page, as a PDF and as the European form', async () => {
    const mail = await waitForMail(who.email, /^Your price is here/);
    expect(mail.text).toContain('£73.50');
    await quote.open(mail.links.find((address) => address.includes('/quote/')) ?? '');
    await expect(quote.price).toContainText('Case half replaced');
    await expect(quote.price).toContainText('£73.50');
    await expect(fact(quote.price, 'Usual time')).toContainText('6 working days');
    // Regulation (EEC, Euratom) 1182/71 Art. 3: 30 days from 2 December, that day not counted, end with 1 January.
    await expect(fact(quote.price, 'Holds until the end of')).toContainText('1 January 2027');
    const paper = textOf((await fetchPaper(page, quote.paper)).bytes);
    expect(paper).toContain(number);
    expect(paper).toContain('£73.50');
    await quote.toForm.click();
    for (const field of [
      'Quay & Alder',
      'Tideline Gull',
      'cracked beside the battery',
      '£73.50',
      '6 working days',
    ]) {
      await expect(page.getByRole('main')).toContainText(field);
    }
  });

  await test.step('one tap says yes, and the words agreed to are kept', async () => {
    setClock('2026-12-03T18:00:00.000Z');
    await quote.open(link);
    await quote.sayYes.click();
    await expect(quote.done).toContainText('The price is agreed');
    await expect(fact(quote.agreed, 'Your answer')).toContainText('£73.50');
    expect((await waitForMail(who.email, /^You said yes/)).text).toContain('£73.50');
    await desk.open(number);
    await expect(desk.prices).toContainText('Revision 1: £73.50, accepted');
  });

  await test.step('the booking is filled in with what is known, at the price agreed', async () => {
    await quote.goOnToBook.click();
    const book = booking(page);
    await expect(book.heading).toHaveText('What goes in the parcel?');
    await book.battery('Nothing odd about it').check();
    await book.recordings('I have saved a copy of what I need').check();
    await book.goOn();
    await expect(book.address.name).toHaveValue(who.name);
    await expect(book.address.email).toHaveValue(who.email);
    await book.address.street.fill(who.street);
    await book.address.postcode.fill(who.postcode);
    await book.address.town.fill(who.town);
    await book.goOn();
    await expect(page.getByRole('main')).toContainText('£73.50');
    await expect(page.getByRole('main')).not.toContainText('£46.00, to pay');
    await book.terms.check();
    await book.startSoon.check();
    await book.book.click();
    await expect(job.heading).toHaveText('Your repair is booked');
    jobNumber = await job.docket.number();
    expect(jobNumber).toMatch(/^J-/);
    await expect(job.price).toContainText('Case half replaced');
  });
  return { number, link, job: jobNumber, jobLink: page.url().replace(/\?.*$/, '') };
}
