import { askForPrice } from '../screens/ask-for-price';
import { quoteDesk } from '../screens/quote-desk';
import { quoteLink } from '../screens/quote-link';
import { waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { phonePhoto, tellsBesidesPixels } from '../world/photo';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { AskedQuote, People } from './people';

/** From the form to an answered question; the request's number and private link. */
export async function askAndAnswer({ page, who, front }: People): Promise<AskedQuote> {
  const form = askForPrice(page);
  const quote = quoteLink(page);
  const desk = quoteDesk(front);
  let number = '';
  let link = '';

  await test.step('the customer asks for a price, and a mistake loses neither words nor photos', async () => {
    await form.open();
    await form.device.selectOption({ label: 'Tideline Gull' });
    await form.serial.fill('G-310 228');
    await form.words.fill(
      'It fell off a table. The case is cracked at the battery, and it starts only when pressed.',
    );
    await form.happened('It was dropped or knocked').check();
    await form.addPhotos(await phonePhoto('case.jpg'), await phonePhoto('crack.jpg'));
    await form.name.fill(who.name);
    await form.email.fill('ffion at example');
    await form.ask.click();
    await expect(form.email).toHaveAccessibleDescription(/Enter an e-mail address/);
    await expect(form.words).toHaveValue(/cracked at the battery/);
    await expect(form.hereAlready).toHaveCount(2);
    await expect(form.other).toHaveValue('');
    await form.email.fill(who.email);
    await form.ask.click();
    await expect(quote.heading).toHaveText('We are working out your price');
    number = await quote.docket.number();
    expect(number).toMatch(/^Q-/);
  });

  await test.step('the mail has the private link, and the photos tell nothing of where they were taken', async () => {
    const mail = await waitForMail(who.email, new RegExp(number));
    link = mail.links.find((address) => address.includes('/quote/')) ?? '';
    await quote.open(link);
    await expect(quote.photos).toHaveCount(2);
    const photo = await fetchPaper(page, quote.photos.first());
    expect(photo.contentType).toBe('image/jpeg');
    expect(await tellsBesidesPixels(photo.bytes)).toBe('');
  });

  await test.step('asking again about the same unit adds to the request, and shows nothing of it', async () => {
    await form.open();
    await form.device.selectOption({ label: 'Tideline Gull' });
    await form.serial.fill('g310228');
    await form.words.fill('The display flickers too.');
    await form.name.fill(who.name);
    await form.email.fill(who.email.toUpperCase());
    await form.ask.click();
    await expect(form.heading).toHaveText('Added to your request');
    expect(await page.content()).not.toContain(link.split('/quote/')[1] ?? link);
  });

  await test.step('the front desk asks back before it names a price', async () => {
    setClock('2026-12-02T09:30:00.000Z');
    await desk.openList();
    await front.getByRole('link', { name: new RegExp(number) }).click();
    await expect(desk.photos).toHaveCount(2);
    await expect(desk.messages).toContainText('The display flickers too.');
    await desk.ask('Does it charge when it lies flat?');
    await expect(desk.saved).toBeVisible();
  });

  await test.step('the customer answers on the private link', async () => {
    const mail = await waitForMail(who.email, /^A question before/);
    expect(mail.text).toContain('Does it charge when it lies flat?');
    await quote.open(mail.links.find((address) => address.includes('/quote/')) ?? '');
    await expect(quote.question).toContainText('Does it charge when it lies flat?');
    await quote.answer.fill('Yes, flat it charges.');
    await quote.sendAnswer.click();
    await expect(quote.done).toContainText('It is here');
  });
  return { number, link };
}
