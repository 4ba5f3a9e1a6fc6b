import { randomInt } from 'node:crypto';
import type { BenchApp } from './bench-app';
import type { Most } from './figures';
import { type JobSample, partOfSerial } from './samples';

/** An app with what its pages are asked for; `cookie` is the owner's. */
export type Asked = { jobs: number; app: BenchApp; samples: readonly JobSample[]; cookie: string };

export type Page = {
  name: string;
  path: (job: JobSample) => string;
  /** how often it is timed; 60 unless told */
  runs?: number;
  most?: Most;
};

const flat = { growth: 1.3, statements: 6 };

export const barePage: Page = { name: 'the bare page', path: () => '/bare' };
export const tracking: Page = { name: 'tracking', path: (job) => `/track/${job.number}`, most: flat };

export const CUSTOMER_PAGES: readonly Page[] = [
  tracking,
  { name: 'job by its private link', path: (job) => `/job/${job.token}`, most: flat },
  { name: 'certificate', path: (job) => `/certificate/${job.certificate}`, most: flat },
  { name: 'prices', path: () => '/prices' },
  { name: 'prices, searched with a slip', path: () => '/prices?q=fadre+replaced' },
];

export const STAFF_PAGES: readonly Page[] = [
  { name: 'Today', path: () => '/workshop', most: flat },
  { name: 'search by part of a serial', path: (job) => `/workshop/jobs?q=${partOfSerial(job)}`, most: flat },
  { name: 'list of jobs', path: () => '/workshop/jobs' },
  { name: 'job sheet', path: (job) => `/workshop/jobs/${job.number}`, most: { growth: 1.3 } },
  { name: 'returns', path: () => '/workshop/returns', runs: 15, most: { ms: 400 } },
];

// Of the benchmarking range (RFC 2544), so that no two requests count as one caller's.
export const someAddress = () => `198.${18 + randomInt(2)}.${randomInt(256)}.${1 + randomInt(254)}`;

export function sampleAt(samples: readonly JobSample[], i: number): JobSample {
  const job = samples[i % samples.length];
  if (!job) throw new Error('there is no job to ask for');
  return job;
}

/** Asks for a page once; refuses an answer that is no page. Milliseconds until all of it was there. */
export async function askOnce(asked: Asked, page: Page, i: number): Promise<{ took: number; html: string }> {
  const path = page.path(sampleAt(asked.samples, i));
  const from = performance.now();
  const answer = await fetch(asked.app.origin + path, {
    redirect: 'manual',
    headers: { 'x-forwarded-for': someAddress(), cookie: path.startsWith('/workshop') ? asked.cookie : '' },
  });
  const html = await answer.text();
  const took = performance.now() - from;
  if (answer.status !== 200 || !html.includes('</html>'))
    throw new Error(`${page.name} answered ${answer.status}`);
  return { took, html };
}

/** Refuses to compare with a page that was made beforehand: one that is made on request carries another nonce each time. */
export async function needDynamic(asked: Asked, page: Page): Promise<void> {
  const nonces = [];
  for (let i = 0; i < 2; i += 1)
    nonces.push(/nonce="([^"]+)"/.exec((await askOnce(asked, page, i)).html)?.[1]);
  if (!nonces[0] || nonces[0] === nonces[1]) throw new Error(`${page.name} is not made on request`);
}
