import type { Page } from 'playwright';
import { z } from 'zod';

/** Milliseconds to the largest paint, all unasked shifts summed, the slowest answer in milliseconds, bytes of script as sent. */
export type Felt = { lcp: number; cls: number; inp: number; script: number };

// Script and fonts that come after `load` may still paint, shift and answer; this is a window of watching.
const LATER = 1500;
// An answer is written down a frame or two after it was painted.
const PAINTED = 300;

/**
 * As text: it runs in the page, before the page's own scripts. Answers shorter than 16 ms are not reported one by one, but the
 * first always is (web-vitals' rule for INP with fewer than fifty answers: the slowest; https://web.dev/articles/inp).
 */
export const watch = `
  globalThis.felt = { lcp: 0, cls: 0, inp: 0, answers: 0 };
  const on = (type, more, take) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true, ...more });
  const answered = (entry) => { felt.answers += 1; felt.inp = Math.max(felt.inp, entry.duration); };
  on('largest-contentful-paint', {}, (entry) => { felt.lcp = Math.max(felt.lcp, entry.startTime); });
  on('layout-shift', {}, (entry) => { if (!entry.hadRecentInput) felt.cls += entry.value; });
  on('first-input', {}, answered);
  on('event', { durationThreshold: 16 }, (entry) => { if (entry.interactionId) answered(entry); });
`;

// Compressed as the app sends it, whoever asked for it: the page, or a script that the page loaded later.
const readAll = `({
  ...globalThis.felt,
  script: performance.getEntriesByType('resource')
    .filter((entry) => new URL(entry.name).pathname.endsWith('.js'))
    .reduce((sum, entry) => sum + entry.encodedBodySize, 0),
})`;

const all = z.object({
  lcp: z.number().positive(),
  cls: z.number(),
  inp: z.number(),
  answers: z.number().positive(),
  script: z.number().positive(),
});

/** Uses a loaded page by key and tap, and reads what was felt; refuses a visit in which nothing was painted or answered. */
export async function readFelt(tab: Page): Promise<Felt> {
  await tab.waitForTimeout(LATER);
  // The first touch ends the watch for the largest paint.
  for (let i = 0; i < 3; i += 1) await press(tab, 'Tab');
  for (const what of (await tab.locator('main summary:visible').all()).slice(0, 3)) {
    await what.click();
    await tab.waitForTimeout(PAINTED);
  }
  const field = tab.locator('main :is(input[type=search], input[type=text], textarea):visible').first();
  if ((await field.count()) > 0) {
    await field.click();
    for (const key of 'abc') await press(tab, key);
  }
  await tab.waitForTimeout(PAINTED);
  const { lcp, cls, inp, script } = all.parse(await tab.evaluate(readAll));
  return { lcp, cls, inp, script };
}

async function press(tab: Page, key: string): Promise<void> {
  await tab.keyboard.press(key);
  await tab.waitForTimeout(PAINTED);
}
