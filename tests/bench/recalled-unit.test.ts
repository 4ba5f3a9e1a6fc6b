import { beforeEach, describe, expect, it } from 'vitest';
import { readLot } from '@/lib/bench/part-records';
import { recallLot } from '@/lib/bench/recall-lot';
import { recallUnits } from '@/lib/bench/recall-records';
import { recallText } from '@/lib/bench/rules/recall-text';
import { cellsOf, recalledPieces } from '@/lib/bench/stored-recalls';
import { takeOutPiece } from '@/lib/bench/take-out-piece';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { book } from '@/lib/jobs/book';
import { cameBack } from '@/lib/jobs/came-back';
import { piecesToWarnOf, piecesToWarnOfOnJob, slipOfJob, unitOfJob } from '@/lib/jobs/stored-recall';
import { writeEvent } from '@/lib/jobs/write-event';
import { drawMail } from '@/lib/mail/draw';
import { useDatabase } from '@/tests/database';
import { filledDraft, SERIAL } from '@/tests/makers/job';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const STOPPED = new Date('2027-02-01T09:00:00Z');
const LATER = new Date('2027-03-01T09:00:00Z');
const SECOND = '0199b3a2-0000-7000-8000-000000000004';
const CELL = 'Lithium-ion cell, 2.5 Ah';

const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  await db.part.updateMany({ data: { name: CELL } });
  const { number, jobId } = await makeCertificate(world, SENT, SERIAL, 1);
  return { world, number, jobId };
});
let world: Awaited<ReturnType<typeof begin>>['world'];
let number = '';
let jobId = '';
beforeEach(async () => {
  ({ world, number, jobId } = await begin());
}, 60_000);

const recall = (letters = 1, text = 'Stop using it, and answer us.') =>
  recallLot({
    lotId: world.lotId,
    text,
    letters,
    formKey: '0199b3a2-0000-7000-8000-000000000003',
    actor: OWNER,
    now: STOPPED,
  });
const slip = async (id: string) => slipOfJob(await jobNow(id));
const openedMail = async (id: string) =>
  drawMail(await db.mail.findFirstOrThrow({ where: { jobId: id, template: 'claim-opened' } }));

describe('a unit with a cell of a recalled lot', () => {
  it('is warned of on its page, in the words of the letter', async () => {
    expect(await piecesToWarnOfOnJob(await jobNow(jobId))).toEqual([]);
    await recall();
    expect(await piecesToWarnOfOnJob(await jobNow(jobId))).toMatchObject([
      { part: CELL, lot: 'L-2611', isCell: true, recalledAt: STOPPED, text: 'Stop using it, and answer us.' },
    ]);
  });

  it('is warned of without the reason that the workshop noted for itself', async () => {
    await db.customer.updateMany({ data: { email: '', erasedAt: STOPPED } });
    const here = await filledDraft({ repairId: world.repairId, now: STOPPED, serial: 'HW2-10481-K' });
    const { number: booked } = await book({ draftToken: here, shownMinor: 7200, now: STOPPED });
    const { id } = await db.job.findUniqueOrThrow({ where: { number: booked } });
    await takeIn(id, STOPPED);
    const { id: _first, ...use } = await db.partUse.findFirstOrThrow();
    await db.partUse.create({ data: { ...use, jobId: id } });
    await recall(0, 'The maker phoned. Tell nobody yet.');
    const pieces = await recalledPieces(unitOfJob(await jobNow(jobId)));
    expect(pieces.map(({ text }) => text)).toEqual([recallText({ part: CELL })]);
  });

  it('opens its claim, which counts from that day, and is not told to travel', async () => {
    await recall();
    const claim = await makeClaim({ number, now: LATER });
    expect(await slip(claim.jobId)).toMatchObject({ isOffered: false, stop: { may: 'do-not-post' } });
    const letter = await openedMail(claim.jobId);
    expect(letter.text).toContain('Please do not post the unit');
    expect(letter.text).not.toMatch(/print the packing slip|Post the unit with/i);
  });

  it('loses the packing slip of a claim that was booked before', async () => {
    const claim = await makeClaim({ number, now: STOPPED });
    expect(await slip(claim.jobId)).toEqual({ isOffered: true });
    expect((await openedMail(claim.jobId)).text).toContain('Post the unit with the packing slip');
    await recall();
    expect(await slip(claim.jobId)).toMatchObject({ isOffered: false });
  });

  it('is known by its certificate where the serial of the claim is only close', async () => {
    await recall();
    const photos = [somePhoto()];
    const claim = await makeClaim({ number, serial: 'HW2-1O48O-K', photos, now: LATER });
    expect(await slip(claim.jobId)).toMatchObject({ isOffered: false });
  });

  it('is not booked for another repair either', async () => {
    await recall();
    const again = () =>
      filledDraft({ repairId: world.repairId, now: LATER, serial: ` ${SERIAL.toLowerCase()} ` });
    const draftToken = await again();
    await expect(book({ draftToken, shownMinor: 7200, now: LATER })).rejects.toMatchObject({
      field: 'battery',
    });
    const other = await filledDraft({ repairId: world.repairId, now: LATER, serial: 'HW2-77777-K' });
    await expect(book({ draftToken: other, shownMinor: 7200, now: LATER })).resolves.toMatchObject({
      isNew: true,
    });
  });

  it('is not warned of while it is here', async () => {
    await recall();
    const claim = await makeClaim({ number, now: LATER });
    await takeIn(claim.jobId, LATER);
    expect(await piecesToWarnOfOnJob(await jobNow(jobId))).toEqual([]);
    expect(cellsOf(await recalledPieces(unitOfJob(await jobNow(jobId))))).toEqual([`${CELL}, lot L-2611`]);
  });
});

it.each(['give-away', 'recycle', 'sell', 'keep-longer'] as const)(
  'a unit is warned of while it is its owner’s, whatever job it stayed with us on: %s',
  async (decision) => {
    await recall();
    const claim = await makeClaim({ number, now: LATER });
    await takeIn(claim.jobId, LATER);
    const event = {
      kind: 'unclaimed-decided',
      data: { decision, note: 'As the law allows.', until: null },
    } as const;
    await transaction((tx) =>
      writeEvent(tx, {
        jobId: claim.jobId,
        actor: OWNER,
        now: LATER,
        from: 'unclaimed',
        to: 'closed',
        event,
      }),
    );
    const job = await jobNow(jobId);
    const unit = unitOfJob(job);
    const expected = decision === 'keep-longer' ? 1 : 0;
    expect(await piecesToWarnOfOnJob(job)).toHaveLength(expected);
    expect(await piecesToWarnOf(unit, SENT)).toHaveLength(expected);
    // Whoever bought it and sends it in is warned on their own page.
    expect(await piecesToWarnOf(unit, new Date(LATER.getTime() + 1))).toHaveLength(1);
    expect(cellsOf(await recalledPieces(unit))).toHaveLength(1);
  },
);

it('a unit with another part of a recalled lot is warned of, and may be posted', async () => {
  await db.part.updateMany({ data: { name: 'USB-C socket' } });
  await recall();
  const claim = await makeClaim({ number, now: LATER });
  expect(await slip(claim.jobId)).toEqual({ isOffered: true });
  expect((await piecesToWarnOfOnJob(await jobNow(claim.jobId))).map(({ isCell }) => isCell)).toEqual([false]);
});

describe('a piece of a recalled lot that an earlier job fitted', () => {
  const takeOut = async (actor = BENCH) => {
    const { id: partUseId } = await db.partUse.findFirstOrThrow({ where: { jobId } });
    return takeOutPiece({ jobId, version: (await jobNow(jobId)).version, partUseId, actor, now: LATER });
  };

  it('keeps a claim on that unit from being proved until it is noted as out', async () => {
    await recall();
    const claim = await makeClaim({ number, now: LATER });
    await takeIn(claim.jobId, LATER);
    await moveTo(claim.jobId, 'assess', LATER);
    await ruleClaim(claim, { cause: 'workmanship', now: LATER });
    await moveTo(claim.jobId, 'start-bench', LATER);
    await expect(proveJob(claim.jobId, world, LATER)).rejects.toThrow('note on that job that it is out');
    expect((await jobNow(claim.jobId)).stage).toBe('proving');
    await takeOut();
    await moveTo(claim.jobId, 'pass-checks', LATER);
    await sendBack(claim.jobId, LATER);
    expect(await piecesToWarnOfOnJob(await jobNow(jobId))).toEqual([]);
  });

  it('is found by whoever sends the unit back, too', async () => {
    const claim = await makeClaim({ number, now: LATER });
    await takeIn(claim.jobId, LATER);
    await moveTo(claim.jobId, 'assess', LATER);
    await ruleClaim(claim, { cause: 'workmanship', now: LATER });
    await moveTo(claim.jobId, 'start-bench', LATER);
    await proveJob(claim.jobId, world, LATER);
    await recall();
    await expect(sendBack(claim.jobId, LATER)).rejects.toThrow('A part of a recalled lot is fitted');
    expect(await db.certificate.count()).toBe(1);
  });

  it('opens the work of a later job again whose parcel came back, so that another one is fitted there', async () => {
    const claim = await makeClaim({ number, now: LATER });
    await takeIn(claim.jobId, LATER);
    await moveTo(claim.jobId, 'assess', LATER);
    await ruleClaim(claim, { cause: 'workmanship', now: LATER });
    await moveTo(claim.jobId, 'start-bench', LATER);
    await proveJob(claim.jobId, world, LATER);
    await sendBack(claim.jobId, LATER);
    const { version } = await jobNow(claim.jobId);
    await cameBack({ jobId: claim.jobId, version, reason: 'refused', actor: BENCH, now: LATER });
    await expect(moveTo(claim.jobId, 'reopen-work', LATER)).rejects.toThrow('The unit left once');
    await recall();
    await moveTo(claim.jobId, 'reopen-work', LATER);
    expect((await jobNow(claim.jobId)).stage).toBe('on-bench');
  });

  it('once out lets the unit be booked and posted, and stays counted with its lot', async () => {
    await recall();
    const claim = await makeClaim({ number, now: LATER });
    await takeOut();
    expect(await slip(claim.jobId)).toEqual({ isOffered: true });
    expect(await db.partUse.count()).toBe(1);
    expect((await jobNow(jobId)).events.at(-1)?.kind).toBe('recalled-part-out');
    await expect(takeOut()).rejects.toMatchObject({ code: 'conflict' });
  });

  it('once out gets no further letter, and its lot has nobody left to write to', async () => {
    await recall();
    expect((await recallUnits(world.lotId)).map(({ what }) => what)).toEqual(['letter']);
    await takeOut();
    expect(await recallUnits(world.lotId)).toEqual([]);
    expect((await readLot(world.lotId, day('2027-03-01')))?.units).toMatchObject([{ takenOutAt: LATER }]);
    await expect(
      recallLot({
        lotId: world.lotId,
        text: 'Again.',
        letters: 0,
        formKey: SECOND,
        actor: OWNER,
        now: LATER,
      }),
    ).rejects.toMatchObject({ code: 'invalid' });
    expect(await db.mail.count({ where: { template: 'lot-recall' } })).toBe(1);
  });

  it('is not noted as out where its lot was not stopped, or the unit is here', async () => {
    await expect(takeOut()).rejects.toMatchObject({ code: 'conflict' });
    await recall();
    await db.job.update({ where: { id: jobId }, data: { stage: 'ready' } });
    await expect(takeOut()).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.partUse.count({ where: { takenOutAt: null } })).toBe(1);
  });
});
