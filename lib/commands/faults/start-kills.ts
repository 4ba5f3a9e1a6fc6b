import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { request } from '@playwright/test';
import { bookByForms } from '@/e2e/world/book-by-forms';
import { instance } from '@/lib/commands/scale/instance';
import { embeddedUrl } from '@/lib/db/embedded-place';
import { asking, checkRows } from './check-run';
import { openPostOffice } from './post-office';
import { processesBelow, untilGone } from './processes';

const VICTIMS = ['launcher', 'app', 'both'] as const;

export type StartKills = { port: number; rounds: number; tell: (line: string) => void };

/**
 * Kills what `npm start` starts, the launcher with the embedded database in it, the pages, or both, while customers book
 * over HTTP. After each kill nothing of it may live on, a plain start has to bring everything back, and every booking whose
 * page a customer saw is there; at the end its mail has left. The pages must be built.
 */
export async function runStartKills({ port, rounds, tell }: StartKills): Promise<string[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-start-kills-'));
  const origin = `http://127.0.0.1:${port}`;
  const office = await openPostOffice();
  const app = instance('app', port, {
    DATABASE_URL: '',
    DATA_DIR: folder,
    APP_URL: origin,
    DEMO: 'on',
    JOBS: 'on',
    TRUSTED_PROXY: 'on',
    SMTP_URL: office.url,
    MAIL_FROM: 'workshop@example.org',
    LOG_LEVEL: 'error',
  });
  const problems: string[] = [];
  const links: string[] = [];
  let tries = 0;

  async function bookOne(): Promise<void> {
    tries += 1;
    // Callers of their own, so that none meets the limit of bookings an hour.
    const customer = await request.newContext({
      baseURL: origin,
      extraHTTPHeaders: { 'x-forwarded-for': `203.0.113.${tries % 250}` },
    });
    const who = { name: 'Ottilie Brandtmoor', phone: '07700 900613', street: '17 Halyard Rise' };
    const token = await bookByForms(customer, {
      ...who,
      email: `ottilie.${tries}@example.net`,
      serial: `G 209 ${100 + tries}`,
    }).catch(() => null);
    // What broke off was not acknowledged.
    if (token) links.push(`/job/${token}`);
    await customer.dispose();
  }

  async function checkAll(): Promise<void> {
    for (const link of links) {
      const { status } = await fetch(origin + link);
      if (status !== 200) problems.push(`an acknowledged booking answers ${status}`);
    }
    problems.push(...(await checkRows(embeddedUrl(folder), [])));
  }

  try {
    await app.start();
    await bookOne();
    for (let round = 0; round < rounds; round += 1) {
      const chosen = VICTIMS[round % VICTIMS.length] ?? 'both';
      const launcher = app.pid();
      const children = processesBelow(launcher);
      const booking = Promise.all([bookOne(), bookOne()]);
      await wait(300 + round * 700);
      const killed = { launcher: [launcher], app: children, both: [launcher, ...children] }[chosen];
      for (const pid of killed) process.kill(pid, 'SIGKILL');
      const left = await untilGone([launcher, ...children], 20_000);
      if (left.length > 0) problems.push(`after the kill of ${chosen} ${left.length} processes live on`);
      await booking;
      await app.start();
      await bookOne();
      await checkAll();
      tell(`${chosen} killed, started again: ${links.length} bookings there, ${problems.length} problems`);
    }
    problems.push(...(await mailLeft(embeddedUrl(folder), office.received)));
  } finally {
    await app.stop();
    await office.stop();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
  return problems;
}

/** Waits until every message about a booking of this run has left; a try that died is let time out. */
async function mailLeft(url: string, received: ReadonlyMap<string, number>): Promise<string[]> {
  const waiting = () =>
    asking(url, async (client) => {
      await client.query(`update pgboss.job set started_on = started_on - interval '2 minutes'
        where name = 'mail' and state = 'active' and started_on < now() - interval '5 seconds'`);
      await client.query(`update pgboss.job set start_after = now() where name = 'mail' and state = 'retry'`);
      const { rows } = await client.query<{ messageId: string }>(
        `select "messageId" from mail where template = 'job-booked' and "toAddress" like 'ottilie.%'`,
      );
      return rows.filter(({ messageId }) => !received.has(messageId));
    });
  for (const end = performance.now() + 120_000; performance.now() < end; await wait(500)) {
    if ((await waiting()).length === 0) return [];
  }
  return (await waiting()).map(({ messageId }) => `mail ${messageId} never left`);
}
