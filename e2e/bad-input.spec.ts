import type { Page } from '@playwright/test';
import { drawNumber } from '@/lib/numbers/job-number';
import { arrivals } from './screens/arrivals';
import { booking } from './screens/booking';
import { certificate } from './screens/certificate';
import { bare } from './screens/docket';
import { jobSheet } from './screens/job-sheet';
import { priceList } from './screens/price-list';
import { privateJob } from './screens/private-job';
import { problem } from './screens/problem';
import { track } from './screens/track';
import { altered, renewedLink } from './world/case';
import { issuedCertificate } from './world/issued';
import { readMails, waitForMail } from './world/mailbox';
import { customer } from './world/people';
import { phonePhoto } from './world/photo';
import { place } from './world/place';
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
    await book.battery('It runs down fast').check();
    await book.recordings('There is nothing on it that I need').check();
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

test('numbers and links that lead nowhere say so', async ({
  page,
  workshop,
  tolerate,
  javaScriptEnabled,
}) => {
  tolerate(/404 \(Not Found\)/);
  const owner = await workshop('owner');
  const held = await issuedCertificate(owner);
  const look = track(page);
  const certificateNumber = page.getByRole('textbox', { name: 'Certificate number' });
  const unknown = (kind: 'J' | 'W') => drawNumber(kind, (below) => below - 1);

  await test.step('one wrong character is told apart from an unknown number', async () => {
    await look.open();
    await look.lookUp(altered(unknown('J')));
    await expect(look.number).toHaveAccessibleDescription(/One character looks wrong/);
    await expect(look.number).toHaveValue(altered(unknown('J')));
    await look.lookUp(held.number.slice(0, 5));
    await expect(look.number).toHaveAccessibleDescription(/A number has nine letters and digits/);
    await look.lookUp(drawNumber('C', (below) => below - 1));
    await expect(look.number).toHaveAccessibleDescription(/A job number starts with J/);
    await page.goto('/certificate');
    await certificateNumber.fill(altered(held.number));
    await page.getByRole('button', { name: 'Show the cover' }).click();
    await expect(certificateNumber).toHaveAccessibleDescription(/One character looks wrong/);
  });

  await test.step('unknown numbers and links are a page that is not there, with a way on', async () => {
    for (const address of [
      `/track/${unknown('J')}`,
      `/certificate/${unknown('W')}`,
      '/prices/no-such-model',
      '/book/start?repair=nothing',
      '/book/AAAAAAAAAAAAAAAAAAAAAAAA/unit',
      '/job/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
    ]) {
      const answer = await page.goto(address);
      expect(answer?.status(), address).toBe(404);
      await expect(page.getByRole('heading', { level: 1 }), address).toHaveText('Nothing at this address');
      await expect(page.getByRole('link', { name: 'Look up a number' }), address).toBeVisible();
    }
    const id = '00000000-0000-4000-8000-000000000000';
    for (const address of [
      '/prices/%00',
      '/certificate/%E0%A4%A',
      '/workshop/jobs?q=%00',
      `/workshop/jobs/${unknown('J')}`,
      `/workshop/arrivals/${unknown('J')}`,
      '/workshop/claims/C0000000',
      '/workshop/parts/no-such-part',
      `/workshop/mail/${id}`,
      `/workshop/photo/${id}`,
      `/workshop/certificate/${id}`,
    ]) {
      expect((await owner.request.get(address)).status(), address).toBe(404);
    }
    await page.goto(`/c/${altered(held.token)}`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      'This code is not one of ours as it stands',
    );
  });

  await test.step('a link that was withdrawn opens nothing, and sends nothing from a page still open', async () => {
    const job = await anyJob(owner);
    const link = await renewedLink(owner, job);
    const before = privateJob(page);
    await before.open(`/job/${link}`);
    expect(bare(await before.docket.number())).toBe(job);
    const newer = await renewedLink(owner, job);
    expect(newer).not.toBe(link);
    await before.message.fill('Is this still mine?');
    await before.sendMessage.click();
    if (javaScriptEnabled) {
      await expect(problem(page)).toContainText('This link opens no job any more.');
    } else {
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing at this address');
    }
    const answer = await page.goto(`/job/${link}`);
    expect(answer?.status()).toBe(404);
    await before.open(`/job/${newer}`);
    expect(bare(await before.docket.number())).toBe(job);
    await expect(before.messages).not.toContainText('Is this still mine?');
  });
});

test('files that are no photos are refused by name, and the rest of the form is kept', async ({
  page,
  workshop,
}, { project }) => {
  const owner = await workshop('owner');
  const mine = await issuedCertificate(owner, { mayClaim: true });
  const who = customer(`files-${project.name}`);
  const held = certificate(page);
  const photo = (await phonePhoto('whole.jpg')).buffer;
  const bad: [name: string, type: string, content: Buffer, sentence: RegExp][] = [
    [
      'drawing.jpg',
      'image/jpeg',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
      /drawing\.jpg: This file is not a photo/,
    ],
    [
      'page.jpg',
      'image/jpeg',
      Buffer.from('<!doctype html><p>hello</p>'),
      /page\.jpg: This file is not a photo/,
    ],
    ['notes.txt', 'text/plain', Buffer.from('It crackles.'), /notes\.txt: This file is not a photo/],
    ['live.heic', 'image/heic', heic(), /live\.heic: This photo is in the HEIC form/],
    [
      'cut.jpg',
      'image/jpeg',
      photo.subarray(0, photo.length - 400),
      /cut\.jpg: This photo arrived incomplete/,
    ],
    [
      'large.jpg',
      'image/jpeg',
      Buffer.concat([photo, Buffer.alloc(15 * 1024 * 1024)]),
      /large\.jpg: This photo is larger than 15 MB/,
    ],
  ];

  await page.goto(`/certificate/${mine.number}`);
  await held.serial.fill(mine.serial);
  await held.symptom('Something else').check();
  await held.details.fill('It crackles.');
  await held.ask.click();
  await held.address.fill(who);
  const battery = held.battery('Nothing odd about it');
  const hasBattery = await battery.isVisible();
  if (hasBattery) await battery.check();
  for (const [name, mimeType, buffer, sentence] of bad) {
    await test.step(name, async () => {
      await held.photos.setInputFiles({ name, mimeType, buffer });
      await held.openClaim.click();
      await expect(held.photos).toHaveAccessibleDescription(sentence);
      await expect(problem(page)).toContainText(name);
      await expect(held.address.name).toHaveValue(who.name);
      await expect(held.address.street).toHaveValue(who.street);
      if (hasBattery) await expect(battery).toBeChecked();
      await expect(held.answer).toBeVisible();
    });
  }
  await test.step('too many files', async () => {
    const file = { name: 'whole.jpg', mimeType: 'image/jpeg', buffer: photo };
    await held.photos.setInputFiles(Array.from({ length: 7 }, () => file));
    await held.openClaim.click();
    await expect(held.photos).toHaveAccessibleDescription(/Choose 6 photos at most/);
  });
  expect(await readMails(who.email)).toEqual([]);
  const list = await owner.request.get(`${place.origin}/workshop/jobs?q=${encodeURIComponent(who.email)}`);
  expect(await list.text()).toContain('0 jobs');
});

/** The beginning of a file in the form that some phones keep photos in (ISO/IEC 23008-12, from memory). */
function heic(): Buffer {
  const box = Buffer.concat([Buffer.from('ftypheic\0\0\0\0mif1heic', 'latin1')]);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(box.length + 4);
  return Buffer.concat([size, box, Buffer.alloc(64)]);
}

async function anyJob(owner: Page): Promise<string> {
  const list = await (await owner.request.get('/workshop/jobs?stage=on-bench')).text();
  return /\/workshop\/jobs\/(J\w{8})/.exec(list)?.[1] ?? 'no job';
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
