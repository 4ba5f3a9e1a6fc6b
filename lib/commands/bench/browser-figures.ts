import { type Browser, chromium } from 'playwright';
import { chromiumArguments, needChromium } from '../chromium';
import { type Asked, barePage, CUSTOMER_PAGES, type Page, sampleAt, someAddress } from './ask-pages';
import { type Figure, median } from './figures';
import { type Felt, readFelt, watch } from './watch-page';

const RUNS = 3;
const MOST_SCRIPT = 12_000;

// A slow mobile line and processor as Lighthouse defines them (docs/throttling.md and core/config/constants.js of
// GoogleChrome/lighthouse): 150 ms there and back, 1.6 Mbit/s down, 750 kbit/s up, four times slower. Chromium holds up
// whole requests, not packets, for which the same file takes 3.75 times the delay and 0.9 of the rates.
const bytes = (kilobits: number) => (kilobits * 1024 * 0.9) / 8;
const LINE = { latency: 150 * 3.75, downloadThroughput: bytes(1.6 * 1024), uploadThroughput: bytes(750) };
const SLOWER = 4;

/** What a customer's phone would feel: a small screen, an empty cache, a slow processor and a slow line. */
export async function* browserFigures(asked: Asked): AsyncGenerator<Figure> {
  const browser = await chromium.launch({ executablePath: needChromium(), args: chromiumArguments });
  try {
    const bare = await felt(browser, asked, barePage);
    yield { what: 'script of the bare page, as sent', value: `${(bare.script / 1000).toFixed(1)} kB` };
    for (const page of CUSTOMER_PAGES) {
      const { lcp, cls, inp, script } = await felt(browser, asked, page);
      const more = script - bare.script;
      yield {
        what: `slow phone, ${page.name}`,
        value: `LCP ${(lcp / 1000).toFixed(2)} s, CLS ${cls.toFixed(3)}, INP ${inp.toFixed(0)} ms`,
        aim: 'LCP under 1.8 s, CLS 0.02, INP 100 ms',
        reached: lcp < 1800 && cls < 0.02 && inp < 100,
      };
      yield {
        what: `script beyond the bare page, ${page.name}`,
        value: `${(more / 1000).toFixed(1)} kB`,
        aim: 'at most 12 kB as sent',
        reached: more <= MOST_SCRIPT,
      };
    }
  } finally {
    await browser.close();
  }
}

/** The medians of some visits, each of another job. */
async function felt(browser: Browser, asked: Asked, page: Page): Promise<Felt> {
  const visits: Felt[] = [];
  for (let i = 0; i < RUNS; i += 1) visits.push(await visit(browser, asked, page, i));
  const of = (key: keyof Felt) => median(visits.map((each) => each[key]));
  return { lcp: of('lcp'), cls: of('cls'), inp: of('inp'), script: of('script') };
}

async function visit(browser: Browser, asked: Asked, page: Page, i: number): Promise<Felt> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    extraHTTPHeaders: { 'x-forwarded-for': someAddress() },
  });
  try {
    const tab = await context.newPage();
    await tab.addInitScript({ content: watch });
    const tools = await context.newCDPSession(tab);
    await tools.send('Network.enable');
    await tools.send('Network.emulateNetworkConditions', { offline: false, ...LINE });
    await tools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await tab.goto(asked.app.origin + page.path(sampleAt(asked.samples, i)), { waitUntil: 'load' });
    return await readFelt(tab);
  } finally {
    await context.close();
  }
}
