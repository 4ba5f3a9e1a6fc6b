import { certificate } from './screens/certificate';
import { problem } from './screens/problem';
import { issuedCertificate } from './world/issued';
import { readMails } from './world/mailbox';
import { customer } from './world/people';
import { phonePhoto } from './world/photo';
import { place } from './world/place';
import { expect, test } from './world/test';

test('files that are no photos are refused by name, and the rest of the form is kept', async ({
  page,
  workshop,
  tolerate,
}, { project }) => {
  // With script photos go ahead of the form, one by one, and a refused one is said in the answer.
  tolerate(/status of 422 .*\/photo\?name=/);
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
  await held.recordings('I have saved a copy of what I need').check();
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
    await expect(held.photos).toHaveAccessibleDescription(/Send 6 photos at most/);
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
