import { KNOWN } from '@/prisma/demo/known';
import { checkSheet } from './screens/check-sheet';
import { connectorSheet } from './screens/connector-sheet';
import { expect, test } from './world/test';

const CHECK = 'USB Type-C receptacle: every pin and neighbouring pair';

test.beforeEach(async ({ context, sessionOf }) => {
  await context.addCookies((await sessionOf('bench')).cookies);
});

test('a connector is probed pin by pin, fails by name, and passes when it is right', async ({ page }) => {
  const sheet = connectorSheet(page);
  const checks = checkSheet(page);
  const open = async () => {
    await page.goto(`/workshop/jobs/${KNOWN.provedAgain.job}/sheet`);
    await checks.card(CHECK).getByRole('link', { name: 'Probe the connector' }).click();
    await expect(sheet.heading).toHaveText(CHECK);
  };
  await test.step('probes without an answer are asked for, and what was answered is kept', async () => {
    await open();
    await sheet.mark('A4 VBUS', 'through');
    await sheet.enter();
    await expect(sheet.problem).toContainText('A1, A2, A3, A5');
    await expect(sheet.answer('A4 VBUS', 'through')).toBeChecked();
  });
  await test.step('a bridge between two pins fails it', async () => {
    await open();
    await sheet.beginRight();
    await expect(sheet.answer('A4 VBUS and A5 CC1', 'open')).toBeChecked();
    await sheet.mark('A4 VBUS and A5 CC1', 'joined');
    await sheet.enter();
    await expect(checks.card(CHECK)).toContainText(
      '29 of 30 pairs open; A4 VBUS and A5 CC1 read joined, failed',
    );
  });
  await test.step('right everywhere it passes, and the failed entry stays', async () => {
    await open();
    await sheet.beginRight();
    await expect(sheet.answer('A4 VBUS and A5 CC1', 'open')).toBeChecked();
    await sheet.enter();
    await expect(checks.card(CHECK)).toContainText('24 pins through, 30 pairs open, passed');
    await expect(checks.card(CHECK)).toContainText('read joined, failed');
  });
});

test('pins and gaps are marked on the drawing', async ({ page }, { project }) => {
  test.skip(project.use.javaScriptEnabled === false, 'without script the list does it alone');
  const sheet = connectorSheet(page);
  await page.goto(`/workshop/jobs/${KNOWN.provedAgain.job}/sheet`);
  await checkSheet(page).card(CHECK).getByRole('link', { name: 'Probe the connector' }).click();
  await sheet.drawing.getByRole('button', { name: 'A4 VBUS: no answer yet', exact: true }).click();
  await expect(sheet.answer('A4 VBUS', 'through')).toBeChecked();
  const gap = sheet.drawing.getByRole('button', { name: /^A4 VBUS and A5 CC1/ });
  await gap.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(gap).toHaveAccessibleName('A4 VBUS and A5 CC1: joined');
  await expect(sheet.answer('A4 VBUS and A5 CC1', 'joined')).toBeChecked();
});

test('what is typed at one check outlives the answer to another', async ({ page }) => {
  const checks = checkSheet(page);
  await page.goto(`/workshop/jobs/${KNOWN.provedAgain.job}/sheet`);
  const tilt = page.getByRole('group', { name: 'Plug holds when the cable is tilted' });
  await tilt.getByRole('textbox', { name: 'Note' }).fill('tried with two cables');
  await checks.reading('USB Type-C receptacle: worst contact', 'about half');
  await expect(page.getByText('Enter the reading as a number').first()).toBeVisible();
  await expect(tilt.getByRole('textbox', { name: 'Note' })).toHaveValue('tried with two cables');
  await checks.reading('USB Type-C receptacle: worst contact', '0.21');
  await expect(checks.card('worst contact')).toContainText('0.21 Ω, passed');
  await expect(tilt.getByRole('textbox', { name: 'Note' })).toHaveValue('tried with two cables');
});
