import type { Page } from '@playwright/test';
import { drawNumber } from '@/lib/numbers/job-number';
import { bare } from './screens/docket';
import { privateJob } from './screens/private-job';
import { problem } from './screens/problem';
import { track } from './screens/track';
import { altered, renewedLink } from './world/case';
import { issuedCertificate } from './world/issued';
import { expect, test } from './world/test';

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
    await expect(problem(page)).toContainText('One character looks wrong');
    await expect(page).toHaveTitle(/^Error: /);
    await look.lookUp(held.number.slice(0, 5));
    await expect(look.number).toHaveAccessibleDescription(/A number has nine letters and digits/);
    await look.lookUp(drawNumber('C', (below) => below - 1));
    await expect(look.number).toHaveAccessibleDescription(/This is the number of a claim/);
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

async function anyJob(owner: Page): Promise<string> {
  const list = await (await owner.request.get('/workshop/jobs?stage=on-bench')).text();
  return /\/workshop\/jobs\/(J\w{8})/.exec(list)?.[1] ?? 'no job';
}
