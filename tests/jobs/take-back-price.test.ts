import { expect, it } from 'vitest';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readJob } from '@/lib/jobs/records';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf } from '@/tests/makers/course';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();

it('a price that staff took back cannot be agreed to any more, and another can be written', async () => {
  const world = await makeWorkshop(NOW);
  const jobId = await assessedJob(world, NOW);
  await recordFinding({ jobId, text: 'Pad lifted', photos: [], actor: BENCH, now: NOW });
  const write = async (amount: number) =>
    writeOffer({
      jobId,
      version: await versionOf(jobId),
      lines: [{ kind: 'labour', description: 'Pad rebuilt', amount, category: 'S', rateBps: 2000 }],
      reason: 'A pad is lifted.',
      onYes: '',
      onNo: '',
      actor: BENCH,
      now: NOW,
    });
  await write(9600);
  await takeMove(jobId, 'ask-approval', NOW);
  await takeMove(jobId, 'take-back-price', NOW);
  const late = await attempt(() =>
    decideOffer({
      jobId,
      revision: 2,
      decision: 'accepted',
      actor: { kind: 'customer' },
      now: NOW,
    }),
  );
  expect(late.ok ? 'agreed' : late.refusal.code).toBe('conflict');
  expect(await write(8400)).toEqual({ revision: 3, gross: 8400 });
  const job = await readJob({ id: jobId });
  expect(job?.stage).toBe('assessing');
  expect(job?.quotes[0]?.revisions.map((revision) => revision.state)).toEqual([
    'accepted',
    'replaced',
    'sent',
  ]);
});
