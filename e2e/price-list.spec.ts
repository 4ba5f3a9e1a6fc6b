import { priceList } from './screens/price-list';
import { expect, test } from './world/test';

test('a repair is found with a typo, by kind of device, and by its own address', async ({ page }) => {
  const prices = priceList(page);

  await test.step('a typo, a nickname and words of the fault find it', async () => {
    await prices.open();
    await prices.search('merdian usb');
    await expect(prices.found).toContainText('2 repairs found');
    await expect(prices.model('Tideline Meridian Two')).toContainText('£72.00');
    await prices.search('SW8');
    await expect(prices.model('Skerrin Slipway 8')).toBeVisible();
    await prices.search('does not charge');
    await expect(prices.model('Tideline Gull')).toBeVisible();
  });

  await test.step('one kind of device alone, with and without words', async () => {
    await prices.device(/^Field recorders/).click();
    await expect(prices.model('Tideline Gull')).toBeVisible();
    await expect(prices.model('Skerrin Slipway 8')).toBeHidden();
    await expect(prices.found).toContainText('among field recorders');
    await prices.device('All devices').click();
    await expect(prices.model('Skerrin Slipway 8')).toBeVisible();
    await page.goto('/prices?family=effect-pedals');
    await expect(prices.model('Ostrel Sprat delay')).toBeVisible();
    await expect(prices.model('Tideline Gull')).toBeHidden();
  });

  await test.step('nothing found says so and leads on', async () => {
    await prices.search('zither');
    await expect(prices.found).toContainText('Nothing found');
    await expect(page.getByRole('link', { name: 'Ask for a price' }).first()).toBeVisible();
  });

  await test.step('a line leads to the repair itself, which says what machines are told too', async () => {
    await prices.open();
    await prices.model('Tideline Gull').getByRole('link', { name: 'Micro-USB socket replaced' }).click();
    await expect(page).toHaveURL(/\/prices\/tideline-gull#usb-socket$/);
    await expect(prices.repair('Micro-USB socket replaced')).toBeInViewport();
    await expect(page.getByText('96 × 52 × 21 mm, 120 g')).toBeVisible();
    const told = page.locator('script[type="application/ld+json"]');
    const service = JSON.parse((await told.textContent()) ?? '');
    expect(service).toMatchObject({ '@context': 'https://schema.org', '@type': 'Service' });
    const offer = service.offers.find((each: { name: string }) => each.name === 'Micro-USB socket replaced');
    expect(offer).toMatchObject({ price: '58.00', priceCurrency: 'GBP' });
    const response = await page.request.get(offer.url);
    expect(response.status()).toBe(200);
    expect(await response.text()).toContain(`id="${new URL(offer.url).hash.slice(1)}"`);
  });
});
