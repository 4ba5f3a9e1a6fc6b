import { expect, test } from './world/test';

test('the owner learns what comes back, why, and what to charge for it', async ({ workshop, tolerate }) => {
  tolerate(/403 \(Forbidden\)/);
  const owner = await workshop('owner');
  const heading = owner.getByRole('heading', { level: 1 });
  const part = (name: string) =>
    owner.locator('section').filter({ has: owner.getByRole('heading', { name, exact: true }) });

  await test.step('which repair loses money on its warranty', async () => {
    await owner.goto('/workshop/returns');
    await expect(part('What warranty costs')).toContainText('Repairs that lose money');
    await expect(part('What warranty costs')).toContainText('Battery replaced, Tideline Meridian Two');
  });

  await test.step('how much to add to its price', async () => {
    await part('What warranty costs')
      .getByRole('link', { name: /^Battery replaced/ })
      .click();
    await expect(heading).toHaveText('Battery replaced, Tideline Meridian Two');
    await expect(part('What its warranty costs')).toContainText(/Add £\d+\.\d\d to the price/);
    await expect(part('Why they came back')).toContainText('A part we fitted');
  });

  await test.step('is the lot bad or unlucky', async () => {
    await owner.goto('/workshop');
    await owner.getByRole('link', { name: 'NB-0588' }).click();
    await expect(heading).toHaveText(/^NB-0588/);
    await expect(part('Bad or unlucky')).toContainText(
      /evidence that it comes back more often: [45] of [56].* Compared: units watched \d+ days/,
    );
    await owner.getByRole('link', { name: 'Look at a letter to everybody who carries it' }).click();
    await expect(heading).toHaveText('Write to everybody who carries it');
    await owner.goto('/workshop/returns/by/lot');
    await expect(owner.getByRole('main')).toContainText('NB-0588');
  });

  await test.step('did the new check help', async () => {
    await owner.goto('/workshop/returns');
    await part('Repairs').getByRole('link', { name: 'USB-C socket replaced, Tideline Meridian Two' }).click();
    await expect(part('What was learnt')).toContainText('evidence of fewer returns');
  });

  await test.step('every figure has its rows, on a page and in a file', async () => {
    await owner.getByRole('link', { name: 'The rows behind these figures' }).click();
    await expect(heading).toHaveText('Rows behind the figures');
    await owner.getByRole('link', { name: 'Only what came back' }).click();
    await expect(owner.getByRole('main')).toContainText('Only what came back.');
    await expect(owner.getByRole('cell', { name: 'no', exact: true })).toHaveCount(0);
    const file = await owner.getByRole('link', { name: /CSV/ }).getAttribute('href');
    const text = await (await owner.request.get(file ?? '')).text();
    expect(text.split('\r\n')[0]).toContain('Cost, GBP');
    expect(text).toContain('Tideline Meridian Two');
  });

  await test.step('the bench sees what comes back, without money and without people', async () => {
    const bench = await workshop('bench');
    await bench.goto('/workshop/returns');
    await expect(bench.getByRole('main')).toContainText('NB-0588');
    await expect(bench.getByRole('main')).not.toContainText('£');
    await expect(bench.getByRole('link', { name: 'By who did the work' })).toHaveCount(0);
    await bench.goto('/workshop/returns/by/technician');
    await expect(bench.getByRole('heading', { level: 1 })).toHaveText('This page is for another role');
    const file = await (await bench.request.get('/workshop/returns/rows.csv')).text();
    expect(file.split('\r\n')[0]).not.toMatch(/Cost|work by/);
  });
});
