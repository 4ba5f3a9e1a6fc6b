import { arrivals } from '../screens/arrivals';
import { booking } from '../screens/booking';
import { docket } from '../screens/docket';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { priceList } from '../screens/price-list';
import { privateJob } from '../screens/private-job';
import { walkInForm } from '../screens/walk-in';
import { waitForMail } from '../world/mailbox';
import { customer } from '../world/people';
import { phonePhoto } from '../world/photo';
import { expect, test } from '../world/test';
import type { Morning, People } from './people';

/** Four parcels on the front desk's phone: as booked, misread, another unit, and without a booking. */
export async function takeInTheParcels(people: People): Promise<Morning> {
  const { who, frontPhone, front, bench } = people;
  const desk = arrivals(frontPhone);
  const main = frontPhone.getByRole('main');
  const booked = await bookAndPost(people);

  await test.step('a parcel is found by its carrier’s reference and taken in as booked', async () => {
    await desk.open();
    await desk.scan('lx641182057gb');
    await expect(desk.heading).toHaveText('Take in: Tideline Gull');
    await expect(main).toContainText(booked);
    await desk.serial.fill('G-640 118');
    await desk.inParcel('USB cable').check();
    await desk.alsoCame.fill('Wrist strap');
    await desk.addPhoto(await phonePhoto('morning.jpg'));
    await desk.takeIn.click();
    await expect(desk.heading).toHaveText('Taken in: Tideline Gull');
    await expect(main).toContainText('The serial is the one that was booked');
    await expect(fact(frontPhone, 'Differences told')).toContainText('Wrist strap came with it');
    await expect(desk.photos).toHaveCount(1);
    expect((await waitForMail(who.email, /^Your parcel is here/)).text).toContain('Wrist strap');
  });

  let settled = '';
  await test.step('a serial that looks misread waits until somebody has looked again', async () => {
    await desk.open();
    await desk.scan('HS26O207H');
    await expect(main).toContainText('No booking has this very serial');
    await expect(desk.fits).toHaveCount(1);
    await desk.fits.click();
    await expect(desk.heading).toHaveText(/^Take in: /);
    await desk.serial.fill('HS26O207H');
    await desk.inParcel('Leather sleeve').check();
    await desk.addSerialPhoto(await phonePhoto('plate.jpg'));
    await desk.takeIn.click();
    await expect(main).toContainText('The serial is close, not the same');
    settled = await docket(frontPhone).number();
    const sheet = jobSheet(bench);
    await sheet.open(settled);
    await expect(sheet.docket.stampNow).toContainText('Arrived');
    await expect(sheet.move('Start assessing')).toBeHidden();
    await sheet.settleSerial('HS26D207H', 'A worn D under the lens, not an O.');
    await expect(sheet.move('Start assessing')).toBeVisible();
    await expect(sheet.move('Settle the serial')).toBeHidden();
  });

  let otherUnit = '';
  await test.step('another unit than the one booked is kept, and its customer asked', async () => {
    await desk.open();
    await desk.scan('KL49-03310');
    await expect(desk.heading).toHaveText(/^Take in: .*49$/);
    await desk.serial.fill('KL49-07715');
    await desk.takeIn.click();
    await expect(main).toContainText('The serial is another one');
    await expect(fact(frontPhone, 'Differences told')).toContainText('USB cable was not in the parcel');
    otherUnit = await docket(frontPhone).number();
    const sheet = jobSheet(front);
    await sheet.open(otherUnit);
    await expect(sheet.move('Start assessing')).toBeHidden();
    await sheet.write('The plate reads KL49-07715. Do you have two of them?');
    await expect(sheet.messages).toContainText('The plate reads KL49-07715.');
  });

  let unbooked = '';
  await test.step('a parcel without a booking gets a job, and nothing is agreed', async () => {
    const form = walkInForm(frontPhone);
    const stranger = customer('bench-day-unbooked');
    await form.open();
    await form.repair.selectOption({ label: 'Buttons renewed' });
    await form.serial.fill('G-640 771');
    await form.letter.fill('Some buttons stick. Please mend it.');
    await form.battery('In it, and nothing odd about it').check();
    await form.fillCustomer(stranger);
    await form.takeIn.click();
    await expect(main).toContainText('Nothing is agreed with the customer yet');
    unbooked = await docket(frontPhone).number();
    expect((await waitForMail(stranger.email, /^Your parcel is here/)).text).toContain(
      'No price is agreed yet',
    );
  });
  return { settled, otherUnit, unbooked };
}

/** The customer books from the price list and keeps the reference of the post receipt; the job's number. */
async function bookAndPost({ who, page }: People): Promise<string> {
  const job = privateJob(page);
  const book = booking(page);
  const prices = priceList(page);
  let number = '';
  await test.step('a customer books, posts the parcel and keeps its reference', async () => {
    await prices.open();
    await prices.openModel('Tideline Gull');
    await prices.book('Buttons renewed');
    await book.start();
    await book.serial.fill('G-640 118');
    await book.goOn();
    await book.wrong.fill('The stop button sticks.');
    await book.goOn();
    await book.sendsAlong('USB cable').check();
    await book.battery('Nothing odd about it').check();
    await book.recordings('I have saved a copy of what I need').check();
    await book.goOn();
    await book.address.fill(who);
    await book.goOn();
    await book.terms.check();
    await book.startSoon.check();
    await book.book.click();
    await expect(job.heading).toHaveText('Your repair is booked');
    number = await job.docket.number();
    // UPU S10: 6x8 + 4x6 + 1x4 + 1x2 + 8x3 + 2x5 + 0x9 + 5x7 = 147, 147 mod 11 = 4, and 11 - 4 is the check digit 7.
    await job.reference.fill('LX 64118205 7 GB');
    await job.keepReference.click();
    await expect(job.done).toContainText('We look out for your parcel');
  });
  return number;
}
