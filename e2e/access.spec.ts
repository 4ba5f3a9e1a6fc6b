import type { APIRequestContext, Page } from '@playwright/test';
import { changedBetween, everythingKept, keptOf } from '@/tests/world/kept';
import { jobSheet } from './screens/job-sheet';
import { signIn } from './screens/sign-in';
import { type ActionRow, actions, type Bound } from './world/actions';
import { type BuiltAction, builtActions, callAction } from './world/call-action';
import { altered, type Case, fill, findCase } from './world/case';
import { type StaffRole, staffRoles } from './world/people';
import { place } from './world/place';
import { type RouteRow, routes } from './world/routes';
import { test as base, expect } from './world/test';
import { everySecret, told } from './world/told';

type Caller = 'nobody' | 'somebody signed out' | StaffRole;

const test = base.extend<{ callers: Record<Caller, APIRequestContext> }>({
  callers: async ({ sessionOf, signedOut, playwright }, use) => {
    const open = (storageState?: Awaited<ReturnType<typeof sessionOf>>) =>
      playwright.request.newContext({ baseURL: place.origin, ...(storageState && { storageState }) });
    const callers = {
      nobody: await open(),
      'somebody signed out': await open(await signedOut()),
      owner: await open(await sessionOf('owner')),
      bench: await open(await sessionOf('bench')),
      front: await open(await sessionOf('front')),
    };
    await use(callers);
    for (const request of Object.values(callers)) await request.dispose();
  },
});

/** The case is found once; the tests of this file leave it as it is. */
let known: Promise<Case> | undefined;
const theCase = (owner: Page, visitor: Page) => {
  known ??= findCase(owner, visitor);
  return known;
};

test('every address answers those it is for, and tells others nothing', async ({
  page,
  workshop,
  callers,
}) => {
  test.setTimeout(300_000);
  const held = await theCase(await workshop('owner'), page);
  const sheet = await callers.owner.get(fill('/workshop/jobs/{job}', held.places));
  // Otherwise nothing that is looked for below could ever be found.
  expect(await told(sheet, everySecret(held))).toEqual(everySecret(held));

  const faults: string[] = [];
  for (const route of routes) {
    // Reading changes nothing, so all of them may ask at once.
    const asked = each(callers).map(([caller, request]) => faultsOf(route, { caller, request, held }));
    faults.push(...(await Promise.all(asked)).flat());
  }
  expect(faults).toEqual([]);
});

test('every action does nothing and tells nothing for those it is not for', async ({
  page,
  workshop,
  callers,
}) => {
  test.setTimeout(300_000);
  const held = await theCase(await workshop('owner'), page);
  const faults: string[] = [];
  const built = new Map(builtActions().map((action) => [action.action, action]));
  expect([...built.keys()].sort()).toEqual([...new Set(actions.map(({ action }) => action))].sort());

  let before = await everythingKept(place);
  const untouched = async (what: string) => {
    const after = await everythingKept(place);
    const changed = changedBetween(before, after);
    before = after;
    if (changed.length > 0) faults.push(`${what}: changed ${changed.join(', ')}`);
  };
  for (const row of actions) {
    const action = built.get(row.action);
    if (!action) continue;
    const asked = each(callers).map(([caller, request]) => refusals(row, action, { caller, request, held }));
    faults.push(...(await Promise.all(asked)).flat());
    faults.push(...(await strangersAt(row, action, { caller: 'nobody', request: callers.nobody, held })));
    faults.push(...(await forgedAt(row, action, { ...firstThatMay(row, callers), held })));
    await untouched(row.action);
  }
  expect(faults).toEqual([]);
});

test('the private link of another job or quote changes that one and never this', async ({
  page,
  workshop,
  callers,
}) => {
  const held = await theCase(await workshop('owner'), page);
  const built = new Map(builtActions().map((action) => [action.action, action]));
  const { job = '', quote = '' } = held.places;
  const [jobBefore, quoteBefore, before] = [
    await keptOf(place, job),
    await keptOf(place, quote),
    await everythingKept(place),
  ];
  for (const row of actions.filter(({ may }) => may.includes('private link'))) {
    const action = built.get(row.action);
    const link = row.bound?.[0] === '{quoteLink}' ? '{otherQuoteLink}' : '{otherLink}';
    const answer = await callAction(callers.nobody, {
      id: action?.id ?? '',
      address: fill(`${action?.page.includes('/quote/') ? '/quote' : '/job'}/${link}`, held.places),
      bound: [fill(link, held.places)],
      form: row.form ?? {},
    });
    expect(answer.status(), row.action).toBeLessThan(400);
    expect(await told(answer, [held.secrets.serial]), row.action).toEqual([]);
  }
  expect(changedBetween(jobBefore, await keptOf(place, job))).toEqual([]);
  expect(changedBetween(quoteBefore, await keptOf(place, quote))).toEqual([]);
  // The calls were real: the other ones have their messages now.
  expect(changedBetween(before, await everythingKept(place))).toEqual(
    expect.arrayContaining(['job_event', 'message']),
  );
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
  await expect(intruder.getByRole('main')).toContainText('You were signed out, so nothing is saved yet');

  await jobSheet(owner).open(number);
  await expect(jobSheet(owner).part('Money')).toBeVisible();
  await expect(owner.getByRole('main')).not.toContainText(/FROM-THE-BENCH|FROM NOBODY/);
});

test('what is typed when a session has ended is sent after signing in beside it', async ({ workshop }) => {
  const bench = await workshop('bench');
  const list = await (await bench.request.get('/workshop/jobs?stage=on-bench')).text();
  const sheet = jobSheet(bench);
  await sheet.open(/\/workshop\/jobs\/(J\w{8})/.exec(list)?.[1] ?? '');
  await bench.context().clearCookies();
  await sheet.addFinding('Typed before and sent after');
  const opening = bench.waitForEvent('popup');
  await bench.getByRole('link', { name: 'Sign in in another tab' }).click();
  const beside = await opening;
  await signIn(beside).as('bench');
  await beside.close();
  await bench.getByRole('button', { name: 'Record the finding' }).click();
  await expect(sheet.findings).toContainText('Typed before and sent after');
});

test('a page says that its session ends soon, and a button puts that off', async ({ workshop }) => {
  const page = await workshop('bench');
  await page.clock.install();
  await page.goto('/workshop/jobs');
  await page.route('**/workshop/session', (route) =>
    route.fulfill({ json: { secondsLeft: 300, isLast: false, at: '14:32' } }),
  );
  const warning = page.getByText('You are signed out at 14:32');
  await expect(warning).toHaveCount(0);
  await page.clock.fastForward('04:00:00');
  await expect(warning).toBeVisible();
  await page.unroute('**/workshop/session');
  const typedIn = page.getByRole('searchbox').last();
  await typedIn.focus();
  await page.getByRole('button', { name: 'Stay signed in' }).click();
  await expect(page.getByText(/^You stay signed in, until \d\d:\d\d/)).toBeVisible();
  await expect(typedIn).toBeFocused();
  await page.clock.fastForward('00:02');
  await expect(page.getByText('You stay signed in')).toBeVisible();
  await page.clock.fastForward('01:00');
  await expect(page.getByText('You stay signed in')).toHaveCount(0);
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

/** Those who may not are sent away; staff who may are heard, and told at the most that what they name is not there. */
async function refusals(
  row: ActionRow,
  action: BuiltAction,
  { caller, request, held }: Try,
): Promise<string[]> {
  const mayCall = row.may.some((who) => who === caller || !isRole(who));
  // Whoever holds a number or a link may use it; what others hold is tried by strangersAt.
  if (mayCall && (row.acts || (row.bound && row.strangers))) return [];
  const bound = (row.bound ?? []).map((part) => filled(part, held));
  const answer = await callAction(request, {
    id: action.id,
    address: addressOf(action, held),
    bound: mayCall ? bound.map(unknown) : bound,
    form: row.form ?? {},
  });
  const to = (answer.headers()['x-action-redirect'] ?? '').replace(/;(push|replace)$/, '');
  const got = `${answer.status()} ${to}`.trim();
  const sentAway = /^\/workshop\/(sign-in|not-yours|second-step)/.test(to);
  // Whose session ended has the form back, to be sent after signing in; that nothing is kept is asked of the database.
  const isHandedBack =
    !isRole(caller) && /You were signed out, so nothing is saved/.test(await answer.text());
  const isRight = mayCall
    ? answer.status() < 400 && !sentAway
    : isHandedBack || refused(caller).test(got.replace(/^\d+/, '307'));
  const faults = isRight ? [] : [`${caller} at ${row.action}: ${got}`];
  const secrets = await told(answer, everySecret(held));
  return [...faults, ...secrets.map((what) => `${caller} at ${row.action}: tells ${what}`)];
}

/** A link, a number or a code of something else is told that it opens nothing. */
async function strangersAt(row: ActionRow, action: BuiltAction, { request, held }: Try): Promise<string[]> {
  const faults: string[] = [];
  const [, ...others] = (row.bound ?? []).map((part) => filled(part, held));
  for (const hold of row.strangers?.hold ?? []) {
    const answer = await callAction(request, {
      id: action.id,
      address: addressOf(action, held),
      bound: [fill(hold, held.places), ...others],
      form: row.form ?? {},
    });
    const text = await answer.text();
    if (!row.strangers?.told.test(text)) faults.push(`${row.action} with ${hold}: ${text.slice(0, 300)}`);
    faults.push(
      ...(await told(answer, everySecret(held))).map((what) => `${row.action} with ${hold}: tells ${what}`),
    );
  }
  return faults;
}

/** The database would read an object as a filter that fits everything; even those who may get nowhere with one. */
async function forgedAt(row: ActionRow, action: BuiltAction, { request, held }: Try): Promise<string[]> {
  const faults: string[] = [];
  const bound = (row.bound ?? []).map((part) => filled(part, held));
  for (const at of bound.keys()) {
    const filter = { not: '' };
    const answer = await callAction(request, {
      id: action.id,
      address: addressOf(action, held),
      bound: bound.map((part, index) => (index === at ? filter : part)),
      form: row.form ?? {},
    });
    const what = `${row.action} bound to ${JSON.stringify(filter)}`;
    if (answer.status() < 400)
      faults.push(`${what}: ${answer.status()} ${(await answer.text()).slice(0, 300)}`);
    faults.push(...(await told(answer, everySecret(held))).map((secret) => `${what}: tells ${secret}`));
  }
  return faults;
}

function firstThatMay({ may }: ActionRow, callers: Record<Caller, APIRequestContext>): Omit<Try, 'held'> {
  const caller = staffRoles.find((role) => may.includes(role)) ?? 'nobody';
  return { caller, request: callers[caller] };
}

function addressOf({ page }: BuiltAction, held: Case): string {
  const route = routes.find(({ path }) => path === page);
  return fill(route?.example ?? page, held.places);
}

function filled(part: Bound, held: Case): Bound {
  return typeof part === 'string' ? fill(part, held.places) : part;
}

/** Of the same kind, and nobody's. */
function unknown(part: Bound): Bound {
  if (typeof part !== 'string') return part;
  return /^[\da-f-]{36}$/.test(part) ? '00000000-0000-4000-8000-000000000000' : altered(part);
}

function each(callers: Record<Caller, APIRequestContext>): [Caller, APIRequestContext][] {
  return [
    ['nobody', callers.nobody],
    ['somebody signed out', callers['somebody signed out']],
    ...staffRoles.map((role): [Caller, APIRequestContext] => [role, callers[role]]),
  ];
}
