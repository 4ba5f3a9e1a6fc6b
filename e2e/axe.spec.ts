import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { booking } from './screens/booking';
import { certificate } from './screens/certificate';
import { problem } from './screens/problem';
import { type Case, fill, findCase } from './world/case';
import { pages } from './world/pages';
import { staffRoles } from './world/people';
import { type RouteRow, routes } from './world/routes';
import { fillStages } from './world/stages';
import { expect, test } from './world/test';

const phone = { width: 360, height: 740 };
const desk = { width: 1280, height: 800 };
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
// Nothing to look at: documents, pictures, keys, and what only machines ask.
const noPage =
  /\.(pdf|csv|xml|zip)|\/photo(\/|$)|\/workshop\/certificate\/|\/invoice\/|\/certificate\/keys|^\/workshop\/session$|^\/(health|ready|metrics)$/;

test('every page is accessible and fits, on a phone and at a desk', async ({ page, workshop, tolerate }) => {
  test.setTimeout(600_000);
  tolerate(/404 \(Not Found\)|403 \(Forbidden\)/);
  // A framed message lets no script run, not even the one that the browser's driver puts into every frame.
  tolerate(/^Blocked script execution in 'about:srcdoc'/);
  const owner = await workshop('owner');
  const held = await findCase(owner, page);
  const all = await everyPage(owner, held);
  const desks = [owner, await owner.context().newPage()];
  const seen = await Promise.all([
    lookAt(
      page,
      all.filter(({ isStaff }) => !isStaff),
    ),
    ...desks.map((desk, place) =>
      lookAt(
        desk,
        all.filter(({ isStaff }) => isStaff).filter((_, at) => at % desks.length === place),
      ),
    ),
  ]);
  const faults = seen.flat();

  await page.setViewportSize(phone);
  await page.goto(fill('/book/{draft}/address', held.places));
  await booking(page).address.email.fill('nobody');
  await booking(page).goOn();
  await expect(problem(page)).toBeVisible();
  faults.push(...(await faultsOf(page, 'a booking with a problem')));

  await page.setViewportSize(phone);
  await page.goto(fill('/certificate/{certificate}', held.places));
  await certificate(page).serial.fill(held.secrets.serial);
  await certificate(page).symptom('Something else').check();
  await certificate(page).details.fill('It crackles.');
  await certificate(page).ask.click();
  await expect(certificate(page).answer).toBeVisible();
  faults.push(...(await faultsOf(page, 'the answer to a claim')));
  expect(faults).toEqual([]);
});

async function lookAt(viewer: Page, shown: readonly Shown[]): Promise<string[]> {
  const faults: string[] = [];
  for (const { address } of shown) {
    await viewer.setViewportSize(phone);
    await viewer.goto(address);
    faults.push(...(await faultsOf(viewer, address)));
  }
  return faults;
}

type Shown = { address: string; isStaff: boolean };

/** The pages of the table of routes, and those of world/pages.ts that show one of them at another stage. */
async function everyPage(owner: Page, held: Case): Promise<Shown[]> {
  const shown = routes.filter(({ path, answer }) => !noPage.test(path) && answer !== 'elsewhere');
  const plain = shown.map((route) => ({
    address: fill(route.example ?? route.path, held.places),
    isStaff: isStaff(route),
  }));
  const atStages: Shown[] = [{ address: '/nowhere', isStaff: false }];
  for (const { path, as } of pages.filter((each) => /\{(job|link):/.test(each.path))) {
    atStages.push({ address: await fillStages(owner, path), isStaff: as === 'owner' });
  }
  return [...plain, ...atStages];
}

function isStaff({ may }: RouteRow): boolean {
  return may.some((who) => staffRoles.some((role) => role === who));
}

/** What is wrong with the page that is open on the phone's width. */
async function faultsOf(page: Page, address: string): Promise<string[]> {
  const faults: string[] = [];
  // By time, since a page that is not drawn asks for no frame.
  await page.waitForFunction(ownsFrames, undefined, { polling: 50 });
  const { width, untitled } = await page.evaluate(measure);
  faults.push(...(await spilt(page, `${address} at ${phone.width}`)));
  if (width > phone.width) faults.push(`${address} is ${width} wide on a screen of ${phone.width}`);
  if (untitled > 0) faults.push(`${address} has ${untitled} frames without a title`);
  faults.push(...(await violations(page, `${address} at ${phone.width}`)));
  await page.setViewportSize(desk);
  faults.push(...(await spilt(page, `${address} at ${desk.width}`)));
  faults.push(...(await violations(page, `${address} at ${desk.width}`)));
  return faults;
}

/** Whether React has taken over every frame: one that goes before is missed when it does, and said on the console. */
function ownsFrames(): boolean {
  const frames = [...document.querySelectorAll('iframe')];
  return frames.every((frame) => Object.keys(frame).some((key) => key.startsWith('__react')));
}

/** How wide the page is; framed messages run no script, axe would wait for each of them, so they go. */
function measure(): { width: number; untitled: number } {
  const width = document.documentElement.scrollWidth;
  const frames = [...document.querySelectorAll('iframe')];
  for (const frame of frames) frame.remove();
  return { width, untitled: frames.filter((frame) => frame.title === '').length };
}

/** Facts and cells whose words run out over what is beside them: a page can have its own width and they still do. */
async function spilt(page: Page, where: string): Promise<string[]> {
  const words = await page.evaluate(() =>
    [...document.querySelectorAll('dd, td')]
      .filter((cell) => cell.scrollWidth > cell.clientWidth + 1)
      .map((cell) => cell.textContent?.trim() ?? ''),
  );
  return words.map((each) => `${where}: “${each}” runs out of its place`);
}

async function violations(page: Page, where: string): Promise<string[]> {
  const builder = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).withTags(tags);
  // Without frames the older way finds the same and opens no second page.
  const { violations: found } = await builder.setLegacyMode().analyze();
  return found.map(
    ({ id, nodes }) => `${where}: ${id} at ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}
