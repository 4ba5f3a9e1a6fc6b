import { expect, it, vi } from 'vitest';
import { recallLot } from '@/lib/bench/recall-lot';
import { db } from '@/lib/db/client';
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
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';

const SENT = new Date('2026-12-03T16:00:00Z');
const LATER = new Date('2027-03-01T09:00:00Z');

let meanwhile = async () => {};

vi.mock('@/lib/warranty/plan-certificate', async (load) => {
  const real = await load<typeof import('@/lib/warranty/plan-certificate')>();
  const planWarranty: typeof real.planWarranty = async (...given) => {
    const plan = await real.planWarranty(...given);
    await meanwhile();
    return plan;
  };
  return { ...real, planWarranty };
});

useDatabase();

it('a unit does not leave with an earlier job’s part whose lot is recalled while its papers are drawn', async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT, undefined, 1);
  const claim = await makeClaim({ number, now: LATER });
  await takeIn(claim.jobId, LATER);
  await moveTo(claim.jobId, 'assess', LATER);
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  await moveTo(claim.jobId, 'start-bench', LATER);
  await proveJob(claim.jobId, world, LATER);
  const before = await jobNow(claim.jobId);
  const formKey = '0199b3a2-0000-7000-8000-000000000003';
  meanwhile = () =>
    recallLot({ lotId: world.lotId, text: 'Stop.', letters: 1, formKey, actor: OWNER, now: LATER });
  await expect(sendBack(claim.jobId, LATER)).rejects.toThrow('A part of a recalled lot is fitted');
  expect(await jobNow(claim.jobId)).toMatchObject({ stage: 'ready', version: before.version });
  expect(await db.mail.count({ where: { jobId: claim.jobId, template: 'unit-sent-back' } })).toBe(0);
}, 60_000);
