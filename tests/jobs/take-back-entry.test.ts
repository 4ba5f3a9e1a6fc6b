import { beforeEach, expect, test } from 'vitest';
import { recordWire } from '@/lib/bench/record-wire';
import { db } from '@/lib/db/client';
import { hasFile, putFile } from '@/lib/files/store';
import { addPhotos } from '@/lib/jobs/add-photo';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordWork } from '@/lib/jobs/record-work';
import { eventLine } from '@/lib/jobs/rules/events';
import type { EntryKind } from '@/lib/jobs/rules/take-back';
import { takeBackEntry } from '@/lib/jobs/take-back-entry';
import { takenBackOf } from '@/lib/jobs/taken-back';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { jobNow, makeCertificate, somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');

useDatabase();
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let jobId = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(now);
  return { world, jobId: await assessedJob(world, now) };
});
beforeEach(async () => {
  ({ world, jobId } = await begin());
}, 30_000);

async function takeBack(what: EntryKind, id: string | undefined, of = jobId, actor = BENCH) {
  const { version } = await jobNow(of);
  const reason = 'It is of another job.';
  return takeBackEntry({ jobId: of, version, what, id: id ?? '', reason, actor, now });
}

async function storedPhoto() {
  const photo = somePhoto();
  await putFile(photo.fileKey, Buffer.from('large'), 'image/jpeg');
  await putFile(photo.thumbKey, Buffer.from('small'), 'image/jpeg');
  return photo;
}

test('work and a wire that were taken back count no more, and stay for staff with who and why', async () => {
  await takeMove(jobId, 'start-bench', now);
  await recordWork({ jobId, text: 'Socket replaced', minutes: 600, actor: BENCH, now });
  const wire = { fromPoint: 'pin A6', toPoint: 'R12', lengthMm: 30, diameterUm: 100, milliohms: 2000 };
  await recordWire({ jobId, wire, actor: BENCH, now });
  const before = await jobNow(jobId);
  await takeBack('work', before.work[0]?.id);
  await takeBack('wire', before.jumperWires[0]?.id);
  const after = await jobNow(jobId);
  expect([after.work, after.jumperWires]).toEqual([[], []]);
  expect(factsOf(after).workEntries).toBe(0);
  expect(after.events.slice(-2).map((event) => eventLine(event.kind, event.data))).toEqual([
    'Work of 600 minutes taken back: It is of another job.',
    'Jumper wire taken back: It is of another job.',
  ]);
  expect(await takenBackOf(jobId)).toMatchObject([
    { said: 'Socket replaced', userId: BENCH.id },
    { said: 'pin A6 to R12, 2000 mΩ', userId: BENCH.id },
  ]);
  await expect(takeMove(jobId, 'prove', now)).rejects.toMatchObject({ code: 'invalid' });
  await expect(takeBack('work', before.work[0]?.id)).rejects.toMatchObject({ code: 'not-found' });
});

test('with a finding its photos go for good, files and all', async () => {
  const photo = await storedPhoto();
  await recordFinding({ jobId, text: 'Label of another parcel', photos: [photo], actor: BENCH, now });
  await takeBack('finding', (await jobNow(jobId)).findings[0]?.id);
  const job = await jobNow(jobId);
  expect([job.findings, job.photos]).toEqual([[], []]);
  expect(await db.photo.count({ where: { sha256: photo.sha256 } })).toBe(0);
  expect([await hasFile(photo.fileKey), await hasFile(photo.thumbKey)]).toEqual([false, false]);
  expect(job.events.at(-1)?.data).toMatchObject({ what: 'finding', sha256: [photo.sha256] });
});

test('nothing goes by an old page, from another job, or by who may not; a refused photo keeps its files', async () => {
  const photo = await storedPhoto();
  await addPhotos({ jobId, purpose: 'work', photos: [photo], actor: OWNER, now });
  const { version, photos } = await jobNow(jobId);
  const call = { jobId, version, what: 'photo', id: photos[0]?.id ?? '', reason: 'Blurred.', now } as const;
  await expect(takeBackEntry({ ...call, actor: BENCH })).rejects.toMatchObject({ code: 'not-allowed' });
  await expect(takeBackEntry({ ...call, version: version - 1, actor: OWNER })).rejects.toMatchObject({
    code: 'conflict',
  });
  expect(await hasFile(photo.fileKey)).toBe(true);
  const { jobId: elsewhere } = await makeCertificate(world, now, 'HW2-10999-K');
  await expect(takeBack('photo', call.id, elsewhere, OWNER)).rejects.toMatchObject({ code: 'not-found' });
  await takeBackEntry({ ...call, actor: OWNER });
  expect(await hasFile(photo.fileKey)).toBe(false);
});

test('what a price or a certificate stands on stays', async () => {
  await askPrice(jobId, now);
  const finding = (await jobNow(jobId)).findings[0]?.id;
  await expect(takeBack('finding', finding)).rejects.toMatchObject({
    message: expect.stringContaining('record what was found first'),
  });
  await recordFinding({ jobId, text: 'Pad and trace lifted', photos: [], actor: BENCH, now });
  await takeBack('finding', finding);
  expect((await jobNow(jobId)).findings.map(({ text }) => text)).toEqual(['Pad and trace lifted']);
  const sent = await makeCertificate(world, now, 'HW2-10999-K');
  const [work] = (await jobNow(sent.jobId)).work;
  await expect(takeBack('work', work?.id, sent.jobId)).rejects.toMatchObject({
    message: expect.stringContaining('The unit left'),
  });
});
