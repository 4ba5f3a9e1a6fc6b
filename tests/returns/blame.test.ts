import { beforeAll, expect, it } from 'vitest';
import { putBackPart } from '@/lib/bench/put-back-part';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { db } from '@/lib/db/client';
import { coverClock } from '@/lib/returns/cover-clock';
import { tallyBy } from '@/lib/returns/tallies';
import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';
import type { Cause } from '@/lib/warranty/rules/causes';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const BACK = new Date('2027-02-08T10:00:00Z');
const AGAIN = new Date('2027-03-08T10:00:00Z');
const LAST = new Date('2027-04-08T10:00:00Z');

const SERIAL = 'FR2-70001-A';

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let gasketLot = '';
let number = '';

/** A unit with a piece of a socket's lot and one of a gasket's, whose lines share their symptoms as on every first paper. */
beforeAll(async () => {
  world = await makeWorkshop(SENT);
  const lot = {
    code: 'GK-1',
    supplier: 'Nesbrook Parts',
    receivedOn: SENT,
    received: 5,
    inStock: 5,
    unitCostMinor: 40,
  };
  const gasket = await db.part.create({
    data: { code: 'GASKET', name: 'Gasket', lots: { create: lot } },
    include: { lots: true },
  });
  gasketLot = gasket.lots[0]?.id ?? '';
  ({ number } = await makeCertificate(world, SENT, SERIAL, 1, [gasketLot]));
}, 60_000);

async function claimRuled(cause: Cause, now: Date) {
  const claim = await makeClaim({ number, serial: SERIAL, now });
  await takeIn(claim.jobId, now);
  await moveTo(claim.jobId, 'assess', now);
  await ruleClaim(claim, { cause, now });
  await moveTo(claim.jobId, 'start-bench', now);
  return claim;
}

async function fitPart(jobId: string, lotId: string, now: Date) {
  const { version } = await jobNow(jobId);
  await usePartOnJob({ jobId, version, lotId, quantity: 1, actor: BENCH, now });
}

/** Returns held against the lot of the socket, that of the gasket, and the hand; the rows are what the records say. */
async function blamed(now: Date): Promise<number[]> {
  expect(await db.$queryRawUnsafe(UNITS_ASTRAY)).toEqual([]);
  expect(await db.$queryRawUnsafe(LINES_ASTRAY)).toEqual([]);
  const clock = coverClock(await readWorkshop(), now);
  const lots = await tallyBy('lot', clock);
  const [hand] = await tallyBy('technician', clock);
  const of = (lotId: string) => lots.find(({ id }) => id === lotId)?.returned ?? -1;
  return [of(world.lotId), of(gasketLot), hand?.returned ?? -1];
}

it('holds a claim against the part that was fitted again under it, and against all where none was', async () => {
  const { jobId } = await claimRuled('fitted-part', BACK);
  expect(await blamed(BACK)).toEqual([1, 1, 0]);
  await fitPart(jobId, world.lotId, BACK);
  expect(await blamed(BACK)).toEqual([1, 0, 0]);
  const use = await db.partUse.findFirstOrThrow({ where: { jobId } });
  const { version } = await jobNow(jobId);
  await putBackPart({ jobId, version, partUseId: use.id, actor: BENCH, now: BACK });
  expect(await blamed(BACK)).toEqual([1, 1, 0]);
  await fitPart(jobId, gasketLot, BACK);
  expect(await blamed(BACK)).toEqual([0, 1, 0]);
  await proveJob(jobId, world, BACK);
  await sendBack(jobId, BACK);
  expect(await blamed(BACK)).toEqual([0, 1, 0]);
});

it('holds no later claim against a lot or a hand, since the first return ended the watch', async () => {
  const { jobId } = await claimRuled('workmanship', AGAIN);
  expect(await blamed(AGAIN)).toEqual([0, 1, 0]);
  await proveJob(jobId, world, AGAIN);
  await sendBack(jobId, AGAIN);
  const third = await claimRuled('fitted-part', LAST);
  await fitPart(third.jobId, world.lotId, LAST);
  expect(await blamed(LAST)).toEqual([0, 1, 0]);
});
