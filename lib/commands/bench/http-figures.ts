import { type Asked, askOnce, barePage, PAGES, throughput, tracking } from './ask-pages';
import { countInLog } from './count-in-log';
import { atShare, type Figure, median } from './figures';
import { scriptBytes } from './script-bytes';

type Size = { jobs: number; asked: Asked };
type Log = { url: string; log: string };

const ROUNDS = 5;
const SECONDS = 2;
const TIMES = 40;
const MOST_QUERIES = 6;

/** Whole pages over HTTP, of the same build on both sizes at once, asked in turn so that the load of the moment falls on all. */
export async function httpFigures(few: Size, many: Size, log: Log | undefined): Promise<Figure[]> {
  const idle = many.asked.app.memory();
  for (const { asked } of [few, many])
    for (const page of PAGES) for (let i = 0; i < 5; i += 1) await askOnce(asked, page, i);
  return [
    { what: 'start of a built app to its first page', value: `${many.asked.app.firstPage.toFixed(1)} s` },
    ...(await throughputs(few, many)),
    {
      what: 'memory of the process that serves, idle and after that load',
      value: `${idle.toFixed(0)} MB, ${many.asked.app.memory().toFixed(0)} MB`,
    },
    ...(await times(few, many)),
    ...(log ? await queries(many, log) : []),
    ...(await scripts(many)),
  ];
}

async function throughputs(few: Size, many: Size): Promise<Figure[]> {
  const bare: number[] = [];
  const atFew: number[] = [];
  const atMany: number[] = [];
  for (const { asked } of [few, many]) await throughput(asked, tracking, 1);
  for (let round = 0; round < ROUNDS; round += 1) {
    bare.push(await throughput(few.asked, barePage, SECONDS));
    atFew.push(await throughput(few.asked, tracking, SECONDS));
    atMany.push(await throughput(many.asked, tracking, SECONDS));
  }
  const rate = (values: readonly number[]) => `${median(values).toFixed(0)}/s`;
  const ratio = (a: readonly number[], b: readonly number[]) =>
    median(a.map((value, round) => value / (b[round] ?? Number.NaN)));
  const toBare = ratio(atFew, bare);
  const toFew = ratio(atMany, atFew);
  return [
    {
      what: 'tracking to the bare page, requests a second',
      value: `${rate(atFew)} to ${rate(bare)}: ${toBare.toFixed(2)}`,
      aim: 'at least 0.8',
      reached: toBare >= 0.8,
    },
    {
      what: `tracking at ${many.jobs} to ${few.jobs} jobs, requests a second`,
      value: `${rate(atMany)} to ${rate(atFew)}: ${toFew.toFixed(2)}`,
      aim: 'at least 0.95',
      reached: toFew >= 0.95,
    },
  ];
}

async function times(few: Size, many: Size): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const page of PAGES) {
    const atFew: number[] = [];
    const atMany: number[] = [];
    for (let i = 0; i < TIMES; i += 1) {
      atFew.push(await askOnce(few.asked, page, i));
      atMany.push(await askOnce(many.asked, page, i));
    }
    const ms = (values: readonly number[]) =>
      `${atShare(values, 0.5).toFixed(0)} / ${atShare(values, 0.95).toFixed(0)} ms`;
    const grew = atShare(atMany, 0.95) / atShare(atFew, 0.95);
    figures.push({
      what: `${page.name}, p50 / p95 at ${few.jobs} and ${many.jobs} jobs`,
      value: `${ms(atFew)} and ${ms(atMany)}: p95 ${grew.toFixed(2)} x, p50 ${(median(atMany) / median(atFew)).toFixed(2)} x`,
      aim: 'p95 at most 1.3 x',
      reached: grew <= 1.3,
    });
  }
  return figures;
}

async function queries(many: Size, log: Log): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const page of PAGES) {
    const sent = await countInLog(log, () => askOnce(many.asked, page, 7));
    figures.push({
      what: `${page.name}, statements of a whole page`,
      value: String(sent),
      aim: `at most ${MOST_QUERIES}`,
      reached: sent <= MOST_QUERIES,
    });
  }
  return figures;
}

async function scripts({ asked }: Size): Promise<Figure[]> {
  const figures: Figure[] = [];
  const bare = await scriptBytes(asked.app.origin, '/bare');
  for (const page of PAGES.filter((each) => each !== barePage)) {
    const [job] = asked.samples;
    const path = job ? page.path(job) : '';
    if (path.startsWith('/workshop')) continue;
    const more = ((await scriptBytes(asked.app.origin, path)) - bare) / 1000;
    figures.push({
      what: `${page.name}, script beyond the bare page’s ${(bare / 1000).toFixed(1)} kB, compressed`,
      value: `${more.toFixed(1)} kB`,
      aim: 'at most 12 kB',
      reached: more <= 12,
    });
  }
  return figures;
}
