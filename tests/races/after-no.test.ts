import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { moveJob } from '@/lib/jobs/move';
import { attempt } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();

let jobId: string;
beforeEach(async () => {
  await resetDatabase();
  jobId = await assessedJob(await makeWorkshop(NOW), NOW);
  await askPrice(jobId, NOW);
}, 60_000);

const sayNo = () =>
  attempt(() =>
    decideOffer({ jobId, revision: 2, decision: 'declined', actor: { kind: 'customer' }, now: NOW }),
  );
const sayYes = () => attempt(() => approveAfterNo({ jobId, revision: 2, now: NOW }));

async function standing() {
  const job = await jobNow(jobId);
  const states = job.quotes[0]?.revisions.map(({ state }) => state) ?? [];
  return { stage: job.stage, states };
}

describe('a no that is taken back, whoever races', () => {
  it('four times at once is one yes with one mail', async () => {
    await sayNo();
    const outcomes = await Promise.all([sayYes(), sayYes(), sayYes(), sayYes()]);
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, true, true, true]);
    expect(await standing()).toEqual({
      stage: 'on-bench',
      states: ['replaced', 'declined', 'replaced', 'accepted'],
    });
    expect(await db.mail.count({ where: { jobId, template: 'approval-recorded' } })).toBe(2);
    expect(await db.jobEvent.count({ where: { jobId, kind: 'offer-decided' } })).toBe(2);
  });

  it('while the unit is packed: one of the two holds, and the other is told', async () => {
    await sayNo();
    const { version } = await jobNow(jobId);
    const pack = () =>
      attempt(() => moveJob({ jobId, version, move: 'pack-unrepaired', note: '', actor: BENCH, now: NOW }));
    const [yes, packed, again] = await Promise.all([sayYes(), pack(), sayYes()]);
    expect(yes.ok).toBe(again.ok);
    expect([yes.ok, packed.ok].filter(Boolean)).toHaveLength(1);
    const { stage, states } = await standing();
    expect(stage).toBe(yes.ok ? 'on-bench' : 'ready');
    expect(states.filter((state) => state === 'accepted')).toHaveLength(1);
    expect(await db.mail.count({ where: { jobId, template: 'unit-ready' } })).toBe(packed.ok ? 1 : 0);
  });

  it('beside the no itself, pressed again: the yes that came after a no stands', async () => {
    await sayNo();
    const [, yes] = await Promise.all([sayNo(), sayYes(), sayNo()]);
    expect(yes.ok).toBe(true);
    expect(await standing()).toEqual({
      stage: 'on-bench',
      states: ['replaced', 'declined', 'replaced', 'accepted'],
    });
  });
});
