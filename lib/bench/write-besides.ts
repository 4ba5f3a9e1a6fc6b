import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import {
  type AgreedPrice,
  agreedPrice,
  changesSince,
  namesBefore,
  namesLeftOut,
  repairChanges,
  repairsAgreed,
} from '@/lib/jobs/rules/agreed-work';
import { writeEvent } from '@/lib/jobs/write-event';

/**
 * Has a unit pass the check sheets of all work that its agreed price names, as that stands inside the caller's transaction: what was
 * agreed beside the repair that the job is under, by the name of another repair of the model, is proved on the newest version of that
 * one's sheet, and what an earlier price named and this one does not is no longer. What the bench added itself stays. Work in words of
 * its own has no sheet in the catalogue.
 */
export async function writeBesides(tx: Tx, o: { jobId: string; actor: Actor; now: Date }): Promise<void> {
  const { besides, named } = await readNamed(tx, o.jobId);
  const stays = new Set(named.map(({ id }) => id));
  for (const { id, isByPrice, sheet } of besides) {
    if (isByPrice && !stays.has(sheet.repair.id))
      await removeBeside(tx, { ...o, id, repair: sheet.repair.name });
  }
  const there = new Set(besides.map(({ sheet }) => sheet.repair.id));
  for (const { id, name, sheet } of named) {
    if (sheet && !there.has(id)) await addBeside(tx, { ...o, sheet, repair: name, isByPrice: true });
  }
}

/**
 * Keeps a repair that a job was under among what its unit passes, inside the transaction that put it under another, where the agreed
 * price has lines for both: the customer pays for both. The sheet it was under just before stays in the version that it was proved on.
 * What the bench left out of such a price stays left out.
 */
export async function keepAgreed(
  tx: Tx,
  o: {
    jobId: string;
    /** the check sheet that the job was under before */
    before: { id: string; version: number; repairId: string };
    actor: Actor;
    now: Date;
  },
): Promise<void> {
  const { besides, named } = await readNamed(tx, o.jobId);
  const there = new Set(besides.map(({ sheet }) => sheet.repair.id));
  for (const { id, name, sheet, isKept } of named) {
    const kept = id === o.before.repairId ? o.before : sheet;
    if (isKept && kept && !there.has(id))
      await writeBeside(tx, { ...o, sheet: kept, repair: name, isByPrice: true });
  }
}

/**
 * The repairs beside the job's own that its agreed price names, each with its newest sheet, and what is proved beside it now. `isKept`:
 * the job was under it since the price was agreed, and the bench has not left it out since.
 */
async function readNamed(tx: Tx, jobId: string) {
  const job = await tx.job.findUniqueOrThrow({
    where: { id: jobId },
    select: {
      modelId: true,
      repairId: true,
      repair: { select: { name: true, formerNames: true } },
      events: {
        where: { kind: { in: ['repair-changed', 'sheet-beside-added', 'sheet-beside-removed'] } },
        orderBy: { version: 'asc' },
      },
      quotes: {
        select: {
          revisions: {
            where: { state: 'accepted' },
            select: {
              decidedAt: true,
              lines: { select: { kind: true, description: true, amountMinor: true } },
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
  const repairs = await tx.repair.findMany({
    where: { modelId: job.modelId },
    orderBy: { name: 'asc' },
    select: {
      id: true,
      name: true,
      formerNames: true,
      sheets: { orderBy: { version: 'desc' }, take: 1, select: { id: true, version: true } },
    },
  });
  const changes = repairChanges(job.events);
  const prices = job.quotes
    .flatMap(({ revisions }) => revisions)
    .map(({ decidedAt, lines }): AgreedPrice => {
      const amounts = lines.map(({ amountMinor, ...line }) => ({ ...line, amount: amountMinor }));
      return agreedPrice({ agreedAt: decidedAt, lines: amounts, under: job.repair });
    });
  const wasUnder = new Set(prices.flatMap(({ agreedAt }) => namesBefore(changesSince(changes, agreedAt))));
  const leftOut = new Set(prices.flatMap(({ agreedAt }) => [...namesLeftOut(job.events, agreedAt)]));
  const agreed = prices.flatMap((price) => repairsAgreed(repairs, { changes, price, underId: job.repairId }));
  const named = agreed.map(({ id, name, formerNames, sheets }) => {
    const all = [name, ...formerNames];
    const isKept = all.some((each) => wasUnder.has(each)) && !all.some((each) => leftOut.has(each));
    return { id, name, sheet: sheets[0], isKept };
  });
  return { besides: job.besides, named };
}

type Change = {
  jobId: string;
  repair: string;
  actor: Actor;
  now: Date;
  expected?: Parameters<typeof writeEvent>[1]['expected'];
};

type Added = Change & { sheet: { id: string; version: number }; isByPrice: boolean };

/**
 * Adds the sheet of a repair that is done beside the others to those that a unit passes. Its usual parts count anew: that they are not
 * needed was said of the others.
 */
export async function addBeside(tx: Tx, o: Added): Promise<void> {
  await writeBeside(tx, o);
  await tx.partNotNeeded.deleteMany({
    where: {
      jobId: o.jobId,
      part: { usualFor: { some: { repair: { sheets: { some: { id: o.sheet.id } } } } } },
    },
  });
}

async function writeBeside(tx: Tx, o: Added): Promise<void> {
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
