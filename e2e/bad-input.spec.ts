import { arrivals } from './screens/arrivals';
import { booking } from './screens/booking';
import { jobSheet } from './screens/job-sheet';
import { priceList } from './screens/price-list';
import { privateJob } from './screens/private-job';
import { problem } from './screens/problem';
import { readMails, waitForMail } from './world/mailbox';
import { customer } from './world/people';
import { expect, test } from './world/test';

test('a booking says what is wrong where it is wrong, keeps the rest, and is made once', async ({
  page,
  workshop,
  javaScriptEnabled,
}, { project }) => {
  const who = { ...customer(`bad-${project.name}`), name: 'Corin Nansteglos' };
  const book = booking(page);
  const { address } = book;

  await test.step('an empty answer and one that is too long', async () => {
    const prices = priceList(page);
    await prices.open();
    await prices.openModel('Tideline Gull');
    await prices.book('Battery replaced');
    await book.start();
    await book.serial.fill('---');
    await book.goOn();
    await expect(book.serial).toHaveAccessibleDescription(/A serial number has letters or digits/);
    await expect(book.serial).toHaveValue('---');
    await book.serial.fill('G-100 203');
    await book.goOn();
    await book.goOn();
    await expect(book.wrong).toHaveAccessibleDescription(/Enter what is wrong/);
    const long = 'It runs down. '.repeat(150);
    // A browser holds the limit by itself; a program that sends more is told the same.
    await book.wrong.evaluate((field) => field.removeAttribute('maxlength'));
    await book.wrong.fill(long);
    await book.goOn();
    await expect(book.wrong).toHaveAccessibleDescription(/Keep this to 2000 characters/);
    await expect(book.wrong).toHaveValue(long);
    await book.wrong.fill('It runs down within the hour.');
    await book.goOn();
  });

  await test.step('a battery that must not be posted stops here, and can be answered again', async () => {
    await book.goOn();
    await expect(page.getByRole('group', { name: 'How is the battery?' })).toHaveAccessibleDescription(
      /Choose the answer that fits the battery/,
    );
    await book.sendsAlong('Belt clip').check();
    await book.battery('The case bulges or a lid lifts').check();
    await book.recordings('There is nothing on it that I need').check();
    await book.goOn();
    await expect(book.heading).toHaveText('Please do not post this unit');
    await page.getByRole('link', { name: 'I chose the wrong answer' }).click();
    await expect(book.heading).toHaveText('What goes in the parcel?');
    await expect(book.sendsAlong('Belt clip')).toBeChecked();
    await expect(book.battery('The case bulges or a lid lifts')).toBeChecked();
    await page.goto(page.url().replace(/parcel$/, 'address'));
    await expect(book.heading).toHaveText('Please do not post this unit');
    await page.getByRole('link', { name: 'I chose the wrong answer' }).click();
    await book.battery('It runs down fast').check();
    await book.goOn();
  });

  await test.step('several problems at once, each at its field and in the list above', async () => {
    await address.name.fill(who.name);
    await address.email.fill('corin.example.net');
    await address.phone.fill('call me');
    await address.postcode.fill(who.postcode);
    await address.town.evaluate((field) => field.removeAttribute('maxlength'));
    await address.town.fill('Sandmouth'.repeat(10));
    await book.goOn();
    const wrong = [
      [address.email, 'Enter an e-mail address like name@example.org'],
      [address.phone, 'Use digits, spaces and + only'],
      [address.street, 'Enter the first line of your address'],
      [address.town, 'Keep this to 80 characters'],
    ] as const;
    for (const [field, sentence] of wrong) {
      await expect(field).toHaveAccessibleDescription(new RegExp(escaped(sentence)));
      await expect(field).toHaveAttribute('aria-invalid', 'true');
      await expect(problem(page).getByRole('link', { name: sentence })).toBeVisible();
    }
    await expect(problem(page)).toBeFocused();
    if (javaScriptEnabled) await expect(page).toHaveTitle(/^Error: /);
    await expect(address.name).toHaveValue(who.name);
    await expect(address.name).not.toHaveAttribute('aria-invalid');
    await expect(address.email).toHaveValue('corin.example.net');
    await expect(address.phone).toHaveValue('call me');
    await expect(address.postcode).toHaveValue(who.postcode);
    await expect(address.town).toHaveValue('Sandmouth'.repeat(10));
    await problem(page).getByRole('link', { name: 'Enter the first line of your address' }).click();
    await expect(address.street).toBeFocused();
    await address.fill(who);
    await book.goOn();
  });

  let number = '';
  await test.step('without the terms nothing is booked; two presses at once book it once', async () => {
    await book.book.click();
    await expect(book.terms).toHaveAccessibleDescription(/Tick the box to agree to the terms/);
    const otherTab = await page.context().newPage();
    await otherTab.goto(page.url());
    const earlier = await page.context().newPage();
    await earlier.goto(page.url().replace('/confirm', '/unit'));
    await book.terms.check();
    await booking(otherTab).terms.check();
    await Promise.all([book.book.dblclick(), booking(otherTab).book.click()]);
    await expect(page).toHaveURL(/\/job\//);
    await expect(otherTab).toHaveURL(/\/job\//);
    number = await privateJob(page).docket.number();
    expect(await privateJob(otherTab).docket.number()).toBe(number);
    await otherTab.close();
    // A step that was left open is answered with the job it has become.
    await booking(earlier).serial.fill('');
    await booking(earlier).goOn();
    if (javaScriptEnabled) {
      await expect(booking(earlier).serial).toHaveAccessibleDescription(/Enter the serial number/);
      await booking(earlier).serial.fill('G-100 204');
      await booking(earlier).goOn();
      await expect(problem(earlier)).toBeVisible();
    } else {
      await expect(earlier).toHaveURL(/\/job\//);
      expect(await privateJob(earlier).docket.number()).toBe(number);
    }
    await earlier.close();
  });

  await test.step('two hands at one parcel: the second sees what the first has done', async () => {
    const [front, bench] = [await workshop('front'), await workshop('bench')];
    const [first, second] = [arrivals(front), arrivals(bench)];
    for (const [desk, serial] of [
      [first, 'G-100 203'],
      [second, 'g100203'],
    ] as const) {
      await desk.open();
      await desk.scan(number);
      await desk.serial.fill(serial);
    }
    await second.alsoCame.fill('A postcard');
    await first.takeIn.click();
    await expect(first.heading).toContainText('Taken in');
    await second.takeIn.click();
    await expect(problem(bench)).toContainText('This changed while you had it open');
    await expect(problem(bench)).toContainText('Ottoline Passmoor');
    await expect(second.serial).toHaveValue('g100203');
    await expect(second.alsoCame).toHaveValue('A postcard');
    await problem(bench).getByRole('link', { name: 'Load it as it is now' }).click();

    const owner = await workshop('owner');
    const [left, right] = [jobSheet(owner), jobSheet(bench)];
    await left.open(number);
    await right.open(number);
    await left.move('Start assessing').click();
    await expect(left.docket.stampNow).toContainText('Assessing');
    await right.move('Start assessing').click();
    await expect(problem(bench)).toContainText('This changed while you had it open');
    await expect(problem(bench)).toContainText('Rowan Alder: Assessing');
    await problem(bench).getByRole('link', { name: 'Load it as it is now' }).click();
    await expect(right.move('Start assessing')).toBeHidden();
    await expect(right.history.getByText('Assessing', { exact: true })).toHaveCount(1);
  });

  // Messages leave in the order they were written, so a second booking would be known by now.
  await waitForMail(who.email, /^Your parcel is here/);
  const booked = (await readMails(who.email)).filter((mail) => /is booked/.test(mail.subject));
  expect(booked).toHaveLength(1);
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
