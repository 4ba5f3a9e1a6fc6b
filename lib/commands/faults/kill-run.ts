import { randomUUID } from 'node:crypto';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { z } from 'zod';
import { App } from './app';
import { asking, checkEnd, checkRows } from './check-run';
import { type Database, type Kind, openDatabase } from './database';
import { fillWorld } from './fill-world';
import { type Acknowledged, Journal } from './journal';
import { openPostOffice, type PostOffice } from './post-office';

export type KillRun = {
  kind: Kind;
  rounds: number;
  jobs: number;
  seed: number;
  /** jobs under way at the same time */
  hands?: number;
  /** a migrated embedded database to begin with, which saves the seconds of migrating */
  template?: string;
  tell?: (line: string) => void;
};

export type KillReport = {
  problems: string[];
  facts: Record<string, number>;
};

const VICTIMS = ['app', 'database', 'both'] as const;
/** Acknowledged steps of a job from its booking to its dispatch, its invoice's document included. */
const STEPS = 11;
const secret = 'only for runs of faults, only for runs of faults';

/**
 * Takes jobs from booking to dispatch while the app, its database or both are killed at moments of chance, and checks
 * after each kill and at the end that what was acknowledged is there, whole, and once.
 */
export async function runKills(o: KillRun): Promise<KillReport> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-faults-'));
  if (o.template) cpSync(o.template, path.join(folder, 'database'), { recursive: true });
  const office = await openPostOffice();
  const database = await openDatabase(o.kind, folder);
  const environment = {
    DATABASE_URL: database.url,
    DATA_DIR: folder,
    AUTH_SECRET: secret,
    SMTP_URL: office.url,
    MAIL_FROM: 'workshop@example.org',
    LOG_LEVEL: 'error',
    DEMO: 'on',
    JOBS: 'off',
  };
  const journal = new Journal(path.join(folder, 'journal'));
  try {
    await fillWorld(environment);
    const run = new Run(o, { database, office, journal, environment });
    const report = await run.whole();
    const end = await checkEnd({
      url: database.url,
      files: path.join(folder, 'files'),
      acknowledged: journal.read(),
      received: office.received,
    });
    return {
      problems: [...report.problems, ...end.problems],
      facts: { ...report.facts, ...end.facts },
    };
  } finally {
    journal.close();
    await database.stop();
    await office.stop();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

type World = {
  database: Database;
  office: PostOffice;
  journal: Journal;
  environment: Record<string, string>;
};

const booked = z.looseObject({ step: z.string(), jobId: z.string() });
const acknowledged = z.custom<Acknowledged>(
  (value) => booked.partial({ jobId: true }).safeParse(value).success,
);

class Run {
  private app: App | undefined;
  /** loaded while the other works, to take its place */
  private spare: App | undefined;
  private begun = 0;
  private readonly problems: string[] = [];
  private readonly facts = { kills: 0, killsWhileOpening: 0, stepsBrokenOff: 0, acknowledged: 0 };
  /** resolves while app and database both work */
  private isWhole: Promise<void> = Promise.resolve();
  private readonly chance: () => number;

  constructor(
    private readonly o: KillRun,
    private readonly world: World,
  ) {
    this.chance = chanceOf(o.seed);
  }

  async whole(): Promise<KillReport> {
    try {
      return await this.begin();
    } finally {
      await Promise.all([this.app?.kill(), this.spare?.kill()]);
    }
  }

  private async startApp(): Promise<void> {
    const app = this.spare ?? App.load(this.world.environment);
    this.spare = undefined;
    this.app = app;
    await app.begin();
    if (this.facts.kills < this.o.rounds) this.spare = App.load(this.world.environment);
  }

  private async begin(): Promise<KillReport> {
    await this.startApp();
    const hands = Array.from({ length: this.o.hands ?? 6 }, () => this.hand());
    let isDone = false;
    const work = Promise.all(hands).finally(() => {
      isDone = true;
    });
    await Promise.all([work, this.killAll(() => isDone)]);
    this.tell('all jobs are through; waiting for the mail');
    await this.mailLeaves();
    await this.app?.stop();
    this.problems.push(...(await checkRows(this.world.database.url, this.world.journal.read())));
    return {
      problems: this.problems,
      facts: { ...this.facts, acknowledged: this.world.journal.lines.length },
    };
  }

  private tell(line: string): void {
    this.o.tell?.(line);
  }

  private async hand(): Promise<void> {
    for (let n = this.begun++; n < this.o.jobs; n = this.begun++) await this.job(n);
  }

  /** One job from its draft to its dispatch. A step that broke off is asked for again, as a person would. */
  private async job(n: number): Promise<void> {
    const token = z.string().parse(await this.ask({ step: 'draft', n }));
    const job = booked.parse(await this.take({ step: 'book', token }));
    const payment = randomUUID();
    for (;;) {
      const done = await this.take({ step: 'onward', jobId: job.jobId, payment });
      if (!done) return;
      if (done.invoice) await this.take({ step: 'paper', number: done.invoice });
    }
  }

  /** Asks for a step and keeps its acknowledgement before anything else happens. */
  private async take(step: Record<string, unknown>): Promise<Acknowledged | null> {
    const value = await this.ask(step);
    if (value === null) return null;
    const line = acknowledged.parse(value);
    this.world.journal.write(line);
    return line;
  }

  private async ask(step: Record<string, unknown>): Promise<unknown> {
    let trouble = '';
    // A pool may hold connections that died with the database; each fails once.
    for (let attempt = 0; attempt < 40; attempt += 1) {
      await this.isWhole;
      try {
        return await this.app?.ask(step);
      } catch (error) {
        trouble = error instanceof Error ? error.message : String(error);
        this.facts.stepsBrokenOff += 1;
        await wait(100);
      }
    }
    throw new Error(`${String(step['step'])} did not succeed after 40 tries: ${trouble}`);
  }

  private async killAll(isDone: () => boolean): Promise<void> {
    const { rounds, jobs } = this.o;
    for (let round = 0; round < rounds; round += 1) {
      const share = (round + 0.3 + this.chance() * 0.4) / rounds;
      const after = Math.floor(jobs * STEPS * share);
      while (this.world.journal.lines.length < after && !isDone()) await wait(5);
      await wait(Math.floor(this.chance() * 40));
      await this.killOnce(round);
    }
  }

  private async killOnce(round: number): Promise<void> {
    const { database, journal } = this.world;
    const chosen = VICTIMS[round % VICTIMS.length] ?? 'both';
    let mend = () => {};
    this.isWhole = new Promise((resolve) => {
      mend = resolve;
    });
    const before = journal.lines.length;
    // The embedded database lives in the launcher, and the app ends itself when that is gone (lib/serving/stop.ts).
    const takesApp = chosen !== 'database' || database.kind === 'embedded';
    await Promise.all([
      ...(chosen === 'app' ? [] : [database.kill()]),
      ...(takesApp ? [this.app?.kill()] : []),
    ]);
    this.facts.kills += 1;
    if (chosen !== 'app') await this.openAgain();
    const problems = await checkRows(database.url, journal.read());
    this.problems.push(...problems.map((problem) => `after kill ${round + 1} (${chosen}): ${problem}`));
    if (takesApp) await this.startApp();
    this.tell(
      `kill ${round + 1}: ${chosen}, after ${before} acknowledged steps; ${problems.length} problems`,
    );
    mend();
  }

  /** One opening in three is killed too, while the database reads its log again. */
  private async openAgain(): Promise<void> {
    const { database } = this.world;
    if (database.kind === 'embedded' && this.chance() < 1 / 3) {
      const opening = database.open().catch(() => {});
      await wait(200 + Math.floor(this.chance() * 1200));
      await database.kill();
      await opening;
      this.facts.killsWhileOpening += 1;
    }
    await database.open();
  }

  /** Waits until nothing is on its way. The two minutes of a try that died, and the waits between tries, are let pass. */
  private async mailLeaves(): Promise<void> {
    const end = performance.now() + 60_000 + this.o.jobs * 2000;
    while (performance.now() < end) {
      const open = await asking(this.world.database.url, async (client) => {
        await client.query(`update pgboss.job set started_on = started_on - interval '2 minutes'
          where name = 'mail' and state = 'active' and started_on < now() - interval '5 seconds'`);
        await client.query(
          `update pgboss.job set start_after = now() where name = 'mail' and state = 'retry' and start_after > now()`,
        );
        const { rows } = await client.query<{ many: number }>(
          `select count(*)::int as many from mail where state in ('queued', 'sending')`,
        );
        return rows[0]?.many ?? 0;
      });
      if (open === 0) return;
      await wait(500);
    }
  }
}

/** Numbers from 0 to 1 that are the same for the same seed (Park and Miller 1988, minimal standard generator). */
function chanceOf(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
