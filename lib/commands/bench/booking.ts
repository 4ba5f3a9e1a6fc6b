/** Books jobs as customers do, and writes the same rows again in bare SQL on a twin of the database, in turn. */
import { cpSync } from 'node:fs';
import path from 'node:path';
import pg from 'pg';
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { type Embedded, startEmbedded } from '@/lib/db/embedded';
import { migrate } from '@/lib/db/migrate';
import { databaseUrl, onServer } from '@/lib/db/server';
import { book } from '@/lib/jobs/book';
import { prepareQueue } from '@/lib/mail/boss';
import { type Figure, median, medianRatio } from './figures';
import { filledDrafts } from './filled-drafts';
import { openWorkshop } from './open-workshop';
import { isWrite, recordingStatements, type Statement } from './recorded-statements';
import { answer } from './run-step';

const TIMES = 100;
const WARM = 10;
const MOST = 2;

const now = new Date();
let embedded = config.isEmbedded ? await startEmbedded(config.dataDir) : undefined;
await migrate(config.databaseUrl);
await prepareQueue();
await openWorkshop(now);
const { tokens, shownMinor } = await filledDrafts(TIMES + WARM, now);
await disconnect();
const twin = await makeTwin();
const bare = new pg.Client({ connectionString: twin.url, options: '-c TimeZone=UTC' });
await bare.connect();

const booked: number[] = [];
const written: number[] = [];
let counts = { sent: 0, writes: 0 };
for (const draftToken of tokens) {
  const from = performance.now();
  const { sent } = await recordingStatements(() => book({ draftToken, shownMinor, now, isStartAsked: true }));
  booked.push(performance.now() - from);
  const writes = sent.filter(isWrite);
  written.push(await writeAgain(writes));
  counts = { sent: sent.length, writes: writes.length };
}
await bare.end();
await disconnect();
await twin.stop();
await embedded?.stop();

const [ours, theirs] = [booked.slice(WARM), written.slice(WARM)];
const ratio = medianRatio(ours, theirs);
const figures: Figure[] = [
  {
    what: 'booking to its own writes in bare SQL',
    value: `${median(ours).toFixed(1)} ms for ${counts.sent} statements to ${median(theirs).toFixed(1)} ms for ${counts.writes}, ${ratio.toFixed(2)} x`,
    aim: `at most ${MOST.toFixed(1)} x`,
    reached: ratio <= MOST,
  },
];
answer(figures);

async function writeAgain(writes: readonly Statement[]): Promise<number> {
  const from = performance.now();
  await bare.query('BEGIN');
  for (const { text, values } of writes) await bare.query(text, values);
  await bare.query('COMMIT');
  return performance.now() - from;
}

/** The database as it is before the bookings: there the very same rows can be written once more. */
async function makeTwin(): Promise<Embedded> {
  if (embedded) {
    // A folder may be copied only while nobody has it open.
    await embedded.stop();
    const folder = `${config.dataDir}-twin`;
    cpSync(path.join(config.dataDir, 'database'), path.join(folder, 'database'), { recursive: true });
    embedded = await startEmbedded(config.dataDir);
    return startEmbedded(folder);
  }
  const name = new URL(config.databaseUrl).pathname.slice(1);
  await onServer(databaseUrl(config.databaseUrl, 'postgres'), (client) =>
    client.query(`CREATE DATABASE ${name}_twin TEMPLATE ${name}`),
  );
  return { url: databaseUrl(config.databaseUrl, `${name}_twin`), stop: async () => {} };
}
