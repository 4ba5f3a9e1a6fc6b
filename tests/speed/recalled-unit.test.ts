import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { recallLot } from '@/lib/bench/recall-lot';
import { recallUnits } from '@/lib/bench/recall-records';
import { mayCarryRecalled } from '@/lib/bench/stored-recalled-units';
import { isUnitHere, jobsOf, recalledPieces } from '@/lib/bench/stored-recalls';
import { openWorkshop } from '@/lib/commands/bench/open-workshop';
import { recordingStatements } from '@/lib/commands/bench/recorded-statements';
import { seedMany } from '@/lib/commands/bench/seed-many';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { piecesToWarnOf } from '@/lib/jobs/stored-recall';
import { readChain, unitOfChain } from '@/lib/warranty/records';
import { useDatabase } from '@/tests/database';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');

beforeAll(async () => {
  await openWorkshop(now);
  await onServer(config.databaseUrl, (client) => seedMany(client, { jobs: 100, seed: 3, now }));
}, 60_000);

async function someUnit() {
  const { certificateNumber } = await db.claim.findFirstOrThrow({ select: { certificateNumber: true } });
  const chain = await readChain(certificateNumber);
  if (!chain) throw new Error('the claim has no certificate');
  return unitOfChain(chain);
}

/** The plans of all that is sent, where reading a whole table costs too much to be chosen. */
async function plansOf(reading: () => Promise<unknown>): Promise<string[]> {
  const { sent } = await recordingStatements(reading);
  return onServer(config.databaseUrl, async (client) => {
    await client.query('SET enable_seqscan = off');
    const plans: string[] = [];
    for (const { text, values } of sent) {
      const { rows } = await client.query<Record<string, string>>(`EXPLAIN ${text}`, values);
      plans.push(rows.map((row) => Object.values(row)[0]).join('\n'));
    }
    return plans;
  });
}

test('what was recalled of a unit is read from its few jobs, and those are found by indexes', async () => {
  const unit = await someUnit();
  const [ids, pieces, ...more] = await plansOf(() => recalledPieces(unit));
  for (const index of [
    'job_serialKey_idx',
    'certificate_number_revision_key',
    'claim_certificateNumber_idx',
  ]) {
    expect(ids).toContain(index);
  }
  expect(ids).not.toContain('Seq Scan');
  expect(pieces).toContain('"jobId" = ANY');
  expect(pieces).not.toContain('Seq Scan');
  expect(more).toEqual([]);
});

test('whether a unit is here is asked of its few jobs', async () => {
  const unit = await someUnit();
  const [, here, ...more] = await plansOf(() => isUnitHere(unit));
  expect(here).toContain('job_pkey');
  expect(here).not.toContain('Seq Scan');
  expect(more).toEqual([]);
});

test('a page of a unit that carries nothing recalled asks nothing, and hears of a recall at once', async () => {
  const unit = await someUnit();
  await piecesToWarnOf(unit, now);
  const { sent } = await recordingStatements(() => piecesToWarnOf(unit, now));
  expect(sent).toEqual([]);
  const { lotId, lot } = await db.partUse.findFirstOrThrow({
    where: { jobId: { in: await jobsOf(unit) } },
    include: { lot: { include: { part: true } } },
  });
  const owner = await db.user.findFirstOrThrow();
  const { length } = (await recallUnits(lotId)).filter(({ what }) => what === 'letter');
  await recallLot({
    lotId,
    text: 'Please stop using it.',
    letters: length,
    formKey: randomUUID(),
    actor: { kind: 'owner', id: owner.id, initials: 'ra' },
    now,
  });
  expect(await mayCarryRecalled(unit)).toBe(true);
  expect((await recalledPieces(unit)).map((piece) => piece.lot)).toContain(lot.code);
});
