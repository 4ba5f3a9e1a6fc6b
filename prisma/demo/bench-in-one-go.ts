import { randomUUID } from 'node:crypto';
import { readTable } from '@/lib/bench/pin-table-records';
import { evaluateEntry } from '@/lib/bench/rules/checks';
import { transaction } from '@/lib/db/transaction';
import { EVENT_DATA, type JobEventData } from '@/lib/jobs/rules/events';
import type { Stage } from '@/lib/jobs/rules/stages';
import type { Course } from './course';
import { clock, dayOfInstant, minutesLater } from './days';
import { passingEntry } from './readings';
import type { HandName } from './staff';

export type BenchWork = {
  finding?: string;
  work: string;
  minutes: number;
  part?: readonly [part: string, lot: string];
  by?: HandName;
};

type Told = { at: Date; event: JobEventData; from?: Stage; to?: Stage };

/**
 * Everything at the bench from assessing to the last check that passed, in a dozen queries instead of eighty: the rows
 * are those of the use cases, and dozens of usual jobs would make a first start too slow. Leaves the job at proving.
 */
export async function benchInOneGo(job: Course, o: BenchWork): Promise<void> {
  const { shop, jobId } = job;
  await shop.turns.until(job.at);
  const by = shop.hands[o.by ?? 'bench'];
  const assessedAt = job.at;
  const benchAt = clock(shop.days.workedAfter(dayOfInstant(assessedAt), 1), '13:10');
  const provedAt = minutesLater(benchAt, o.minutes + 12);
  const told: Told[] = [
    {
      at: assessedAt,
      event: { kind: 'moved', data: { move: 'assess', note: '' } },
      from: 'arrived',
      to: 'assessing',
    },
  ];
  await transaction(async (tx) => {
    const { version, sheet } = await tx.job.findUniqueOrThrow({
      where: { id: jobId },
      select: { version: true, sheet: { select: { checks: { orderBy: { position: 'asc' } } } } },
    });
    if (o.finding) {
      const findingId = randomUUID();
      const at = minutesLater(assessedAt, 6);
      await tx.finding.create({ data: { id: findingId, jobId, text: o.finding, at, userId: by.id } });
      told.push({ at, event: { kind: 'finding-recorded', data: { findingId } } });
    }
    told.push({
      at: benchAt,
      event: { kind: 'moved', data: { move: 'start-bench', note: '' } },
      from: 'assessing',
      to: 'on-bench',
    });
    if (o.part) {
      const [code, lotCode] = o.part;
      const lotId = shop.lot(code, lotCode);
      const at = minutesLater(benchAt, 6);
      const lot = await tx.lot.update({
        where: { id: lotId },
        data: { inStock: { decrement: 1 } },
        select: { unitCostMinor: true, part: { select: { name: true } } },
      });
      const partUseId = randomUUID();
      const { unitCostMinor } = lot;
      await tx.partUse.create({
        data: { id: partUseId, jobId, lotId, quantity: 1, unitCostMinor, at, userId: by.id },
      });
      told.push({
        at,
        event: { kind: 'part-used', data: { partUseId, part: lot.part.name, lot: lotCode, quantity: 1 } },
      });
    }
    const workId = randomUUID();
    const workedAt = minutesLater(benchAt, 9);
    await tx.workEntry.create({
      data: { id: workId, jobId, text: o.work, minutes: o.minutes, at: workedAt, userId: by.id },
    });
    told.push({ at: workedAt, event: { kind: 'work-recorded', data: { workId, minutes: o.minutes } } });
    told.push({
      at: provedAt,
      event: { kind: 'moved', data: { move: 'prove', note: '' } },
      from: 'on-bench',
      to: 'proving',
    });
    const entries = [];
    for (const [i, check] of sheet.checks.entries()) {
      const at = minutesLater(provedAt, 3 * (i + 1));
      const answer = evaluateEntry(check, passingEntry(check, job.key), await readTable(check.pinTable, tx));
      if (!answer.ok || !answer.isPassed) throw new Error(`${job.key}: ${check.label} does not pass`);
      const { isPassed, reading, choice, probes } = answer;
      const id = randomUUID();
      entries.push({
        id,
        jobId,
        checkId: check.id,
        isPassed,
        reading,
        choice,
        ...(probes && { probes }),
        at,
        userId: by.id,
      });
      told.push({
        at,
        event: { kind: 'check-recorded', data: { entryId: id, check: check.label, isPassed } },
      });
    }
    await tx.checkEntry.createMany({ data: entries });
    await tx.jobEvent.createMany({
      data: told.map(({ at, event, from, to }, i) => ({
        jobId,
        version: version + 1 + i,
        kind: event.kind,
        at,
        actorKind: by.kind,
        actorId: by.id,
        fromStage: from ?? null,
        toStage: to ?? null,
        data: EVENT_DATA[event.kind].parse(event.data),
      })),
    });
    await tx.job.update({
      where: { id: jobId },
      data: { version: version + told.length, stage: 'proving' },
    });
    job.at = minutesLater(told.at(-1)?.at ?? provedAt, 6);
  });
}
