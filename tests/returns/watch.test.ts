import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { addDays, day, dayFromDate, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { coverClock } from '@/lib/returns/cover-clock';
import { tallyBy } from '@/lib/returns/tallies';
import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';
import { writeWatch } from '@/lib/returns/write-watch';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { inspect } from '@/lib/warranty/inspect';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { CAUSES } from '@/lib/warranty/rules/causes';
import { coverEnd } from '@/lib/warranty/rules/cover';
import { HELD_RULES } from '@/lib/warranty/rules/terms';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
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
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const HOUR = 3_600_000;
/** The first has two pieces of one lot. */
const SERIALS = ['FR2-70001-A', 'FR2-70002-B'];

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeAll(async () => {
  world = await makeWorkshop(SENT);
}, 60_000);

type Unit = { number: string; serial: string; claim: { claimId: string; jobId: string } | null };
type Course = { unit: Unit; now: Date; draw: (of: number) => number };

const version = async (jobId: string) => (await jobNow(jobId)).version;

/** What may happen to a unit's claim, once it has one; each is refused where the stage does not allow it. */
const STEPS = {
  async rule({ unit: { claim }, now, draw }: Course) {
    if (!claim) return;
    await ruleOnClaim({
      claimId: claim.claimId,
      jobVersion: await version(claim.jobId),
      cause: CAUSES[draw(CAUSES.length)] ?? 'workmanship',
      alsoFound: draw(3) === 0 ? 'separate-fault' : null,
      isEvidenceClear: true,
      mayTell: true,
      isLetIn: false,
      reasonText: 'The photo shows what we found on it.',
      lesson: '',
      actor: BENCH,
      now,
    });
  },
  async lookAgain({ unit: { claim }, now, draw }: Course) {
    if (!claim) return;
    const isConfirmed = draw(3) > 0;
    await takeSecondLook({
      claimId: claim.claimId,
      jobVersion: await version(claim.jobId),
      isConfirmed,
      actor: OWNER,
      now,
    });
  },
  async contest({ unit: { claim }, now }: Course) {
    if (claim) await contestRuling({ jobId: claim.jobId, text: 'It never fell into water.', now });
  },
  async repair({ unit, now }: Course) {
    if (!unit.claim) return;
    await moveTo(unit.claim.jobId, 'start-bench', now);
    await proveJob(unit.claim.jobId, world, now);
    await sendBack(unit.claim.jobId, now);
    unit.claim = null;
  },
  async returnAsItCame({ unit, now }: Course) {
    if (!unit.claim) return;
    await moveTo(unit.claim.jobId, 'return-unrepaired', now);
    await sendBack(unit.claim.jobId, now);
    unit.claim = null;
  },
};

async function open({ unit, now }: Course): Promise<void> {
  const claim = await makeClaim({ number: unit.number, serial: unit.serial, now });
  await takeIn(claim.jobId, now);
  await moveTo(claim.jobId, 'assess', now);
  const seen = { claimId: claim.claimId, actor: BENCH, now };
  await inspect({ ...seen, item: 'outside-damage', answer: 'yes', note: '', photo: somePhoto() });
  unit.claim = claim;
}

const astray = async () => [
  ...(await db.$queryRawUnsafe<object[]>(UNITS_ASTRAY)),
  ...(await db.$queryRawUnsafe<object[]>(LINES_ASTRAY)),
];

it('keeps the rows of every unit and line as the records say, whatever is done in whatever order', async () => {
  const units: Unit[] = [];
  for (const [place, serial] of SERIALS.entries())
    units.push({ ...(await makeCertificate(world, SENT, serial, 2 - place)), serial, claim: null });
  const numbers = fc.sample(fc.nat(), { seed: 20, numRuns: 400 })[Symbol.iterator]();
  const draw = (of: number) => (numbers.next().value ?? 0) % of;
  const done = new Map<string, number>();
  const names = Object.keys(STEPS) as (keyof typeof STEPS)[];
  const isEnough = () => done.size > names.length && [...done.values()].reduce((a, b) => a + b) >= 16;
  for (let step = 1; step <= 60 && !isEnough(); step += 1) {
    const unit = units[draw(units.length)];
    if (!unit) continue;
    const course = { unit, now: new Date(SENT.getTime() + step * 30 * HOUR), draw };
    const name = unit.claim ? names[draw(names.length)] : undefined;
    try {
      await (name ? STEPS[name](course) : open(course));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      continue;
    }
    done.set(name ?? 'open', (done.get(name ?? 'open') ?? 0) + 1);
    expect(await astray(), `after step ${step}, ${name ?? 'open'}`).toEqual([]);
  }
  expect([...done.keys()].sort()).toEqual([...names, 'open'].sort());
  expect(await db.unitWatch.count({ where: { returnedOn: { not: null } } })).toBeGreaterThan(0);
  expect(await db.certificate.count({ where: { revision: { gt: 1 } } })).toBeGreaterThan(0);
}, 120_000);

it('counts two pieces of one lot in a unit as one chance to come back', async () => {
  const clock = coverClock(await readWorkshop(), new Date('2027-06-01T10:00:00Z'));
  expect(await db.lineWatch.count({ where: { lotId: world.lotId, hasTwin: true } })).toBe(2);
  expect(await db.lineWatch.count({ where: { lotId: world.lotId, hasTwin: false } })).toBe(1);
  for (const grouping of ['lot', 'part', 'supplier'] as const)
    expect(await tallyBy(grouping, clock), grouping).toMatchObject([{ units: 2 }]);
});

it('finds a row that is not what the records say, one too few and one too many', async () => {
  const [{ number } = { number: '' }] = await db.unitWatch.findMany({ take: 1 });
  const found = async (change: () => Promise<unknown>, undo: () => Promise<unknown>) => {
    await change();
    const which = await astray();
    await undo();
    return which;
  };
  const line = await db.lineWatch.findFirstOrThrow({ where: { number } });
  expect(
    await found(
      () => db.unitWatch.update({ where: { number }, data: { claims: { increment: 1 } } }),
      () => db.unitWatch.update({ where: { number }, data: { claims: { decrement: 1 } } }),
    ),
  ).toEqual([{ which: number }]);
  expect(
    await found(
      () => db.lineWatch.delete({ where: { lineId: line.lineId } }),
      () => db.lineWatch.create({ data: line }),
    ),
  ).toEqual([{ which: number }]);
  const unit = await db.unitWatch.findUniqueOrThrow({ where: { number } });
  expect(
    await found(
      () => db.unitWatch.create({ data: { ...unit, number: 'W0000000X' } }),
      () => db.unitWatch.delete({ where: { number: 'W0000000X' } }),
    ),
  ).toEqual([{ which: 'W0000000X' }]);
  expect(await astray()).toEqual([]);
});

it('counts the end of a line as the rules do, whatever was held', async () => {
  const on = (days: number) => addDays(day('2025-12-31'), days);
  const stay = fc
    .tuple(fc.integer({ min: 0, max: 700 }), fc.integer({ min: 0, max: 25 }))
    .map(([from, days]) => ({ from: on(from), to: on(from + days), claimNumber: '', isByMistake: false }));
  const drawn = fc.sample(
    fc.record({
      line: fc.record({
        startsOn: fc.integer({ min: 0, max: 90 }).map(on),
        term: fc.constantFrom('P90D', 'P6M', 'P12M', 'P1Y6M', 'P6W', 'P1M10D'),
        renewedUntil: fc.option(fc.integer({ min: 200, max: 800 }).map(on)),
        renewedFrom: fc.option(fc.integer({ min: 150, max: 600 }).map(on), { freq: 5 }),
      }),
      rule: fc.constantFrom(...HELD_RULES),
      stays: fc.array(stay, { maxLength: 5 }),
      mistake: fc.option(fc.integer({ min: 1, max: 25 })),
    }),
    { numRuns: 150, seed: 7 },
  );
  const cases = drawn.map(({ mistake, ...each }) => {
    if (mistake === null) return each;
    const from = each.line.startsOn;
    const byMistake = { from, to: addDays(from, mistake), claimNumber: '', isByMistake: true };
    return { ...each, stays: [...each.stays, byMistake] };
  });
  const number = (at: number) => `HELD-${at}`;
  await db.heldInterval.createMany({
    data: cases.flatMap(({ stays }, at) =>
      stays.map(({ from, to, isByMistake }, i) => ({
        certificateNumber: number(at),
        claimNumber: `${number(at)}-${i}`,
        fromDay: dayToDate(from),
        toDay: dayToDate(to),
        isByMistake,
      })),
    ),
  });
  const counted = await db.$queryRaw<{ end: string }[]>`
    SELECT "cover_end"(n, rule, starts::date, term, renewed::date, since::date)::text AS "end"
    FROM UNNEST(
      ${cases.map((_, at) => number(at))}::text[], ${cases.map(({ rule }) => rule)}::text[],
      ${cases.map(({ line }) => line.startsOn)}::text[], ${cases.map(({ line }) => line.term)}::text[],
      ${cases.map(({ line }) => line.renewedUntil)}::text[], ${cases.map(({ line }) => line.renewedFrom)}::text[]
    ) WITH ORDINALITY AS c(n, rule, starts, term, renewed, since, at) ORDER BY at`;
  await db.heldInterval.deleteMany({ where: { certificateNumber: { startsWith: 'HELD-' } } });
  const expected = cases.map(({ line, rule, stays }) =>
    coverEnd({ ...line, id: 'a', kind: 'work', description: '', symptoms: [] }, stays, { heldRule: rule }),
  );
  expect(counted.map(({ end }) => end)).toEqual(expected);
});

it('follows the days given back by a stay that issued no paper', async () => {
  const { number } = await makeCertificate(world, SENT, 'FR2-70009-A');
  const stated = await db.unitWatch.findUniqueOrThrow({ where: { number } });
  await transaction(async (tx) => {
    const held = { certificateNumber: number, claimNumber: 'HELD', toDay: dayToDate(day('2027-02-05')) };
    await tx.heldInterval.create({ data: { ...held, fromDay: dayToDate(day('2027-02-01')) } });
    await writeWatch(tx, [number]);
  });
  const { endsOn } = await db.unitWatch.findUniqueOrThrow({ where: { number } });
  expect([stated.endsOn, endsOn].map(dayFromDate)).toEqual(['2027-12-03', '2027-12-07']);
  expect(await db.lineWatch.count({ where: { number, endsOn } })).toBe(
    await db.lineWatch.count({ where: { number } }),
  );
  expect(await astray()).toEqual([]);
});
