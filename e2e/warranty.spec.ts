import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { newNumber } from '@/lib/numbers/draw';
import { showNumber } from '@/lib/numbers/job-number';
import { KNOWN } from '@/prisma/demo/known';
import { textOf } from '@/tests/documents/read-pdf';
import { certificate } from './screens/certificate';
import { claimDesk } from './screens/claim-desk';
import { fact } from './screens/fact';
import { jobSheet } from './screens/job-sheet';
import { lostCertificate } from './screens/lost-certificate';
import { privateJob } from './screens/private-job';
import { problem } from './screens/problem';
import { certificateFor } from './world/certificates';
import { readMails, waitForMail } from './world/mailbox';
import { fetchPaper } from './world/paper';
import { customer } from './world/people';
import { phonePhoto } from './world/photo';
import { expect, test } from './world/test';
import { beginWarrantyDay, blame, claimNumberOf } from './world/warranty';

// The clock is asked for so that it returns to the opening time afterwards.
test.beforeEach(({ setClock: _ }, { project }) => beginWarrantyDay(project.name));

test('a lost certificate comes again, to the address on file and to nobody else', async ({ page }) => {
  const onFile = 'teodor@example.net';
  const stranger = 'nobody.here@example.net';
  const number = 'W5A9QKTXS';
  const copies = async () =>
    (await readMails()).filter((mail) => mail.subject.startsWith('Your certificate W-'));
  const before = (await copies()).length;
  const lost = lostCertificate(page);
  const answers: string[] = [];
  const ask = async (typed: string, email: string) => {
    await lost.open();
    await lost.follow();
    await lost.number.fill(typed);
    await lost.email.fill(email);
    await lost.send.click();
    await expect(lost.answer).toBeVisible();
    answers.push((await lost.answer.textContent()) ?? '');
  };

  await test.step('a wrong address, an unknown number and the right pair get one and the same answer', async () => {
    await ask(number, stranger);
    await ask(newNumber('W'), onFile);
    await ask(showNumber(number).toLowerCase(), 'Teodor@Example.net');
    expect(answers[0]).toMatch(
      /If we have a certificate or a job for these, a message is on its way to the address on file\./,
    );
    expect(new Set(answers).size).toBe(1);
  });

  await test.step('only the right pair gets a message', async () => {
    await expect.poll(async () => (await copies()).length, { timeout: 20_000 }).toBe(before + 1);
    const mail = await waitForMail(onFile, new RegExp(`^Your certificate ${showNumber(number)}$`));
    expect(mail.to).toEqual([onFile]);
    expect(await readMails(stranger)).toEqual([]);
    expect((await copies()).length).toBe(before + 1);
  });

  await test.step('and its link opens the page of the job, with the certificate', async () => {
    const job = privateJob(page);
    const { links } = await waitForMail(onFile, /^Your certificate/);
    await job.open(links.find((address) => address.includes('/job/')) ?? 'no link');
    await expect(fact(job.certificate, 'Number')).toHaveText(showNumber(number));
    const paper = await fetchPaper(page, job.certificateFile);
    expect(paper.contentType).toBe('application/pdf');
    expect(textOf(paper.bytes)).toContain(showNumber(number));
  });
});

test('a serial with one look-alike character asks for a photo, and a person decides', async ({
  page,
  workshop,
}, { project }) => {
  const mine = certificateFor('misread', project.name);
  const who = customer(`${project.name}.misread`);
  const asked = certificate(page);
  const job = privateJob(page);

  await test.step('the answer says that the serial is close, and asks for a photo of it', async () => {
    await page.goto(`/certificate/${mine.certificate}`);
    // 1 and I belong to the look-alikes of worn labels (common practice, no source).
    await asked.serial.fill(mine.serial.replace('1', 'I'));
    await asked.symptom(mine.symptom).check();
    await asked.details.fill('Since Sunday, on both cables.');
    await asked.ask.click();
    await expect(asked.answer).toContainText('We would like to check the serial with you');
    await expect(asked.answer).toContainText('very close to the one on the certificate');
    await expect(asked.answer).toContainText('This is free.');
  });

  await test.step('without the photo nothing opens, and everything typed is kept', async () => {
    if (mine.hasBattery) await asked.battery('Nothing odd about it').check();
    await asked.recordings('I have saved a copy of what I need').check();
    await asked.address.fill(who);
    await asked.openClaim.click();
    await expect(asked.photos).toHaveAccessibleDescription(/Add a photo of the serial on the unit/);
    await expect(problem(asked.form)).toContainText('Add a photo of the serial on the unit');
    await expect(asked.answer).toContainText('We would like to check the serial with you');
    for (const name of ['name', 'email', 'phone', 'street', 'postcode', 'town'] as const) {
      await expect(asked.address[name]).toHaveValue(who[name]);
    }
    if (mine.hasBattery) await expect(asked.battery('Nothing odd about it')).toBeChecked();
    expect(await readMails(who.email)).toEqual([]);
  });

  await test.step('what was told before can be read and changed, and the rest is kept', async () => {
    await expect(fact(asked.form, 'Serial')).toHaveText(mine.serial.replace('1', 'I'));
    await expect(fact(asked.form, 'What it does')).toHaveText(mine.symptom);
    await asked.change.click();
    await expect(asked.serial).toHaveValue(mine.serial.replace('1', 'I'));
    await expect(asked.symptom(mine.symptom)).toBeChecked();
    await expect(asked.details).toHaveValue('Since Sunday, on both cables.');
    await asked.details.fill('Since Sunday, on both cables. Also the spare one.');
    await asked.ask.click();
    await expect(fact(asked.form, 'Also')).toHaveText('Since Sunday, on both cables. Also the spare one.');
    await expect(asked.address.town).toHaveValue(who.town);
    if (mine.hasBattery) await expect(asked.battery('Nothing odd about it')).toBeChecked();
    await expect(asked.recordings('I have saved a copy of what I need')).toBeChecked();
    await expect(asked.form).toContainText('you pay £0.00.');
  });

  let claim = '';
  await test.step('with it the claim opens', async () => {
    await asked.photos.setInputFiles(await phonePhoto('serial.jpg'));
    await asked.openClaim.click();
    await expect(job.heading).toHaveText('Your claim is open');
    await expect(fact(job.claim, 'What you told us')).toContainText('Since Sunday, on both cables.');
    await expect(job.claim).toContainText('very close to the one on the certificate');
    claim = await claimNumberOf(page);
    expect((await waitForMail(who.email, /^Your claim C-/)).subject).toContain(claim);
  });

  await test.step('and waits for a person, who finds the photo beside the serial', async () => {
    const bench = await workshop('bench');
    const desk = claimDesk(bench);
    await desk.open(claim);
    await expect(desk.docket.article).toContainText('not here yet');
    await expect(desk.docket.article).toContainText('close, not the same');
    await expect(desk.compare.getByRole('img', { name: /^From the customer/ }).first()).toBeVisible();
    await expect(fact(desk.ruled, 'Ruling')).toBeHidden();
  });
});

test('a certificate whose cover has ended names the rights by law, and a smudged code is not held against anybody', async ({
  page,
  workshop,
}) => {
  const lapsed = KNOWN.lapsedCertificate;
  const asked = certificate(page);

  await test.step('the answer names the day, the rights by law, and a next step with its cost', async () => {
    await page.goto(`/certificate/${lapsed.certificate}`);
    await expect(asked.heading).toContainText('Cover ended on');
    await asked.serial.fill(lapsed.serial);
    await asked.symptom('Does not charge').check();
    await asked.ask.click();
    await expect(asked.answer).toContainText('The cover has ended');
    await expect(asked.answer).toContainText('The serial you gave is the one on the certificate.');
    await expect(asked.answer).toContainText(/Cover for “USB-C socket replaced” ended on \d+ \w+ 2026/);
    // Consumer Rights Act 2015 s.49 and s.55: the right to have it done again does not end with the certificate.
    await expect(asked.answer).toContainText('Your rights by law stay open.');
    await expect(asked.answer).toContainText('Consumer Rights Act 2015, sections 49 and 55');
    await expect(asked.answer).toContainText(
      /Next: .*as a paid job\. Please do not post it yet\..*looking at it costs £\d+\.\d\d, and we say so first\./,
    );
    await expect(asked.answer.getByRole('link', { name: 'Ask us for a price' })).toBeVisible();
    await expect(page.getByRole('main')).not.toContainText(blame);
  });

  await test.step('no claim opens, and the prices are one step away', async () => {
    await expect(asked.openClaim).toBeHidden();
    await expect(asked.address.name).toBeHidden();
    await asked.answer.getByRole('link', { name: 'Prices for this unit' }).click();
    await expect(asked.heading).toContainText('Meridian Two');
    await page.goto(`/certificate/${lapsed.certificate}`);
    await expect(page.getByRole('main')).not.toContainText('a claim is open on this certificate');
  });

  await test.step('its code answers as signed, and with one changed character as not signed', async () => {
    const front = await workshop('front');
    await front.goto(`/workshop/search?q=${lapsed.certificate}`);
    const paper = await fetchPaper(front, jobSheet(front).papers.filter({ hasText: 'Certificate' }));
    const token = readCertificatePayload(paper.bytes)?.token ?? 'no token';
    await page.goto(`/c/${token}`);
    await expect(fact(asked.docket.article, 'Genuine')).toHaveText('yes, signed by us');
    await page.goto(`/c/${withOneChanged(token, 20)}`);
    await expect(asked.heading).toHaveText('This code is not one of ours as it stands');
    await expect(page.getByRole('main')).toContainText('It says nothing about you or your unit.');
    await expect(page.getByRole('main')).not.toContainText(blame);
    await page.getByRole('link', { name: 'Type the number' }).click();
    await expect(asked.heading).toHaveText('Certificate or claim');
  });
});

/** The same code with one character misread, away from the end, whose last bits may carry nothing. */
function withOneChanged(code: string, at: number): string {
  return `${code.slice(0, at)}${code[at] === 'A' ? 'B' : 'A'}${code.slice(at + 1)}`;
}
