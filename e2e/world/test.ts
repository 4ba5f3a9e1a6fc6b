import { test as base, expect } from '@playwright/test';
import { openingTime, setClock } from './place';

export { expect };

type World = {
  /** Moves the clock of the app; it returns to the opening time after the test. */
  setClock: (iso: string) => void;
  /** Lets the pages of this test complain where that is the subject, e.g. a page that is not found. */
  tolerate: (complaint: RegExp) => void;
};

/** Every walk fails when a page writes an error to its console or throws one, whatever else it shows. */
export const test = base.extend<World & { complaints: { tolerated: RegExp[] } }>({
  complaints: async ({ context }, use) => {
    const heard: string[] = [];
    const tolerated: RegExp[] = [];
    context.on('console', (message) => {
      if (message.type() === 'error') heard.push(`${message.text()} at ${message.location().url}`);
    });
    context.on('weberror', (error) => heard.push(String(error.error())));
    await use({ tolerated });
    expect(
      heard.filter((line) => !tolerated.some((pattern) => pattern.test(line))),
      'errors on the console',
    ).toEqual([]);
  },
  page: async ({ page, complaints: _listening }, use) => use(page),
  tolerate: async ({ complaints }, use) => use((complaint) => void complaints.tolerated.push(complaint)),
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this very pattern
  setClock: async ({}, use) => {
    await use(setClock);
    setClock(openingTime);
  },
});
