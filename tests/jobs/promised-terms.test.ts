import { beforeEach, expect, it } from 'vitest';
import { savePolicyVersion } from '@/lib/catalogue/save-policy-version';
import { db } from '@/lib/db/client';
import { readCostOfNo } from '@/lib/quotes/stored-after-no';
import { readTerms } from '@/lib/warranty/stored-terms';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { assessedJob, readyJob, sendBack } from '@/tests/makers/course';
import { shownNow } from '@/tests/makers/shown';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(() => makeWorkshop(NOW));
beforeEach(async () => {
  world = await begin();
}, 60_000);

/** The owner covers work and parts for another term from now on. */
async function changeTerm(term: string) {
  const { policyId, policy } = await db.repair.findUniqueOrThrow({
    where: { id: world.repairId },
    select: { policyId: true, policy: { select: { name: true, versions: true } } },
  });
  const terms = { ...readTerms(policy.versions[0] ?? {}), workTerm: term, partsTerm: term };
  const shown = await shownNow('policy', policyId);
  await savePolicyVersion({ shown, name: policy.name, terms, now: NOW });
}

it('a certificate covers what was promised at the booking, whatever the policy says since', async () => {
  const jobId = await readyJob(world, NOW);
  await changeTerm('P30D');
  await sendBack(jobId, NOW);
  expect((await jobNow(jobId)).certificates[0]).toMatchObject({
    policyVersion: { version: 1 },
    lines: [{ term: 'P12M' }],
  });
});

it('a booking made after the change is covered as the policy says then', async () => {
  await changeTerm('P30D');
  const jobId = await readyJob(world, NOW);
  await sendBack(jobId, NOW);
  expect((await jobNow(jobId)).certificates[0]).toMatchObject({
    policyVersion: { version: 2 },
    lines: [{ term: 'P30D' }],
  });
});

it.each([
  ['no more than was agreed to', 1500, 960],
  ['less where the workshop asks less now', 500, 500],
])('a return unrepaired costs %s', async (_, returnFeeMinor, returnFee) => {
  const jobId = await assessedJob(world, NOW);
  await db.workshop.update({ where: { id: 1 }, data: { returnFeeMinor } });
  expect(readCostOfNo(await jobNow(jobId), await readWorkshop())).toEqual({ inspectionFee: 0, returnFee });
});
