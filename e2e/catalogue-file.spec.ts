import { AxeBuilder } from '@axe-core/playwright';
import { catalogueFile } from './screens/catalogue-file';
import { expect, test } from './world/test';

test('the owner takes the catalogue out, and brings it back changed, whole or not at all', async ({
  browser,
  sessionOf,
  javaScriptEnabled,
  viewport,
}, { project }) => {
  const context = await browser.newContext({
    storageState: await sessionOf('owner'),
    javaScriptEnabled,
    viewport,
  });
  const page = await context.newPage();
  const file = catalogueFile(page);
  const name = `Tuner ${project.name}`;

  await file.open();
  await expect(file.download).toBeVisible();
  const address = (await file.download.getAttribute('href')) ?? '';
  const response = await page.request.get(address);
  expect(response.headers()['content-type']).toBe('text/csv; charset=utf-8');
  expect(response.headers()['content-disposition']).toMatch(
    /^attachment; filename="catalogue-2026-12-01\.csv"$/,
  );
  const text = (await response.body()).toString('utf8');
  const lines = text.split('\r\n');
  const cockle = lines.find((line) => line.includes(',ostrel-cockle,')) ?? '';
  const fresh = cockle
    .replace(',ostrel-cockle,Ostrel,Cockle reverb,', `,,Ostrel,${name},`)
    .replace(',power-socket,', ',,');

  await test.step('no file at all is told at the field', async () => {
    await file.look.click();
    await expect(file.field).toHaveAccessibleDescription(/Choose the file/);
  });

  await test.step('its own list changes nothing', async () => {
    await file.choose(text);
    await expect(page.getByText('The file says what the catalogue says already.')).toBeVisible();
    await expect(file.import).toBeHidden();
  });

  await test.step('its own policies change nothing', async () => {
    await file.open();
    await file.choose((await file.textOf(file.downloadPolicies)).join('\r\n'));
    await expect(page.getByText('The file says what the catalogue says already.')).toBeVisible();
  });

  await test.step('faults are told by row and column, and nothing can be imported', async () => {
    await file.open();
    const bad = lines.map((line, i) => (i === 2 ? line.replace(',yes,', ',perhaps,') : line));
    await file.choose([...bad.slice(0, -1), fresh.replace(/,GBP,/, ',EUR,')].join('\r\n'));
    const faults = file.table('Faults by row and column');
    await expect(faults.getByRole('row').filter({ hasText: 'Currency' })).toContainText(`${lines.length}`);
    await expect(faults.getByRole('row').filter({ hasText: 'Write yes or no' }).first()).toBeVisible();
    await expect(file.import).toBeHidden();
  });

  await test.step('what is new is shown first and there after the import', async () => {
    await file.open();
    await file.choose([lines[0], fresh].join('\r\n'));
    await expect(file.table('What would be added')).toContainText(name);
    await expect(file.table('How many would be added and changed')).toContainText('Models');
    if (javaScriptEnabled !== false) {
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((violation) => violation.id)).toEqual([]);
    }
    await file.import.click();
    await expect(file.note).toContainText('The file of the catalogue is imported: 2 added, 0 changed.');
    await page.goto(`/prices/ostrel-${name.toLowerCase().replaceAll(' ', '-')}`);
    await expect(page.getByRole('heading', { name: `Ostrel ${name}` })).toBeVisible();
  });

  await test.step('its check sheet goes out, and comes back as the next version', async () => {
    await file.open();
    const [heads, ...checks] = await file.textOf(file.downloadChecks);
    const model = `ostrel-${name.toLowerCase().replaceAll(' ', '-')}`;
    const [first = ''] = checks.filter((line) => line.startsWith(`${model},`));
    expect(first).toContain('Every control');
    const repair = `${model},${first.split(',')[1]}`;
    const reading = `${repair},5,reading,Supply,,V,4.75,5.25,,,,,`;
    await file.choose([heads, reading, `${repair},6,tick,Every lamp is lit,,,,,,,,,`].join('\r\n'));
    await expect(file.table('What would change')).toContainText('Supply');
    await expect(file.table('What would be added')).toContainText('Every lamp is lit');
    await file.import.click();
    await expect(file.note).toContainText('The file of the check sheets is imported: 0 added, 1 changed.');
  });

  await test.step('nothing waits any more', async () => {
    await page.goto('/workshop/catalogue/file/check');
    await expect(page).toHaveURL(/\/workshop\/catalogue\/file$/);
  });
  await context.close();
});
