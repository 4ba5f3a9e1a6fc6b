import { type Browser, chromium } from 'playwright';
import { z } from 'zod';
import { chromiumArguments, needChromium } from '../chromium';
import { type Asked, PAGES, type Page } from './ask-pages';
import { type Figure, median } from './figures';

const RUNS = 3;
// What is called a slow 4G line in browsers' own tools; from memory.
const LINE = { latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const SLOWER = 4;

const felt = z.object({ lcp: z.number(), cls: z.number(), inp: z.number() });
type Felt = z.infer<typeof felt>;

/** What a customer's phone would feel: a small screen, an empty cache, a processor four times slower and a slow line. */
export async function browserFigures(asked: Asked): Promise<Figure[]> {
  const browser = await chromium.launch({ executablePath: needChromium(), args: chromiumArguments });
  try {
    const figures: Figure[] = [];
    for (const page of PAGES) {
      const [job] = asked.samples;
      if (!job || page.path(job).startsWith('/workshop')) continue;
      const runs: Felt[] = [];
      for (let i = 0; i < RUNS; i += 1) runs.push(await visit(browser, asked, page, i));
      const of = (key: keyof Felt) => median(runs.map((run) => run[key]));
      const [lcp, cls, inp] = [of('lcp'), of('cls'), of('inp')];
      figures.push({
        what: `${page.name} on a slow phone: largest paint, shift, slowest answer to a key or tap`,
        value: `${(lcp / 1000).toFixed(2)} s, ${cls.toFixed(3)}, ${inp.toFixed(0)} ms`,
        aim: 'under 1.8 s, 0.02, 100 ms',
        reached: lcp < 1800 && cls < 0.02 && inp < 100,
      });
    }
    return figures;
  } finally {
    await browser.close();
  }
}

async function visit(browser: Browser, asked: Asked, page: Page, run: number): Promise<Felt> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    extraHTTPHeaders: { 'x-forwarded-for': `198.18.0.${run + 1}` },
  });
  try {
    const tab = await context.newPage();
    await tab.addInitScript({ content: watch });
    const tools = await context.newCDPSession(tab);
    await tools.send('Network.enable');
    await tools.send('Network.emulateNetworkConditions', { offline: false, ...LINE });
    await tools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    const job = asked.samples[run];
    if (!job) throw new Error('there is no job to visit');
    await tab.goto(asked.app.origin + page.path(job), { waitUntil: 'networkidle' });
    // The first touch ends the watch for the largest paint.
    for (let i = 0; i < 4; i += 1) {
      await tab.keyboard.press('Tab');
      await tab.waitForTimeout(60);
    }
    await tab
      .locator('main, body')
      .first()
      .click({ position: { x: 4, y: 4 } });
    await tab.waitForTimeout(300);
    return felt.parse(await tab.evaluate('globalThis.felt'));
  } finally {
    await context.close();
  }
}

// As text: it runs in the page, before the page's own scripts.
const watch = `
  globalThis.felt = { lcp: 0, cls: 0, inp: 0 };
  const on = (type, more, take) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true, ...more });
  on('largest-contentful-paint', {}, (entry) => { felt.lcp = Math.max(felt.lcp, entry.startTime); });
  on('layout-shift', {}, (entry) => { if (!entry.hadRecentInput) felt.cls += entry.value; });
  on('event', { durationThreshold: 16 }, (entry) => { if (entry.interactionId) felt.inp = Math.max(felt.inp, entry.duration); });
`;
