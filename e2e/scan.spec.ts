import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import JsBarcode from 'jsbarcode';
import encodeQr from 'qr';
import { chromiumArguments, findChromium } from '@/lib/commands/chromium';
import { camera } from './screens/camera';
import { certificate } from './screens/certificate';
import { writeFilm } from './world/film';
import { issuedCertificate } from './world/issued';
import { place } from './world/place';
import { expect, test } from './world/test';

const film = path.join(place.dataDir, '..', 'film.y4m');
const chromium = findChromium();

test.use({
  launchOptions: {
    args: [
      ...chromiumArguments,
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ],
    ...(chromium && { executablePath: chromium }),
  },
});

const square = (text: string) => encodeQr(text, 'raw', { ecc: 'low', border: 2 });

function bars(text: string): boolean[][] {
  const drawn: { encodings?: { data: string }[] } = {};
  JsBarcode(drawn, text, { format: 'CODE128' });
  const modules = (drawn.encodings ?? []).flatMap(({ data }) => [...data].map((module) => module === '1'));
  const quiet = Array.from({ length: 10 }, () => false);
  return Array.from({ length: 60 }, () => [...quiet, ...modules, ...quiet]);
}

test.describe('with a camera', () => {
  test.skip(({ javaScriptEnabled }) => javaScriptEnabled === false, 'a camera needs script');

  test('a certificate is opened by its code and a serial read from its bars', async ({ page, workshop }) => {
    const held = await issuedCertificate(await workshop('owner'));
    const scan = camera(page);
    const paper = certificate(page);
    const scripts: string[] = [];
    page.on('request', (request) => {
      if (request.resourceType() === 'script') scripts.push(request.url());
    });

    await test.step('the code leads to what was signed', async () => {
      writeFilm(film, square(`${place.origin}/c/${held.token}`));
      await page.goto('/certificate');
      await expect(scan.open).toBeVisible();
      const before = scripts.length;
      await scan.open.click();
      await page.waitForURL(`**/c/${held.token}`);
      await expect(paper.docket.article).toContainText('yes, signed by us');
      // The library that reads codes is fetched on the press, not before.
      expect(scripts.length).toBeGreaterThan(before);
    });

    await test.step('the bars on the unit fill in the serial', async () => {
      writeFilm(film, bars(held.serial));
      await scan.open.click();
      await expect(paper.serial).toHaveValue(held.serial);
      await expect(paper.serial).toBeFocused();
      await expect(scan.dialog).toBeHidden();
      await expect(paper.form).toContainText('Read. Please compare it with the label.');
    });

    await test.step('closed without a code, the camera is off and the field as it was', async () => {
      writeFilm(film, [[false]]);
      await scan.open.click();
      await expect(scan.picture).toBeVisible();
      expect((await new AxeBuilder({ page }).include('dialog').analyze()).violations).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(scan.dialog).toBeHidden();
      await expect(scan.open).toBeVisible();
      await expect(paper.serial).toHaveValue(held.serial);
    });
  });

  test('the browser’s own reader is used where there is one', async ({ page }) => {
    await page.addInitScript(() => {
      class OwnReader {
        static getSupportedFormats = async () => ['qr_code', 'code_128'];
        detect = async () => [{ rawValue: 'W-0000-0000' }];
      }
      Object.assign(window, { BarcodeDetector: OwnReader });
    });
    writeFilm(film, [[false]]);
    await page.goto('/certificate');
    await camera(page).open.click();
    await page.waitForURL('**/certificate?number=W-0000-0000');
    await expect(page.getByRole('textbox', { name: 'Certificate number' })).toHaveAccessibleDescription(
      /One character looks wrong/,
    );
  });

  test('a camera that may not be used is explained, and typing works as ever', async ({ page }) => {
    await page.addInitScript(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('no', 'NotAllowedError');
      };
    });
    writeFilm(film, [[false]]);
    await page.goto('/certificate');
    const scan = camera(page);
    await scan.open.click();
    await expect(scan.problem).toContainText('The browser may not use the camera here.');
    await scan.close.click();
    await expect(scan.dialog).toBeHidden();
    await page.getByRole('textbox', { name: 'Certificate number' }).fill('W');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/certificate?number=W');
  });
});

test('without script there is no button, and the number is typed', async ({ page, javaScriptEnabled }) => {
  test.skip(javaScriptEnabled !== false, 'with script there is one');
  await page.goto('/certificate');
  await expect(page.getByRole('textbox', { name: 'Certificate number' })).toBeVisible();
  await expect(camera(page).open).toHaveCount(0);
});
