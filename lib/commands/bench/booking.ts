/** Books jobs as customers do and writes the same rows again in bare SQL, in turn; prints the figures as JSON. */
import pg from 'pg';
import { config } from '@/lib/config';
import { db, disconnect } from '@/lib/db/client';
import { startEmbedded } from '@/lib/db/embedded';
import { migrate } from '@/lib/db/migrate';
import { databaseUrl, onServer } from '@/lib/db/server';
import { book } from '@/lib/jobs/book';
import { saveStep, startDraft } from '@/lib/jobs/draft';
import { prepareQueue } from '@/lib/mail/boss';
import { type Figure, median } from './figures';
import { openWorkshop } from './open-workshop';
import { recordingWrites } from './recorded-writes';

const TIMES = 60;
const WARM = 5;

const now = new Date();
const embedded = config.isEmbedded ? await startEmbedded(config.dataDir) : undefined;
await migrate(config.databaseUrl);
await prepareQueue();
await openWorkshop(now);
const repair = await db.repair.findFirstOrThrow({
  where: { isListed: true, model: { battery: 'none' } },
  select: { id: true },
});
const drafts: string[] = [];
for (let i = 0; i < TIMES + WARM; i += 1) drafts.push(await filledDraft(repair.id));
await disconnect();

// A twin of the database as it is before the bookings: there the very same rows can be written once more.
const twin = config.isEmbedded ? undefined : 'booking_twin';
if (twin) {
  const name = new URL(config.databaseUrl).pathname.slice(1);
  await onServer(databaseUrl(config.databaseUrl, 'postgres'), (client) =>
    client.query(`CREATE DATABASE ${twin} TEMPLATE ${name}`),
  );
}
const bare = twin
  ? new pg.Client({ connectionString: databaseUrl(config.databaseUrl, twin), options: '-c TimeZone=UTC' })
  : undefined;
await bare?.connect();

const ours: number[] = [];
const raw: number[] = [];
let writes = 0;
for (const draftToken of drafts) {
  const from = performance.now();
  const { writes: written } = await recordingWrites(() => book({ draftToken, now, isStartAsked: true }));
  ours.push(performance.now() - from);
  writes = written.length;
  if (!bare) continue;
  const again = performance.now();
  await bare.query('BEGIN');
  for (const { text, values } of written) await bare.query(text, values);
  await bare.query('COMMIT');
  raw.push(performance.now() - again);
}
await bare?.end();
await disconnect();
await embedded?.stop();

const took = median(ours.slice(WARM));
const tookRaw = median(raw.slice(WARM));
const ratio = took / tookRaw;
const figures: Figure[] = bare
  ? [
      {
        what: `booking to its ${writes} writes in bare SQL, medians of ${TIMES}`,
        value: `${took.toFixed(1)} ms to ${tookRaw.toFixed(1)} ms: ${ratio.toFixed(2)} x`,
        aim: 'at most 2.0 x',
        reached: ratio <= 2,
      },
    ]
  : [
      {
        what: `booking, median of ${TIMES} (bare SQL has no second database to write to here)`,
        value: `${took.toFixed(1)} ms`,
      },
    ];
console.log(JSON.stringify(figures));

/** All that a customer fills in before the last press. */
async function filledDraft(repairId: string): Promise<string> {
  const token = await startDraft({ repairId, now });
  const save = (
    step: Parameters<typeof saveStep>[0]['step'],
    answers: Parameters<typeof saveStep>[0]['answers'],
  ) => saveStep({ token, step, answers, now });
  await save('unit', { serial: 'MFT-10480-K' });
  await save('problem', { problem: 'Does not charge any more', history: ['dropped'] });
  await save('parcel', { accessories: ['Power supply'], otherAccessory: '', battery: 'none', data: 'saved' });
  await save('address', {
    name: 'Maren Holt',
    email: 'maren.holt@example.org',
    phone: '07700 900321',
    address1: '12 Chandler Row',
    address2: '',
    postcode: 'QM2 7HB',
    town: 'Sandmouth',
    country: 'GB',
  });
  return token;
}
