import { compareDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { OnJob } from './actor';
import { asShown, requireMove } from './facts';
import { readJob, readStage } from './records';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

/** A part of the list by its id, or another by its name. */
export type WaitedFor = ({ partId: string } | { name: string }) & { quantity: number };

/**
 * Lets a job wait for parts, and says for which and until when; of a job that waits already, says it anew. The order list counts them
 * as needed. Refuses to wait for nothing, for one part twice, for one that is no longer on the list, and until a day that is past.
 */
export async function waitForParts(
  o: OnJob & {
    parts: readonly WaitedFor[];
    /** the day they should come, where no open order says it; null where nobody knows */
    expectedOn: Day | null;
  },
): Promise<void> {
  if (o.parts.length === 0) throw new Refusal('invalid', 'Say which part it waits for.', 'part-1');
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version, 'Nothing was moved.');
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    const stage = readStage(job.stage);
    const move = moveOf('wait-for-parts');
    const waits = stage === move.to;
    if (!waits) requireMove(job, 'wait-for-parts', o.actor, { today, locale: workshop.locale });
    const { expectedOn } = o;
    if (expectedOn !== null && compareDays(expectedOn, today) < 0)
      throw new Refusal('invalid', 'This day is past.', 'expectedOn');
    const named = await namedParts(tx, o.parts);
    // What it waits for it needs, whatever was said of it before.
    const partIds = named.flatMap(({ partId }) => (partId === null ? [] : [partId]));
    await tx.partNotNeeded.deleteMany({ where: { jobId: job.id, partId: { in: partIds } } });
    await tx.awaitedPart.deleteMany({ where: { jobId: job.id } });
    await tx.awaitedPart.createMany({
      data: named.map((part) => ({
        ...part,
        jobId: job.id,
        expectedOn: expectedOn && dayToDate(expectedOn),
      })),
    });
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: waits ? [stage] : move.from },
      ...(waits ? {} : { from: stage, to: move.to }),
      event: {
        kind: 'parts-awaited',
        data: { parts: named.map(({ name, quantity }) => ({ part: name, quantity })), expectedOn },
      },
    });
  });
}

async function namedParts(tx: Tx, parts: readonly WaitedFor[]) {
  const ids = parts.flatMap((part) => ('partId' in part ? [part.partId] : []));
  if (new Set(ids).size < ids.length) throw new Refusal('invalid', 'Name each part once.', 'part-2');
  const rows = await tx.part.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } });
  const names = new Map(rows.map(({ id, name }) => [id, name]));
  return parts.map((part) => {
    if ('name' in part) return { partId: null, name: part.name, quantity: part.quantity };
    const name = names.get(part.partId);
    if (name === undefined) throw new Refusal('not-found', 'This part is no longer on the list.', 'part-1');
    return { partId: part.partId, name, quantity: part.quantity };
  });
}
