import { randomInt } from 'node:crypto';
import autocannon from 'autocannon';
import type { BenchApp } from './bench-app';
import type { JobSample } from './samples';

/** An app with what its pages are asked for; `cookie` is the owner's. */
export type Asked = { app: BenchApp; samples: readonly JobSample[]; cookie: string };

export type Page = { name: string; path: (job: JobSample) => string };

export const tracking: Page = { name: 'tracking', path: (job) => `/track/${job.number}` };
export const barePage: Page = { name: 'bare page', path: () => '/bare' };

export const PAGES: readonly Page[] = [
  barePage,
  tracking,
  { name: 'job by its private link', path: (job) => `/job/${job.token}` },
  { name: 'certificate', path: (job) => `/certificate/${job.certificate}` },
  { name: 'prices', path: () => '/prices' },
  { name: 'Today', path: () => '/workshop' },
  { name: 'search by part of a serial', path: (job) => `/workshop/jobs?q=${job.serialKey.slice(2, 9)}` },
  { name: 'job sheet', path: (job) => `/workshop/jobs/${job.number}` },
  { name: 'returns', path: () => '/workshop/returns' },
];

// Of the benchmarking range (RFC 2544), so that no two requests count as one caller's.
const someAddress = () => `198.${18 + randomInt(2)}.${randomInt(256)}.${1 + randomInt(254)}`;

const sampleAt = (samples: readonly JobSample[], i: number): JobSample => {
  const job = samples[i % samples.length];
  if (!job) throw new Error('there is no job to ask for');
  return job;
};

/** Asks for a page once and returns the milliseconds until all of it was there; refuses an answer that is no page. */
export async function askOnce(asked: Asked, page: Page, i: number): Promise<number> {
  const path = page.path(sampleAt(asked.samples, i));
  const from = performance.now();
  const answer = await fetch(asked.app.origin + path, {
    redirect: 'manual',
    headers: { 'x-forwarded-for': someAddress(), cookie: path.startsWith('/workshop') ? asked.cookie : '' },
  });
  const text = await answer.text();
  const took = performance.now() - from;
  if (answer.status !== 200 || !text.includes('</html>'))
    throw new Error(`${page.name} answered ${answer.status}`);
  return took;
}

/** Requests a second of a page, eight at a time. */
export async function throughput(asked: Asked, page: Page, seconds: number): Promise<number> {
  let i = 0;
  const result = await autocannon({
    url: asked.app.origin,
    connections: 8,
    duration: seconds,
    requests: [
      {
        method: 'GET',
        setupRequest: (request) => ({
          ...request,
          path: page.path(sampleAt(asked.samples, i++)),
          headers: { ...request.headers, 'x-forwarded-for': someAddress() },
        }),
      },
    ],
  });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${page.name}: ${result.non2xx + result.errors} of ${result.requests.total} failed`);
  return result.requests.total / result.duration;
}
