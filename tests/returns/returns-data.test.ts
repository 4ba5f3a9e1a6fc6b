import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { coverClock } from '@/lib/returns/cover-clock';
import type { CoverClock } from '@/lib/returns/cover-sql';
import { readLotFigures } from '@/lib/returns/lot-figures';
import { monthCounts } from '@/lib/returns/months';
import { countRows, readRows } from '@/lib/returns/read-rows';
import { readRepairFigures } from '@/lib/returns/repair-figures';
import { tallyBy, watchedTallies, watchOf } from '@/lib/returns/tallies';
import { countByVersion } from '@/lib/returns/version-counts';
import { writeWatch } from '@/lib/returns/write-watch';
import { yearByRepair } from '@/lib/returns/year';
import { inspect } from '@/lib/warranty/inspect';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import type { Cause } from '@/lib/warranty/rules/causes';
import { claimCost } from '@/lib/warranty/rules/claim-cost';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
/** 28 days of December, 31 of January, 8 of February after the day of dispatch: 67. */
const BACK = new Date('2027-02-08T10:00:00Z');
const AGAIN = new Date('2027-02-08T15:00:00Z');
const NOW = new Date('2027-03-01T10:00:00Z');

async function rule(claim: Awaited<ReturnType<typeof makeClaim>>, cause: Cause) {
  await takeIn(claim.jobId, BACK);
  await moveTo(claim.jobId, 'assess', BACK);
  const common = { claimId: claim.claimId, actor: BENCH, now: BACK };
  await inspect({ ...common, item: 'outside-damage', answer: 'yes', note: '', photo: somePhoto() });
  await ruleOnClaim({
    ...common,
    jobVersion: (await jobNow(claim.jobId)).version,
    cause,
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'The photo shows what we found.',
    lesson: '',
  });
}

/**
 * Four units. The first comes back, is ruled our work, repaired and sent back with a renewed certificate, and comes back again on
 * that one; the second ruling has no cost yet. The second unit's claim is proposed as damage after return, which waits for the
 * owner. The others stay well.
 */
beforeAll(async () => {
  const world = await makeWorkshop(SENT);
  const first = await makeCertificate(world, SENT, 'FR2-70001-A');
  const claim = await makeClaim({ number: first.number, serial: 'FR2-70001-A', now: BACK });
  await rule(claim, 'workmanship');
  await moveTo(claim.jobId, 'start-bench', BACK);
  await proveJob(claim.jobId, world, BACK);
  await sendBack(claim.jobId, BACK);
  const again = await makeClaim({ number: first.number, serial: 'FR2-70001-A', now: AGAIN });
  await rule(again, 'fitted-part');
  const second = await makeCertificate(world, SENT, 'FR2-70002-B');
  await rule(
    await makeClaim({ number: second.number, serial: 'FR2-70002-B', now: BACK }),
    'damage-after-return',
  );
  await makeCertificate(world, SENT, 'FR2-70003-C');
  await makeCertificate(world, SENT, 'FR2-70004-D');
}, 120_000);

const clock = async () => coverClock(await readWorkshop(), NOW);

describe('what came back', () => {
  it('counts a unit once, whatever its certificates and claims', async () => {
    const [tally] = await tallyBy('repair', await clock());
    // 67 days to the first return of one; 88 days to today of the three others (28 + 31 + 28 + 1).
    expect(tally).toMatchObject({
      units: 4,
      returned: 1,
      claims: 2,
      uncosted: 1,
      daysAtRisk: 67 + 3 * 88,
      causes: { workmanship: 1, part: 0, firstDamage: 0, inDoubt: 0 },
    });
    expect(await tallyBy('model', await clock())).toMatchObject([{ units: 4, returned: 1 }]);
    expect(await tallyBy('policy', await clock())).toMatchObject([{ units: 4, returned: 1 }]);
  });

  it('watches each unit to its return or to today', async () => {
    const now = await clock();
    const [tally] = await tallyBy('repair', now);
    const of = { grouping: 'repair' as const, id: tally?.id ?? '' };
    expect(await watchOf('repair', now, { of })).toEqual([
      { days: 67, returned: 1, left: 0 },
      { days: 88, returned: 0, left: 3 },
    ]);
  });

  it('reads tallies and watches together as it reads them apart', async () => {
    const now = await clock();
    const [together] = await watchedTallies('repair', now);
    const [tally] = await tallyBy('repair', now);
    const of = { grouping: 'repair' as const, id: tally?.id ?? '' };
    const { spans: _, ...plain } = tally ?? { spans: [] };
    expect(together).toEqual({ ...plain, costs: [], watch: await watchOf('repair', now, { of }) });
  });

  it('puts a return down to the hand for its work, and to the lot for its part', async () => {
    const now = await clock();
    expect(await tallyBy('technician', now)).toMatchObject([{ id: BENCH.id, units: 4, returned: 1 }]);
    for (const lot of await readLotFigures(now)) {
      expect(lot.tally.returned + lot.tally.otherwise).toBeLessThanOrEqual(1);
      expect(lot.tally.spans.slice(0, 3).map(({ units }) => units)).toEqual(Array(3).fill(lot.tally.units));
    }
  });

  it('shows each cover line once, however often its certificate was renewed', async () => {
    const now = await clock();
    const keys = await db.certificateLine.findMany({
      select: { key: true, certificate: { select: { number: true } } },
    });
    const distinct = new Set(keys.map(({ key, certificate }) => `${certificate.number}/${key}`));
    const rows = await readRows(now, {}, { skip: 0, take: 100 });
    expect(rows).toHaveLength(distinct.size);
    expect(new Set(rows.map(({ certificate, key }) => `${certificate}/${key}`))).toEqual(distinct);
    expect(await countRows(now, {})).toEqual({ rows: distinct.size, units: 4, returned: 1 });
    expect((await countRows(now, { onlyReturns: true })).units).toBe(1);
    expect((await countRows(now, { month: '2026-11' })).rows).toBe(0);
  });

  it('reads on after a row as it reads on after so many, however it is narrowed', async () => {
    const now = await clock();
    const [first] = await readRows(now, {}, { skip: 0, take: 1 });
    const ofRepair = { of: { grouping: 'repair' as const, id: first?.repairId ?? '' } };
    for (const narrowing of [{}, ofRepair, { onlyReturns: true }, { month: '2026-12' }]) {
      const all = await readRows(now, narrowing, { skip: 0, take: 100 });
      const { rows, units, returned } = await countRows(now, narrowing);
      expect(all).toHaveLength(rows);
      expect(new Set(all.map((row) => row.certificate)).size).toBe(units);
      expect(new Set(all.filter((row) => row.returnedOn).map((row) => row.certificate)).size).toBe(returned);
      const oneByOne = [];
      for (let last = all[0]; last; [last] = await readRows(now, narrowing, { after: last, take: 1 }))
        oneByOne.push(last);
      expect(oneByOne).toEqual(all);
    }
  });

  it('reckons with what the claim cost, and says what has no cost yet', async () => {
    const workshop = await readWorkshop();
    const [figure] = await readRepairFigures(workshop, NOW);
    const costed = await db.claim.findFirstOrThrow({ where: { costMinutes: { not: null } } });
    const cost = claimCost({
      minutes: costed.costMinutes ?? 0,
      labourRateMinor: workshop.labourRateMinor,
      parts: [{ quantity: 1, unitCostMinor: costed.costPartsMinor ?? 0 }],
      postageMinor: costed.costPostageMinor ?? 0,
    });
    expect(cost.together).toBeGreaterThan(0);
    expect(figure?.year).toMatchObject({ sent: 4, spentMinor: cost.together, uncosted: 1 });
    expect(figure?.tally.costMinor).toBe(cost.together);
    // No returned unit has all its costs yet, so the catalogue's own is used.
    expect(figure?.reserve).toMatchObject({ known: true, reserve: { costBasis: 'planned' } });
  });

  it('reckons a unit that came back twice with both of its claims, once both have a cost', async () => {
    const now = await clock();
    const costs = async () => (await watchedTallies('repair', now)).map((tally) => tally.costs);
    expect(await costs()).toEqual([[]]);
    const [first, second] = await db.claim.findMany({
      where: { cause: { not: 'damage-after-return' } },
      orderBy: { openedAt: 'asc' },
    });
    if (!first || !second) throw new Error('no two claims');
    const cost = { costMinutes: 30, costPartsMinor: 200, costPostageMinor: 300 };
    await transaction(async (tx) => {
      await tx.claim.update({ where: { id: second.id }, data: cost });
      await writeWatch(tx, [second.certificateNumber]);
    });
    const costOf = (claim: Pick<typeof first, 'costMinutes' | 'costPartsMinor' | 'costPostageMinor'>) =>
      Math.floor(((claim.costMinutes ?? 0) * now.labourRateMinor + 30) / 60) +
      (claim.costPartsMinor ?? 0) +
      (claim.costPostageMinor ?? 0);
    const both = costOf(first) + costOf(cost);
    expect(await costs()).toEqual([[both]]);
    await transaction(async (tx) => {
      await tx.claim.update({
        where: { id: second.id },
        data: { costMinutes: null, costPartsMinor: null, costPostageMinor: null },
      });
      await writeWatch(tx, [second.certificateNumber]);
    });
  });

  it('holds a reserve against units whose cover ended in the year, with their own claims', async () => {
    const workshop = await readWorkshop();
    const endedOn = async (day: string) =>
      (await yearByRepair(coverClock(workshop, new Date(`${day}T10:00:00Z`))))[0];
    // Cover of twelve months from 3 December 2026; every claim was opened in February 2027.
    const spent = (await endedOn('2027-03-01'))?.spentMinor;
    expect(await endedOn('2027-12-02')).toMatchObject({ sent: 4, ended: [] });
    const ended = [{ days: 365, units: 4, spentMinor: spent, uncosted: 1 }];
    expect(await endedOn('2027-12-03')).toMatchObject({ sent: 0, spentMinor: spent, ended });
    expect(await endedOn('2028-03-01')).toMatchObject({ sent: 0, spentMinor: 0, ended });
    expect(await endedOn('2028-12-03')).toBeUndefined();
  });

  describe('is compared over equal watches', () => {
    const ON = new Date('2027-04-01T10:00:00Z');
    const NONE = { units: 0, returned: 0 };
    const later = async () => coverClock(await readWorkshop(), ON);

    it('counts units watched so long and returns within it, by every grouping', async () => {
      // 88 days on 1 March, 119 on 1 April; the one return came on day 67. The first spans are 14, 30, 60 and 90 days.
      const early = { units: 4, returned: 0 };
      const [unit] = await tallyBy('repair', await clock());
      expect(unit?.spans).toEqual([early, early, early, ...Array(6).fill(NONE)]);
      const [hand] = await tallyBy('technician', await later());
      expect(hand?.spans).toEqual([early, early, early, { units: 4, returned: 1 }, ...Array(5).fill(NONE)]);
      for (const { tally } of await readLotFigures(await later()))
        expect(tally.spans[3]).toEqual({ units: tally.units, returned: tally.returned });
    });

    const byMonth = async (now: CoverClock) =>
      (await monthCounts(now, 24)).map(({ watched, returned }) => [watched, returned]);
    const byVersion = async (now: CoverClock) => {
      const { repairId } = await db.unitWatch.findFirstOrThrow();
      return (await countByVersion(repairId, now)).map(({ watched, returned, young }) => [
        watched,
        returned,
        young,
      ]);
    };

    it('counts by month and by sheet what was watched for ninety days', async () => {
      expect(await byMonth(await clock())).toEqual([[0, 0]]);
      expect(await byVersion(await clock())).toEqual([[0, 0, 4]]);
      expect(await byMonth(await later())).toEqual([[4, 1]]);
      expect(await byVersion(await later())).toEqual([[4, 1, 0]]);
    });

    describe('by the end that the first paper named', () => {
      let before: { number: string; firstEndsOn: Date }[] = [];
      let linesBefore: { lineId: string; firstEndsOn: Date }[] = [];
      beforeAll(async () => {
        before = await db.unitWatch.findMany({ select: { number: true, firstEndsOn: true } });
        linesBefore = await db.lineWatch.findMany({ select: { lineId: true, firstEndsOn: true } });
        const firstEndsOn = dayToDate(day('2027-01-12'));
        await db.unitWatch.updateMany({ data: { firstEndsOn } });
        await db.lineWatch.updateMany({ data: { firstEndsOn } });
      }, 30_000);
      afterAll(async () => {
        for (const { number, firstEndsOn } of before)
          await db.unitWatch.update({ where: { number }, data: { firstEndsOn } });
        for (const { lineId, firstEndsOn } of linesBefore)
          await db.lineWatch.update({ where: { lineId }, data: { firstEndsOn } });
      }, 30_000);

      // Days are added to the cover of what came back; were they counted, only that would be watched for so long.
      it('is watched until the first paper ends, whatever a return added', async () => {
        const [unit] = await tallyBy('repair', await later());
        const all = { units: 4, returned: 0 };
        expect(unit?.spans.slice(0, 4)).toEqual([all, all, NONE, NONE]);
        for (const { tally } of await readLotFigures(await later())) {
          expect(tally.spans[1]?.units).toBe(tally.units);
          expect(tally.spans[2]).toEqual(NONE);
        }
      });

      // Nothing can come back under cover that is over: a shorter term would make months and sheets look better.
      it('counts by month and by sheet no unit whose cover was shorter, nor will it', async () => {
        for (const now of [await clock(), await later()]) {
          expect(await byMonth(now)).toEqual([[0, 0]]);
          expect(await byVersion(now)).toEqual([[0, 0, 0]]);
        }
      });
    });
  });
});
