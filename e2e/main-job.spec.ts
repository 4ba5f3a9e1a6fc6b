import { bookFromThePriceList } from './main-job/book';
import { openTheClaim } from './main-job/claim';
import { honourTheClaim } from './main-job/honour';
import { repairAndProve } from './main-job/repair';
import { sendBackWithCertificate } from './main-job/send-back';
import { track } from './screens/track';
import { customer } from './world/people';
import { expect, test } from './world/test';

// The clock is asked for so that it returns to the opening time afterwards.
test('a unit is booked in, repaired, sent back, and its warranty honoured', async ({
  page,
  workshop,
  setClock: _,
}, { project }) => {
  // Some eighty pages one after the other.
  test.setTimeout(300_000);
  const who = customer(project.name);
  const people = { who, page, bench: await workshop('bench'), front: await workshop('front') };
  const booked = await bookFromThePriceList(people);
  const lot = await repairAndProve(people, booked);
  const first = await sendBackWithCertificate(people, booked, lot);
  const claimed = await openTheClaim(people, first);
  await honourTheClaim(people, first, claimed);

  await test.step('whoever has the number alone sees the stage and nothing else', async () => {
    const look = track(page);
    await look.open();
    await look.lookUp(booked.number);
    await expect(look.docket.stampNow).toContainText('Sent back');
    expect(await look.docket.number()).toBe(booked.number);
    const shown = await page.content();
    for (const secret of [
      who.name,
      who.email,
      who.street,
      who.postcode,
      '209',
      'Gull',
      '£',
      first.certificate,
    ]) {
      expect(shown, `the page says ${secret}`).not.toContain(secret);
    }
  });
});
