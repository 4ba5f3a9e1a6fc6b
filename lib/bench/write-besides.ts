import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { namesBefore, repairChanges } from '@/lib/jobs/rules/under-repair';
import { writeEvent } from '@/lib/jobs/write-event';

/**
 * Has a unit pass the check sheets of all work that its agreed price names, as that stands inside the caller's transaction: what was
 * agreed beside the repair that the job is under, by the name of another repair of the model, is proved on the newest version of that
 * one's sheet, and what an earlier price named and this one does not is no longer. What the bench added itself stays. Work in words of
 * its own has no sheet in the catalogue.
 */
export async function writeBesides(tx: Tx, o: { jobId: string; actor: Actor; now: Date }): Promise<void> {
  const job = await tx.job.findUniqueOrThrow({
    where: { id: o.jobId },
    select: {
      modelId: true,
      repairId: true,
      events: { where: { kind: 'repair-changed' }, orderBy: { version: 'asc' } },
      quotes: {
        select: {
          revisions: {
            where: { state: 'accepted' },
            select: {
              decidedAt: true,
              lines: { where: { kind: 'labour', amountMinor: { gt: 0 } }, select: { description: true } },
            },
          },
        },
      },
      besides: {
        select: {
          id: true,
          isByPrice: true,
          sheet: { select: { repair: { select: { id: true, name: true } } } },
        },
      },
    },
  });
  const agreed = job.quotes.flatMap(({ revisions }) => revisions);
  // Where the job was put under another since, the line of the one before stands for what is done instead.
  const changes = repairChanges(job.events);
  const instead = new Set(agreed.flatMap(({ decidedAt }) => namesBefore(changes, decidedAt)));
  const names = agreed
    .flatMap(({ lines }) => lines.map(({ description }) => description))
    .filter((name) => !instead.has(name));
  const named = await tx.repair.findMany({
    where: {
      modelId: job.modelId,
      id: { not: job.repairId },
      OR: [{ name: { in: names } }, { formerNames: { hasSome: names } }],
    },
    orderBy: { name: 'asc' },
    select: {
      id: true,
      name: true,
      sheets: { orderBy: { version: 'desc' }, take: 1, select: { id: true, version: true } },
    },
  });
  const stays = new Set(named.map(({ id }) => id));
  for (const { id, isByPrice, sheet } of job.besides) {
    if (isByPrice && !stays.has(sheet.repair.id))
      await removeBeside(tx, { ...o, id, repair: sheet.repair.name });
  }
  const there = new Set(job.besides.map(({ sheet }) => sheet.repair.id));
  for (const { id, name, sheets } of named) {
    const [sheet] = sheets;
    if (sheet && !there.has(id)) await addBeside(tx, { ...o, sheet, repair: name, isByPrice: true });
  }
}

type Change = {
  jobId: string;
  repair: string;
  actor: Actor;
  now: Date;
  expected?: Parameters<typeof writeEvent>[1]['expected'];
};

/** Adds one sheet to those that a unit passes. */
export async function addBeside(
  tx: Tx,
  o: Change & { sheet: { id: string; version: number }; isByPrice: boolean },
): Promise<void> {
  await writeEvent(tx, {
    jobId: o.jobId,
    actor: o.actor,
    now: o.now,
    ...(o.expected && { expected: o.expected }),
    event: { kind: 'sheet-beside-added', data: { repair: o.repair, sheet: o.sheet.version } },
  });
  await tx.sheetBeside.create({
    data: { jobId: o.jobId, sheetId: o.sheet.id, isByPrice: o.isByPrice, at: o.now },
    select: { id: true },
  });
}

/** Takes one away again. What was entered on it stays with the job and counts no more. */
export async function removeBeside(tx: Tx, o: Change & { id: string }): Promise<void> {
  await writeEvent(tx, {
    jobId: o.jobId,
    actor: o.actor,
    now: o.now,
    ...(o.expected && { expected: o.expected }),
    event: { kind: 'sheet-beside-removed', data: { repair: o.repair } },
  });
  await tx.sheetBeside.delete({ where: { id: o.id }, select: { id: true } });
}
