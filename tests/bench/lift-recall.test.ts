import { beforeEach, describe, expect, test } from 'vitest';
import { liftRecall } from '@/lib/bench/lift-recall';
import { lotsInStock } from '@/lib/bench/lots-in-stock';
import { readPart } from '@/lib/bench/part-records';
import { recallLot } from '@/lib/bench/recall-lot';
import { liftUnits, recallsOf } from '@/lib/bench/recall-records';
import { liftText } from '@/lib/bench/rules/recall-text';
import { takeOutPiece } from '@/lib/bench/take-out-piece';
import { writePartUse } from '@/lib/bench/write-part-use';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { factsOf } from '@/lib/jobs/facts';
import { eventLine } from '@/lib/jobs/rules/events';
import { piecesToWarnOfOnJob, recalledInUnit } from '@/lib/jobs/stored-recall';
import { drawMail } from '@/lib/mail/draw';
import { resetDatabase, useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');

test('the letter that takes one back lets a cell be charged, and any other part be used', () => {
  expect(liftText({ part: 'Lithium-ion cell' })).toMatch(
    /mistake[\s\S]*use, charge and post your unit again/,
  );
  expect(liftText({ part: 'USB-C socket' })).toMatch(/mistake[\s\S]*use your unit again/);
  expect(liftText({ part: 'USB-C socket' })).not.toMatch(/charge and post/);
});

describe('with a database', () => {
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  let gone: string;
  let here: string;
  useDatabase();
  /** One unit that went back with a piece, and one that has not left with another. */
  beforeEach(async () => {
    await resetDatabase();
    world = await makeWorkshop(now);
    gone = (await makeCertificate(world, now)).jobId;
    await take(gone);
    here = (await makeBooking({ repairId: world.repairId, now, serial: 'HW2-10481-K' })).jobId;
    await take(here);
  }, 60_000);

  const take = (jobId: string) =>
    transaction((tx) => writePartUse(tx, { jobId, lotId: world.lotId, quantity: 1, userId: BENCH.id, now }));
  const recall = (letters = 1, formKey = '0199b3a2-0000-7000-8000-000000000021', at = now) =>
    recallLot({ lotId: world.lotId, text: 'Stop using it.', letters, formKey, actor: OWNER, now: at });
  const inForce = async () =>
    (await recallsOf(world.lotId)).flatMap(({ id, lifted }) => (lifted === null ? [id] : []));
  const lift = async (letters = 1, text = 'That was a mistake of ours.', recalls?: string[]) =>
    liftRecall({
      lotId: world.lotId,
      text,
      letters,
      recalls: recalls ?? (await inForce()),
      actor: OWNER,
      now,
    });
  const lifted = () => db.mail.findMany({ where: { template: 'lot-recall-lifted' } });
  const units = async () => {
    const recalls = await recallsOf(world.lotId);
    return (
      await liftUnits(
        world.lotId,
        recalls.map(({ id }) => id),
      )
    ).map(({ jobId, what }) => [jobId, what]);
  };

  test('its pieces are stock again, units leave with them, and nobody is warned any more', async () => {
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    await recall();
    expect((await readPart(partId))?.inStock).toBe(0);
    expect(await piecesToWarnOfOnJob(await jobNow(gone))).toHaveLength(1);
    await lift();
    expect((await readPart(partId))?.inStock).toBe(3);
    expect(await lotsInStock()).toMatchObject([{ id: world.lotId }]);
    expect(await piecesToWarnOfOnJob(await jobNow(gone))).toEqual([]);
    expect(factsOf(await jobNow(here)).recalledParts).toEqual([]);
    expect(await recalledInUnit(await jobNow(here))).toEqual([]);
    await take(here);
  });

  test('who was written to is written to again, once, and each history says so', async () => {
    await recall();
    expect(await units()).toEqual([
      [gone, 'letter'],
      [here, 'untold'],
    ]);
    await lift();
    await lift();
    const [mail, ...more] = await lifted();
    expect(more).toEqual([]);
    expect(mail).toMatchObject({ jobId: gone, toAddress: 'maren.holt@example.org' });
    if (!mail) throw new Error('no letter');
    const { text, subject } = await drawMail(mail);
    expect(subject).toContain('was a mistake');
    expect(text).toContain('That was a mistake of ours.');
    const last = async (jobId: string) => {
      const event = (await jobNow(jobId)).events.at(-1);
      return event && eventLine(event.kind, event.data);
    };
    expect(await last(gone)).toBe(
      'Letter sent that the recall was a mistake: USB-C socket, 16 pin, lot L-2611',
    );
    expect(await last(here)).toBe('No longer recalled: USB-C socket, 16 pin, lot L-2611');
    expect(await recallsOf(world.lotId)).toMatchObject([
      { text: 'Stop using it.', lifted: { text: 'That was a mistake of ours.', mails: 1, userId: OWNER.id } },
    ]);
  });

  test('a unit whose piece is out since, and one whose data was erased, get no letter', async () => {
    await recall();
    const { id: partUseId } = await db.partUse.findFirstOrThrow({ where: { jobId: gone } });
    await db.customer.updateMany({ data: { email: '', erasedAt: now } });
    expect(await units()).toContainEqual([gone, 'no-address']);
    await takeOutPiece({ jobId: gone, version: await versionOf(gone), partUseId, actor: BENCH, now });
    expect(await units()).toEqual([[here, 'untold']]);
    await lift(0);
    expect(await lifted()).toEqual([]);
  });

  test('letters of every recall in force are taken back in one', async () => {
    await recall();
    await recall(1, '0199b3a2-0000-7000-8000-000000000022');
    await lift();
    expect(await lifted()).toHaveLength(1);
    expect((await recallsOf(world.lotId)).map((each) => each.lifted?.mails)).toEqual([1, 1]);
  });

  test('it is refused where the list is another than was looked at, or no recall is in force', async () => {
    await expect(lift(0)).rejects.toMatchObject({ code: 'conflict' });
    await recall();
    await expect(lift(2)).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.lotRecallLifted.count()).toBe(0);
    await lift();
    await expect(lift(1, 'In other words.')).rejects.toMatchObject({ code: 'conflict' });
    expect(await lifted()).toHaveLength(1);
  });

  test.each([
    ['with letters', 1],
    ['without one', 0],
  ])('a recall that came after the look is not lifted with it, %s', async (_name, letters) => {
    if (letters === 0) await db.partUse.updateMany({ where: { jobId: gone }, data: { takenOutAt: now } });
    await recall(letters);
    const seen = await inForce();
    await recall(letters, '0199b3a2-0000-7000-8000-000000000022');
    await expect(lift(letters, 'That was a mistake of ours.', seen)).rejects.toMatchObject({
      code: 'conflict',
    });
    expect(await db.lotRecallLifted.count()).toBe(0);
    expect(await lifted()).toEqual([]);
    expect(factsOf(await jobNow(here)).recalledParts).toEqual(['USB-C socket, 16 pin, lot L-2611']);
  });

  test('a lot can be recalled again, and what was lifted stays as it is', async () => {
    await recall();
    await lift();
    await recall(1, '0199b3a2-0000-7000-8000-000000000022', new Date(now.getTime() + 60_000));
    expect(factsOf(await jobNow(here)).recalledParts).toEqual(['USB-C socket, 16 pin, lot L-2611']);
    await expect(take(here)).rejects.toMatchObject({ code: 'conflict' });
    const [again, first] = await recallsOf(world.lotId);
    expect([again?.lifted, first?.lifted?.mails]).toEqual([null, 1]);
    await expect(db.lotRecallLifted.updateMany({ data: { text: 'Never was.' } })).rejects.toThrow();
  });
});
