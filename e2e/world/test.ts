import { type BrowserContext, test as base, expect, type Page } from '@playwright/test';
import { signIn } from '../screens/sign-in';
import type { StaffRole } from './people';
import { openingTime, place, setClock } from './place';

export { expect };

type StorageState = Awaited<ReturnType<BrowserContext['storageState']>>;
type Complaints = { tolerated: RegExp[]; listenTo: (context: BrowserContext) => void };

type World = {
  /** Moves the clock of the app; it returns to the opening time after the test. */
  setClock: (iso: string) => void;
  /** Lets the pages of this test complain where that is the subject, e.g. a page that is not found. */
  tolerate: (complaint: RegExp) => void;
  /** A page of the workshop with somebody signed in, with script whatever the customer of the walk has: wide, or a phone. */
  workshop: (role: StaffRole, on?: 'phone') => Promise<Page>;
};

type Shared = {
  /** Cookies of somebody who was signed in and has signed out since. */
  signedOut: () => Promise<StorageState>;
  /** The session of a role; each signs in once for all tests, since too many tries are refused. */
  sessionOf: (role: StaffRole) => Promise<StorageState>;
};

/** Every walk fails when a page writes an error to its console or throws one, whatever else it shows. */
export const test = base.extend<World & { complaints: Complaints }, Shared>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this very pattern
  complaints: async ({}, use) => {
    const heard: string[] = [];
    const tolerated: RegExp[] = [];
    const listenTo = (context: BrowserContext) => {
      context.on('console', (message) => {
        if (message.type() === 'error') heard.push(`${message.text()} at ${message.location().url}`);
      });
      context.on('weberror', (error) => heard.push(String(error.error())));
    };
    await use({ tolerated, listenTo });
    expect(
      heard.filter((line) => !tolerated.some((pattern) => pattern.test(line))),
      'errors on the console',
    ).toEqual([]);
  },
  context: async ({ context, complaints }, use) => {
    complaints.listenTo(context);
    await use(context);
  },
  tolerate: async ({ complaints }, use) => use((complaint) => void complaints.tolerated.push(complaint)),
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this very pattern
  setClock: async ({}, use) => {
    await use(setClock);
    setClock(openingTime);
  },
  sessionOf: [
    async ({ browser }, use) => {
      const sessions = new Map<StaffRole, StorageState>();
      await use(async (role) => {
        const known = sessions.get(role);
        if (known) return known;
        const context = await browser.newContext({ baseURL: place.origin, ...wide });
        await signIn(await context.newPage()).as(role);
        const session = await context.storageState();
        await context.close();
        sessions.set(role, session);
        return session;
      });
    },
    { scope: 'worker' },
  ],
  signedOut: [
    async ({ browser }, use) => {
      await use(async () => {
        const context = await browser.newContext({ baseURL: place.origin, ...wide });
        const page = await context.newPage();
        await signIn(page).as('front');
        const session = await context.storageState();
        await page.goto('/workshop/account');
        await page.getByRole('button', { name: 'Sign out', exact: true }).click();
        await page.waitForURL('**/workshop/sign-in**');
        await context.close();
        return session;
      });
    },
    { scope: 'worker' },
  ],
  workshop: async ({ browser, complaints, sessionOf }, use) => {
    const opened: BrowserContext[] = [];
    await use(async (role, on) => {
      const shape = on === 'phone' ? phone : wide;
      const context = await browser.newContext({ storageState: await sessionOf(role), ...shape });
      opened.push(context);
      complaints.listenTo(context);
      return context.newPage();
    });
    for (const context of opened) await context.close();
  },
});

const wide = { javaScriptEnabled: true, viewport: { width: 1280, height: 800 } };
const phone = { javaScriptEnabled: true, viewport: { width: 360, height: 740 } };
