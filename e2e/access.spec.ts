import type { APIRequestContext, APIResponse } from '@playwright/test';
import { textOf } from '@/tests/documents/read-pdf';
import { jobSheet } from './screens/job-sheet';
import { type Case, fill, findCase } from './world/case';
import { type StaffRole, staffRoles } from './world/people';
import { place } from './world/place';
import { type RouteRow, routes } from './world/routes';
import { expect, test } from './world/test';

type Caller = 'nobody' | 'somebody signed out' | StaffRole;

test('every address answers those it is for, and tells others nothing', async ({
  page,
  workshop,
  sessionOf,
  signedOut,
  playwright,
}) => {
  test.setTimeout(300_000);
  const held = await findCase(await workshop('owner'), page);
  const open = (storageState?: Awaited<ReturnType<typeof sessionOf>>) =>
    playwright.request.newContext({ baseURL: place.origin, ...(storageState && { storageState }) });
  const callers: [Caller, APIRequestContext][] = [
    ['nobody', await open()],
    ['somebody signed out', await open(await signedOut())],
  ];
  for (const role of staffRoles) callers.push([role, await open(await sessionOf(role))]);

  const owner = await open(await sessionOf('owner'));
  const sheet = await owner.get(fill('/workshop/jobs/{job}', held.places));
  // Otherwise nothing that is looked for below could ever be found.
  expect(await told(sheet, everySecret(held))).toEqual(everySecret(held));
  await owner.dispose();

  const faults: string[] = [];
  for (const route of routes) {
    for (const [caller, request] of callers) {
      faults.push(...(await faultsOf(route, { caller, request, held })));
    }
  }
  for (const [, request] of callers) await request.dispose();
  expect(faults).toEqual([]);
});

test('a form sent by somebody who may not changes nothing', async ({ workshop, sessionOf, tolerate }) => {
  tolerate(/403 \(Forbidden\)/);
  const owner = await workshop('owner');
  const list = await (await owner.request.get('/workshop/jobs?stage=ready')).text();
  const number = /\/workshop\/jobs\/(J\w{8})/.exec(list)?.[1] ?? '';
  const intruder = await workshop('owner');
  const cookies = intruder.context();
  const sheet = jobSheet(intruder);

  // The page was open before the right to it ended.
  await sheet.open(number);
  await cookies.clearCookies();
  await cookies.addCookies((await sessionOf('bench')).cookies);
  await sheet.recordPayment('1.00', 'FROM-THE-BENCH');
  await expect(intruder.getByRole('heading', { level: 1 })).toHaveText('This page is for another role');

  await sheet.open(number);
  await cookies.clearCookies();
  await sheet.addFinding('FROM NOBODY');
  await expect(intruder.getByRole('heading', { level: 1 })).toHaveText('Sign in to the workshop');

  await jobSheet(owner).open(number);
  await expect(jobSheet(owner).part('Money')).toBeVisible();
  await expect(owner.getByRole('main')).not.toContainText(/FROM-THE-BENCH|FROM NOBODY/);
});

type Try = { caller: Caller; request: APIRequestContext; held: Case };

async function faultsOf(route: RouteRow, { caller, request, held }: Try): Promise<string[]> {
  const address = fill(route.example ?? route.path, held.places);
  const answer = await request.get(address, { maxRedirects: 0 });
  const faults: string[] = [];
  const mayOpen = route.may.some((who) => who === caller || !isRole(who));
  const got = `${answer.status()} ${answer.headers()['location'] ?? ''}`.trim();
  const expected = mayOpen ? opened(route, caller) : refused(caller);
  if (!expected.test(got)) faults.push(`${caller} at ${address}: ${got} instead of ${expected}`);
  if (!mayOpen || !opensTheCase(route)) {
    const secrets = mayOpen && route.may.includes('code') ? held.secrets.others : everySecret(held);
    faults.push(...(await told(answer, secrets)).map((what) => `${caller} at ${address}: tells ${what}`));
  }
  for (const [wrong, status] of route.strangers ?? []) {
    const other = await request.get(fill(wrong, held.places));
    if (other.status() !== status)
      faults.push(`${caller} at ${wrong}: ${other.status()} instead of ${status}`);
    faults.push(
      ...(await told(other, everySecret(held))).map((what) => `${caller} at ${wrong}: tells ${what}`),
    );
  }
  return faults;
}

function isRole(who: string): boolean {
  return staffRoles.some((role) => role === who);
}

/** Pages that show the case itself, or the same person's unfinished booking, to those who may open them. */
function opensTheCase({ may }: RouteRow): boolean {
  return may.includes('private link') || may.includes('draft') || may.some(isRole);
}

function opened({ path, answer = 200 }: RouteRow, caller: Caller): RegExp {
  // Who is signed in has no use for the ways in.
  if (isRole(caller) && ['/workshop/sign-in', '/workshop/second-step'].includes(path))
    return /^307 \/workshop$/;
  return answer === 'elsewhere' ? /^307 \/workshop(?!\/(sign-in|not-yours))/ : new RegExp(`^${answer}$`);
}

function refused(caller: Caller): RegExp {
  return isRole(caller) ? /^307 \/workshop\/not-yours\?needs=/ : /^307 \/workshop\/sign-in(\?then=|$)/;
}

function everySecret({ secrets }: Case): string[] {
  return [secrets.serial, ...secrets.others];
}

/** Which of the secrets an answer tells, in its text or as a document or picture. */
async function told(answer: APIResponse, secrets: string[]): Promise<string[]> {
  const type = answer.headers()['content-type'] ?? '';
  if (type.startsWith('image/jpeg')) return ['a photo'];
  const body = await answer.body();
  const text = type === 'application/pdf' ? textOf(new Uint8Array(body)) : body.toString('utf8');
  const letters = lettersOf(text.replace(/<[^>]*>/g, ''));
  return secrets.filter((secret) => text.includes(escaped(secret)) || letters.includes(lettersOf(secret)));
}

/** Letters and digits only: a number is written in groups that may break, in text that may be split. */
function lettersOf(text: string): string {
  return text.replace(/[^\p{L}\p{N}@]/gu, '');
}

/** As React writes it into a page. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll("'", '&#x27;');
}
