import { beforeEach, describe, expect, test } from 'vitest';
import { leaveBeside } from '@/lib/bench/leave-beside';
import { proveBeside } from '@/lib/bench/prove-beside';
import { recordCheck } from '@/lib/bench/record-check';
import { checksOf, plannedMinutes, provedSheets } from '@/lib/bench/rules/job-sheets';
import { earlierEntries } from '@/lib/bench/sheet-records';
import { db } from '@/lib/db/client';
import { readFile } from '@/lib/files/store';
import { factsOf } from '@/lib/jobs/facts';
import { moveJob } from '@/lib/jobs/move';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { recordWork } from '@/lib/jobs/record-work';
import { eventLine } from '@/lib/jobs/rules/events';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { owedIfWithdrawn } from '@/lib/quotes/stored-withdrawal';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { useDatabase } from '@/tests/database';
import { lettersOf, textOf } from '@/tests/documents/read-pdf';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { askPrice, PAD } from '@/tests/makers/offer';
import { makeFaderRepair, makeSisterModel } from '@/tests/makers/second-repair';
import { FADER, makeBothDone, SOCKET, sendBothBack } from '@/tests/makers/two-repairs';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2026-11-26T09:00:00Z');

useDatabase();
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let fader: Awaited<ReturnType<typeof makeFaderRepair>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(now);
  return { world, fader: await makeFaderRepair(world, now) };
});
beforeEach(async () => {
  ({ world, fader } = await begin());
}, 30_000);

async function frame(jobId: string) {
  return { jobId, version: (await jobNow(jobId)).version, actor: BENCH, now: LATER };
}

async function agreeTo(
  jobId: string,
  lines: (typeof PAD)[],
  decision: 'accepted' | 'declined' = 'accepted',
  at = LATER,
) {
  const revision = await askPrice(jobId, now, { lines });
  await decideOffer({ jobId, revision, decision, actor: { kind: 'customer' }, now: at });
}

const labels = async (jobId: string) => checksOf(await jobNow(jobId)).map(({ label }) => label);
const repairs = async (jobId: string) => provedSheets(await jobNow(jobId)).map(({ repair }) => repair);

async function tick(jobId: string, checkId: string) {
  return recordCheck({ jobId, checkId, given: { tick: true }, note: '', actor: BENCH, now: LATER });
}

/** The customer may withdraw, and asked for work to start before that right ends. */
async function wishStart(jobId: string) {
  await db.job.update({ where: { id: jobId }, data: { startRequestedAt: now, withdrawUntil: LATER } });
}

const bothProved = () => makeBothDone(world, { now, later: LATER });
const sentBack = (jobId: string) => sendBothBack(jobId, fader, { now, later: LATER });

test('a yes to two repairs has the unit pass the sheets of both before it is ready', async () => {
  const jobId = await bothProved();
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced', 'Fader replaced']);
  const { events } = await jobNow(jobId);
  const [added] = events.filter(({ kind }) => kind === 'sheet-beside-added');
  expect(added?.actorKind).toBe('customer');
  expect(eventLine('sheet-beside-added', added?.data)).toBe(
    'Proved on version 1 of the check sheet of “Fader replaced” as well',
  );
  const ready = { ...(await frame(jobId)), move: 'pass-checks' as const, note: '' };
  await expect(moveJob(ready)).rejects.toMatchObject({ code: 'invalid' });
  const number = await sentBack(jobId);
  const { fileKey } = await db.certificate.findFirstOrThrow({ where: { number } });
  const paper = lettersOf(textOf(await readFile(fileKey)));
  expect(paper).toContain(
    lettersOf('Bench checks: USB-C socket replaced, version 1; Fader replaced, version 1'),
  );
  expect(paper).toContain(lettersOf('Fader runs silently'));
});

test('work in words of its own has no sheet, and a no adds none', async () => {
  const own = await assessedJob(world, now);
  await agreeTo(own, [SOCKET, PAD]);
  expect(await repairs(own)).toEqual(['USB-C socket replaced']);
  const refused = await assessedJob(world, now);
  await agreeTo(refused, [SOCKET, FADER], 'declined');
  expect(await repairs(refused)).toEqual(['USB-C socket replaced']);
});

test('a later price that leaves the other repair out leaves its checks out as well', async () => {
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, [SOCKET, FADER]);
  await agreeTo(jobId, [SOCKET]);
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced']);
});

test('the line of a repair that another was put in the place of is not proved beside it', async () => {
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, [SOCKET]);
  await putUnderRepair({ ...(await frame(jobId)), repairId: fader.repairId, now: new Date(+LATER + 1) });
  await agreeTo(jobId, [{ ...PAD, description: 'Case polished' }], 'declined');
  expect(await repairs(jobId)).toEqual(['Fader replaced']);
});

test('the bench adds a repair of its unit, once, and leaves it out again', async () => {
  const jobId = await assessedJob(world, now);
  await proveBeside({ ...(await frame(jobId)), repairId: fader.repairId });
  expect(await labels(jobId)).toContain('Fader runs silently');
  for (const repairId of [fader.repairId, world.repairId])
    await expect(proveBeside({ ...(await frame(jobId)), repairId })).rejects.toMatchObject({
      code: 'conflict',
      field: 'beside',
    });
  const [beside] = (await jobNow(jobId)).besides;
  const call = { ...(await frame(jobId)), besideId: beside?.id ?? '' };
  await leaveBeside(call);
  await leaveBeside(call);
  expect(await labels(jobId)).not.toContain('Fader runs silently');
  const { events } = await jobNow(jobId);
  expect(events.filter(({ kind }) => kind === 'sheet-beside-removed')).toHaveLength(1);
});

test('what was entered for a repair that is left out stays with the job and counts no more', async () => {
  const jobId = await assessedJob(world, now);
  await takeMove(jobId, 'start-bench', now);
  await recordWork({ jobId, text: 'Fader replaced', minutes: 30, actor: BENCH, now });
  await proveBeside({ ...(await frame(jobId)), repairId: fader.repairId });
  await moveTo(jobId, 'prove', LATER);
  await tick(jobId, fader.checkId);
  const [beside] = (await jobNow(jobId)).besides;
  await leaveBeside({ ...(await frame(jobId)), besideId: beside?.id ?? '' });
  const job = await jobNow(jobId);
  expect(await earlierEntries(job)).toMatchObject([{ check: { label: 'Fader runs silently' } }]);
  expect(factsOf(job)).toMatchObject({ checksMissing: 2 });
  await expect(tick(jobId, fader.checkId)).rejects.toMatchObject({ code: 'not-found' });
});

test('a price of the customer’s does not take away what the bench added', async () => {
  const jobId = await assessedJob(world, now);
  await proveBeside({ ...(await frame(jobId)), repairId: fader.repairId });
  await agreeTo(jobId, [SOCKET]);
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced', 'Fader replaced']);
});

test('a job put under a repair that is proved beside it asks for that sheet once', async () => {
  const jobId = await assessedJob(world, now);
  await proveBeside({ ...(await frame(jobId)), repairId: fader.repairId });
  await putUnderRepair({ ...(await frame(jobId)), repairId: fader.repairId });
  expect(await repairs(jobId)).toEqual(['Fader replaced']);
});

/** A third repair of the model, with a sheet of one check. */
async function makeRepair(name: string) {
  const { id, sheets, ...like } = await db.repair.findUniqueOrThrow({
    where: { id: fader.repairId },
    include: { sheets: true },
  });
  const made = await db.repair.create({
    data: {
      ...like,
      slug: 'third',
      name,
      sheets: {
        create: {
          version: 1,
          createdAt: now,
          checks: { create: [{ position: 0, kind: 'tick', label: `${name}: works` }] },
        },
      },
    },
  });
  return made.id;
}

/** Agreed under the socket and put under the fader, which that price names as well; gives the job. */
async function swapped(lines: (typeof PAD)[]) {
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, lines);
  await putUnderRepair({ ...(await frame(jobId)), repairId: fader.repairId, now: new Date(+LATER + 1) });
  return jobId;
}

test('a job put under a repair that its price names as well keeps the one before beside it: both are paid for', async () => {
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, [SOCKET, FADER]);
  await recordWork({ jobId, text: 'Socket and fader replaced', minutes: 80, actor: BENCH, now: LATER });
  await moveTo(jobId, 'prove', LATER);
  await tick(jobId, world.tilt);
  await tick(jobId, fader.checkId);
  await db.checkSheet.create({
    data: {
      repairId: world.repairId,
      version: 2,
      createdAt: LATER,
      checks: { create: [{ position: 1, kind: 'tick', label: 'Another check' }] },
    },
  });
  await wishStart(jobId);
  const owed = owedIfWithdrawn(await jobNow(jobId));
  expect(owed).toBe(Math.round((13_200 * 80) / 150));
  await putUnderRepair({ ...(await frame(jobId)), repairId: fader.repairId, now: new Date(+LATER + 1) });
  const job = await jobNow(jobId);
  expect(await repairs(jobId)).toEqual(['Fader replaced', 'USB-C socket replaced']);
  expect(job.besides).toMatchObject([{ isByPrice: true, sheet: { version: 1 } }]);
  expect(factsOf(job)).toMatchObject({ checksMissing: 1, checksFailed: 0 });
  expect(plannedMinutes(job)).toBe(90 + 60);
  expect(owedIfWithdrawn(job)).toBe(owed);
  expect(job.events.slice(-2).map(({ kind }) => kind)).toEqual(['repair-changed', 'sheet-beside-added']);
});

test('and has it covered under its own line and its own symptoms', async () => {
  const jobId = await swapped([{ ...SOCKET, description: 'Socket and pads rebuilt' }, FADER]);
  expect(await repairs(jobId)).toEqual(['Fader replaced', 'USB-C socket replaced']);
  await recordWork({ jobId, text: 'Socket and fader replaced', minutes: 80, actor: BENCH, now: LATER });
  await moveTo(jobId, 'prove', LATER);
  await tick(jobId, world.tilt);
  const voltage = {
    jobId,
    checkId: world.voltage,
    given: { reading: 5 },
    note: '',
    actor: BENCH,
    now: LATER,
  };
  await recordCheck(voltage);
  const number = await sentBack(jobId);
  const { lines } = await db.certificate.findFirstOrThrow({
    where: { number },
    include: { lines: { orderBy: { position: 'asc' } } },
  });
  expect(lines.map(({ description, symptoms }) => [description, symptoms])).toEqual([
    ['Socket and pads rebuilt', ['Does not charge', 'Cable falls out']],
    ['Fader replaced', ['A fader scratches']],
  ]);
});

test('until the customer agrees to a price without it, or the bench leaves it out', async () => {
  const priced = await swapped([SOCKET, FADER]);
  await agreeTo(priced, [{ ...FADER, amount: 5000 }], 'accepted', new Date(+LATER + 2));
  expect(await repairs(priced)).toEqual(['Fader replaced']);
  const left = await swapped([SOCKET, FADER]);
  const [beside] = (await jobNow(left)).besides;
  await leaveBeside({ ...(await frame(left)), besideId: beside?.id ?? '' });
  expect(await repairs(left)).toEqual(['Fader replaced']);
});

test('there and back again it is as it was', async () => {
  const jobId = await swapped([SOCKET, FADER]);
  await putUnderRepair({ ...(await frame(jobId)), repairId: world.repairId, now: new Date(+LATER + 2) });
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced', 'Fader replaced']);
});

test('what the bench left out of a price does not come back with the next repair, and does once the job was under it again', async () => {
  const board = await makeRepair('Board replaced');
  const jobId = await swapped([SOCKET, FADER]);
  const call = async (ms: number) => ({ ...(await frame(jobId)), now: new Date(+LATER + ms) });
  const [beside] = (await jobNow(jobId)).besides;
  await leaveBeside({ ...(await call(2)), besideId: beside?.id ?? '' });
  await putUnderRepair({ ...(await call(3)), repairId: board });
  expect(await repairs(jobId)).toEqual(['Board replaced']);
  await putUnderRepair({ ...(await call(4)), repairId: fader.repairId });
  expect(await repairs(jobId)).toEqual(['Fader replaced']);
  await putUnderRepair({ ...(await call(5)), repairId: world.repairId });
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced', 'Fader replaced']);
  await putUnderRepair({ ...(await call(6)), repairId: fader.repairId });
  expect(await repairs(jobId)).toEqual(['Fader replaced', 'USB-C socket replaced']);
});

test('of two that a price names both are kept again, though the job was under a third between them', async () => {
  const board = await makeRepair('Board replaced');
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, [SOCKET, FADER]);
  await putUnderRepair({ ...(await frame(jobId)), repairId: board, now: new Date(+LATER + 1) });
  expect(await repairs(jobId)).toEqual(['Board replaced', 'Fader replaced']);
  await putUnderRepair({ ...(await frame(jobId)), repairId: fader.repairId, now: new Date(+LATER + 2) });
  expect(await repairs(jobId)).toEqual(['Fader replaced', 'USB-C socket replaced']);
});

test('another unit’s repair is not proved beside it, nor from an old page', async () => {
  const jobId = await assessedJob(world, now);
  const other = '0199b3a2-0000-7000-8000-0000000000ff';
  await expect(proveBeside({ ...(await frame(jobId)), repairId: other })).rejects.toMatchObject({
    code: 'invalid',
    field: 'beside',
  });
  const old = await frame(jobId);
  await takeMove(jobId, 'start-bench', now);
  await expect(proveBeside({ ...old, repairId: fader.repairId })).rejects.toMatchObject({ code: 'conflict' });
  expect(await db.sheetBeside.count()).toBe(0);
});

test('paid work beside a covered claim is proved too, until a ruling makes the claim’s repair all there is', async () => {
  const { number } = await makeCertificate(world, new Date('2026-11-20T09:00:00Z'));
  const claim = await makeClaim({ number, now });
  const { jobId } = claim;
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await ruleClaim(claim, { cause: 'separate-fault', now });
  const revision = await askPrice(jobId, now, { lines: [FADER] });
  await decideOffer({
    jobId,
    revision,
    decision: 'accepted',
    isTermsAccepted: true,
    actor: { kind: 'customer' },
    now,
  });
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced', 'Fader replaced']);
  await contestRuling({ jobId, text: 'It was the socket.', now });
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  expect(await repairs(jobId)).toEqual(['USB-C socket replaced']);
});

test.each([
  ['A fader scratches', ['USB-C socket replaced', 'Fader replaced']],
  ['other', ['USB-C socket replaced', 'Fader replaced']],
  ['Does not charge', ['USB-C socket replaced']],
])('a covered claim for “%s” is proved on the sheets of what failed again', async (symptom, names) => {
  const number = await sentBack(await bothProved());
  const claimed = new Date('2026-12-10T09:00:00Z');
  const claim = await makeClaim({ number, symptom, now: claimed });
  await takeIn(claim.jobId, claimed);
  await moveTo(claim.jobId, 'assess', claimed);
  await ruleClaim(claim, { cause: 'workmanship', now: claimed });
  expect(await repairs(claim.jobId)).toEqual(names);
});

test('who withdraws owes a share of all that was planned, not of one repair’s minutes', async () => {
  const jobId = await assessedJob(world, now);
  await agreeTo(jobId, [SOCKET, FADER]);
  await recordWork({ jobId, text: 'Socket off', minutes: 60, actor: BENCH, now: LATER });
  await wishStart(jobId);
  const job = await jobNow(jobId);
  const planned = job.repair.minutes + 90;
  expect(plannedMinutes(job)).toBe(planned);
  expect(owedIfWithdrawn(job)).toBe(Math.round((13_200 * 60) / planned));
});

test.each<[string, string[]]>([
  ['is left out at the bench', [SOCKET.description, FADER.description]],
  ['which the price names in words of its own is left out', ['Socket and pads rebuilt', FADER.description]],
])(
  'and no more where a repair that was agreed to %s: its price stands until another is agreed',
  async (_name, [socket = '', other = '']) => {
    const jobId = await swapped([
      { ...SOCKET, description: socket },
      { ...FADER, description: other },
    ]);
    await recordWork({ jobId, text: 'Fader off', minutes: 80, actor: BENCH, now: LATER });
    await wishStart(jobId);
    const owed = Math.round((13_200 * 80) / 150);
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(owed);
    const [beside] = (await jobNow(jobId)).besides;
    await leaveBeside({ ...(await frame(jobId)), besideId: beside?.id ?? '' });
    expect(await repairs(jobId)).toEqual(['Fader replaced']);
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(owed);
  },
);

test('a repair that the bench added before its price was agreed is planned for in that price', async () => {
  const jobId = await assessedJob(world, now);
  await proveBeside({ ...(await frame(jobId)), repairId: fader.repairId });
  await recordWork({ jobId, text: 'Socket off', minutes: 60, actor: BENCH, now: LATER });
  await wishStart(jobId);
  await agreeTo(jobId, [SOCKET]);
  expect(owedIfWithdrawn(await jobNow(jobId))).toBe(7200);
  await agreeTo(jobId, [SOCKET, FADER]);
  expect(owedIfWithdrawn(await jobNow(jobId))).toBe(Math.round((13_200 * 60) / 150));
});

describe('put under a repair of another model, after a price for two', () => {
  /** The socket of another model, under the same name as the first one's. */
  async function socketOf(modelId: string) {
    const { id, policyId, ...socket } = await db.repair.findUniqueOrThrow({ where: { id: world.repairId } });
    const sheets = { create: { version: 1, createdAt: now } };
    return (await db.repair.create({ data: { ...socket, modelId, policyId, sheets } })).id;
  }

  test.each([
    ['the socket', ['socket', 'fader'], 'socket'],
    ['the fader, named as well', ['socket', 'fader'], 'fader'],
    ['the socket, of a model without the other', ['socket'], 'socket'],
    ['the fader, of a model without the other', ['fader'], 'fader'],
  ] as const)('%s, the same share of it is owed', async (_name, has, under) => {
    const jobId = await assessedJob(world, now);
    await agreeTo(jobId, [SOCKET, FADER]);
    await recordWork({ jobId, text: 'Socket and fader replaced', minutes: 75, actor: BENCH, now: LATER });
    await wishStart(jobId);
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(6600);
    const { id: modelId } = await makeSisterModel(world);
    const ids = new Map<string, string>();
    for (const each of has)
      ids.set(
        each,
        each === 'fader'
          ? (await makeFaderRepair({ modelId }, now, 'Faders of the HW-3')).repairId
          : await socketOf(modelId),
      );
    const repairId = ids.get(under) ?? '';
    await putUnderRepair({ ...(await frame(jobId)), repairId, now: new Date(+LATER + 1) });
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(6600);
  });
});
