import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { Refusal } from '@/lib/outcome';
import { coverClock } from '@/lib/returns/cover-clock';
import { tallyBy } from '@/lib/returns/tallies';
import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { inspect } from '@/lib/warranty/inspect';
import { lookAgain, ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { CAUSES } from '@/lib/warranty/rules/causes';
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
    await lookAgain({
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
