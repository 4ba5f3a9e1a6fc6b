import { beforeEach, expect, test } from 'vitest';
import { recordCheck } from '@/lib/bench/record-check';
import { earlierEntries } from '@/lib/bench/sheet-records';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordWork } from '@/lib/jobs/record-work';
import { eventLine } from '@/lib/jobs/rules/events';
import { walkIn } from '@/lib/jobs/walk-in';
import { readBenchJobs } from '@/lib/promise/records';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { jobQuoteData } from '@/lib/quotes/quote-data';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { askPrice, PAD, writePrice } from '@/tests/makers/offer';
import { makeFaderRepair, makeSisterModel } from '@/tests/makers/second-repair';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2026-11-26T09:00:00Z');
const FADER = { ...PAD, description: 'Fader replaced', amount: 6000 };

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

async function putUnder(jobId: string, repairId = fader.repairId, at = LATER) {
  const { version } = await jobNow(jobId);
  return putUnderRepair({ jobId, version, repairId, actor: BENCH, now: at });
}

async function tickFader(jobId: string) {
  return recordCheck({
    jobId,
    checkId: fader.checkId,
    given: { tick: true },
    note: '',
    actor: BENCH,
    now: LATER,
  });
}

async function finish(jobId: string) {
  await recordWork({ jobId, text: 'Fader replaced', minutes: 80, actor: BENCH, now: LATER });
  await moveTo(jobId, 'prove', LATER);
  await tickFader(jobId);
  await moveTo(jobId, 'pass-checks', LATER);
  const { owed } = factsOf(await jobNow(jobId));
  await db.payment.create({
    data: {
      jobId,
      amountMinor: owed,
      currency: 'GBP',
      method: 'card',
      receivedOn: LATER,
      at: LATER,
      userId: BENCH.id,
    },
  });
  const { certificate } = await sendBack(jobId, LATER);
  return db.certificate.findFirstOrThrow({
    where: { number: certificate?.number ?? '' },
    include: { lines: { orderBy: { position: 'asc' } } },
  });
}

const worksOf = (certificate: { lines: { kind: string; description: string; symptoms: string[] }[] }) =>
  certificate.lines
    .filter(({ kind }) => kind === 'work')
    .map(({ description, symptoms }) => [description, symptoms]);

test('a job that turned out to be another repair is proved, certified, counted and planned for as that one', async () => {
  const jobId = await assessedJob(world, now);
  await takeMove(jobId, 'start-bench', now);
  await recordWork({ jobId, text: 'Socket measured', minutes: 10, actor: BENCH, now });
  await takeMove(jobId, 'prove', now);
  await recordCheck({ jobId, checkId: world.voltage, given: { reading: 5 }, note: '', actor: BENCH, now });
  await takeMove(jobId, 'reopen-work', now);
  const before = await jobNow(jobId);
  await putUnder(jobId);
  const job = await jobNow(jobId);
  expect(job.repair.name).toBe('Fader replaced');
  expect(factsOf(job)).toMatchObject({ stage: 'on-bench', checksMissing: 1, checksFailed: 0 });
  expect([job.promisedOn, job.policyVersion?.id]).toEqual([before.promisedOn, before.policyVersion?.id]);
  expect(job.events.at(-1)).toMatchObject({ kind: 'repair-changed', actorId: BENCH.id });
  expect(eventLine('repair-changed', job.events.at(-1)?.data)).toBe(
    'Put under “Fader replaced” instead of “USB-C socket replaced”',
  );
  expect(await earlierEntries(job)).toMatchObject([
    {
      reading: 5,
      check: { label: 'Charge voltage', sheet: { version: 1, repair: { name: 'USB-C socket replaced' } } },
    },
  ]);
  await expect(
    recordCheck({ jobId, checkId: world.tilt, given: { tick: true }, note: '', actor: BENCH, now: LATER }),
  ).rejects.toMatchObject({ code: 'not-found' });
  const [counted] = await readBenchJobs({ zone: 'Europe/London', now: LATER });
  expect(counted).toMatchObject({ repairId: fader.repairId, minutes: 90, statedDays: 8 });

  // The price was agreed for the socket: its line is the work that was done instead.
  const certificate = await finish(jobId);
  expect(worksOf(certificate)).toEqual([['Fader replaced', ['A fader scratches']]]);
  const sheet = await db.checkSheet.findFirstOrThrow({ where: { repairId: fader.repairId } });
  expect(await db.unitWatch.findMany({ select: { repairId: true, sheetId: true } })).toEqual([
    { repairId: fader.repairId, sheetId: sheet.id },
  ]);
  await expect(putUnder(jobId, world.repairId)).rejects.toMatchObject({ code: 'conflict' });
});

test('a claim on that certificate is opened under the repair that was done', async () => {
  const jobId = await assessedJob(world, now);
  await putUnder(jobId);
  await takeMove(jobId, 'start-bench', now);
  const { number } = await finish(jobId);
  const claim = await makeClaim({
    number,
    symptom: 'A fader scratches',
    now: new Date('2026-12-20T09:00:00Z'),
  });
  expect((await jobNow(claim.jobId)).repair.id).toBe(fader.repairId);
});

test('nothing is put under the repair it is under, one that is not there or cannot be proved, or from an old page', async () => {
  const jobId = await assessedJob(world, now);
  await expect(putUnder(jobId, world.repairId)).rejects.toMatchObject({ code: 'conflict', field: 'repair' });
  await expect(putUnder(jobId, '0199b3a2-0000-7000-8000-0000000000ff')).rejects.toMatchObject({
    code: 'invalid',
  });
  const { version } = await jobNow(jobId);
  const call = { jobId, version, repairId: fader.repairId, actor: BENCH, now: LATER };
  await putUnderRepair(call);
  await expect(putUnderRepair({ ...call, repairId: world.repairId })).rejects.toMatchObject({
    code: 'conflict',
  });
  await db.checkEntry.deleteMany({});
  await db.check.deleteMany({ where: { sheet: { repairId: world.repairId } } });
  await db.checkSheet.deleteMany({ where: { repairId: world.repairId } });
  await expect(putUnder(jobId, world.repairId)).rejects.toMatchObject({
    code: 'invalid',
    message: expect.stringContaining('no check sheet'),
  });
});

test('a unit that turned out to be a sister model is one, and its battery was not asked about', async () => {
  const sister = await makeSisterModel(world);
  const { repairId } = await makeFaderRepair({ modelId: sister.id }, now, 'Faders of the HW-3');
  const jobId = await assessedJob(world, now);
  await putUnder(jobId, repairId);
  const job = await jobNow(jobId);
  expect([job.model.name, job.batteryAnswer]).toEqual(['HW-3', 'healthy']);
  expect(job.events.at(-1)?.data).toMatchObject({ unit: 'Tideline HW-3' });
  // As of one that was booked as it.
  await db.job.update({ where: { id: jobId }, data: { batteryAnswer: 'none' } });
  await putUnder(jobId, world.repairId);
  const back = await jobNow(jobId);
  expect([back.model.name, back.batteryAnswer]).toEqual(['HW-2', 'unknown']);
});

test('a yes to a changed price for another repair puts the job under it', async () => {
  const jobId = await assessedJob(world, now);
  const revision = await askPrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  expect((await jobNow(jobId)).repair.id).toBe(world.repairId);
  expect((await jobQuoteData(await jobNow(jobId)))?.ifYes).toContainEqual(
    'The repair is then “Fader replaced”: its checks are made, and the certificate is for it.',
  );
  await decideOffer({ jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now: LATER });
  const job = await jobNow(jobId);
  expect(job.repair.id).toBe(fader.repairId);
  expect(factsOf(job)).toMatchObject({ stage: 'on-bench', checksMissing: 1 });
  expect(job.quotes[0]?.revisions[1]?.agreedText).toBe(
    'I agree to £60.00 with tax for the repair “Fader replaced”, instead of £72.00.',
  );
  expect(job.events.slice(-3).map(({ kind, actorKind }) => [kind, actorKind])).toContainEqual([
    'repair-changed',
    'customer',
  ]);
  expect(worksOf(await finish(jobId))).toEqual([['Fader replaced', ['A fader scratches']]]);
});

test('a no leaves the job under its repair', async () => {
  const jobId = await assessedJob(world, now);
  const revision = await askPrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await decideOffer({ jobId, revision, decision: 'declined', actor: { kind: 'customer' }, now: LATER });
  expect((await jobNow(jobId)).repair.id).toBe(world.repairId);
});

test('a no that becomes a yes puts the job under it', async () => {
  const jobId = await assessedJob(world, now);
  const revision = await askPrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await decideOffer({ jobId, revision, decision: 'declined', actor: { kind: 'customer' }, now: LATER });
  await approveAfterNo({ jobId, revision, now: LATER });
  const job = await jobNow(jobId);
  expect(job.repair.id).toBe(fader.repairId);
  expect(job.quotes[0]?.revisions.at(-1)?.agreedText).toContain(
    'for the repair “Fader replaced”, instead of',
  );
});

test('a yes changes nothing where staff put the job under that repair meanwhile', async () => {
  const jobId = await assessedJob(world, now);
  const { revision } = await writePrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await putUnder(jobId, fader.repairId, now);
  await recordFinding({ jobId, text: 'The fader is worn', photos: [], actor: BENCH, now });
  await moveTo(jobId, 'ask-approval', now);
  await decideOffer({ jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now: LATER });
  const job = await jobNow(jobId);
  expect(job.repair.id).toBe(fader.repairId);
  expect(job.events.filter(({ kind }) => kind === 'repair-changed')).toHaveLength(1);
});

test('nothing is put under another repair beneath a price that names the one before', async () => {
  const jobId = await assessedJob(world, now);
  const old = { ...PAD, description: 'USB-C socket replaced' };
  await writePrice(jobId, now, { lines: [old] });
  await expect(putUnder(jobId)).rejects.toMatchObject({
    code: 'conflict',
    field: 'repair',
    message: 'A price is written for “USB-C socket replaced”. Write it for the other repair first.',
  });
  expect((await jobNow(jobId)).repair.id).toBe(world.repairId);
  await writePrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await putUnder(jobId);
  expect((await jobNow(jobId)).repair.id).toBe(fader.repairId);
});

test('a price for another repair says so in its lines, and is for a repair of the same model', async () => {
  const jobId = await assessedJob(world, now);
  const old = { ...PAD, description: 'USB-C socket replaced' };
  await expect(writePrice(jobId, now, { lines: [old], repairId: fader.repairId })).rejects.toMatchObject({
    code: 'invalid',
    field: 'description-0',
  });
  const sister = await makeSisterModel(world);
  await db.repair.update({ where: { id: fader.repairId }, data: { modelId: sister.id } });
  await expect(writePrice(jobId, now, { lines: [FADER], repairId: fader.repairId })).rejects.toMatchObject({
    field: 'repair',
  });
});

test('the first yes of a parcel without a booking promises the cover and the day of the repair it is for', async () => {
  const { number } = await walkIn({
    customer: {
      name: 'Perran Veale',
      email: 'perran.veale@example.org',
      phone: '',
      address1: '3 Wherry Steps',
      address2: '',
      postcode: 'QM1 2AB',
      town: 'Sandmouth',
      country: 'GB',
    },
    repairId: world.repairId,
    serial: 'HW2-10777-K',
    isOtherMatter: false,
    problem: 'A letter says: no sound on the left',
    extra: [],
    batteryAnswer: 'healthy',
    photos: [],
    formKey: '0199b3a2-0000-7000-8000-00000000000b',
    actor: BENCH,
    now,
  });
  const { id: jobId } = await db.job.findUniqueOrThrow({ where: { number } });
  await moveTo(jobId, 'assess', now);
  const revision = await askPrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await decideOffer({
    jobId,
    revision,
    decision: 'accepted',
    isTermsAccepted: true,
    isStartAsked: true,
    actor: { kind: 'customer' },
    now,
  });
  const job = await jobNow(jobId);
  expect(job.policyVersion?.id).toBe(fader.policyVersionId);
  // Eight working days from Wednesday 25 November.
  expect(job.promisedOn && dayFromDate(job.promisedOn)).toBe('2026-12-07');
});

test('a claim keeps the sheet of what is covered, and goes back to it where a contested one is', async () => {
  const { number } = await makeCertificate(world, new Date('2026-11-20T09:00:00Z'));
  const claim = await makeClaim({ number, now });
  const { jobId } = claim;
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await expect(putUnder(jobId)).rejects.toMatchObject({ message: expect.stringContaining('ruled on first') });
  await ruleClaim(claim, { cause: 'separate-fault', now });
  const revision = await askPrice(jobId, now, { lines: [FADER], repairId: fader.repairId });
  await decideOffer({
    jobId,
    revision,
    decision: 'accepted',
    isTermsAccepted: true,
    actor: { kind: 'customer' },
    now,
  });
  expect((await jobNow(jobId)).repair.id).toBe(fader.repairId);
  await contestRuling({ jobId, text: 'It was the socket.', now });
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  const won = await jobNow(jobId);
  expect(won.repair.id).toBe(world.repairId);
  expect(factsOf(won)).toMatchObject({ owed: 0, checksMissing: 2 });
  await expect(putUnder(jobId)).rejects.toMatchObject({ message: expect.stringContaining('covered') });
  await expect(writePrice(jobId, LATER, { lines: [FADER], repairId: fader.repairId })).rejects.toMatchObject({
    field: 'repair',
  });
});

test('paid work on a claim of which nothing is covered gets a certificate of its own, for the repair it was put under', async () => {
  const { number } = await makeCertificate(world, new Date('2026-11-20T09:00:00Z'));
  const claim = await makeClaim({ number, now });
  const { jobId } = claim;
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await ruleClaim(claim, { cause: 'separate-fault', now });
  const lines = [{ ...FADER, description: 'Fader and its track replaced' }];
  const revision = await askPrice(jobId, now, { lines, repairId: fader.repairId });
  const yes = { jobId, revision, decision: 'accepted', isTermsAccepted: true } as const;
  await decideOffer({ ...yes, actor: { kind: 'customer' }, now });
  const certificate = await finish(jobId);
  expect(certificate.number).not.toBe(number);
  expect(worksOf(certificate)).toEqual([['Fader and its track replaced', ['A fader scratches']]]);
});
