import { db } from '@/lib/db/client';
import { eventLine, parseEvent } from './rules/events';

export type TakenBack = {
  id: string;
  at: Date;
  userId: string | null;
  /** what it said, in one line; empty for a photo, of which nothing stays */
  said: string;
  /** what was taken back, and why */
  why: string;
};

/** What was taken back on a job, in order: what it said, who took it back and why. For staff alone. */
export async function takenBackOf(jobId: string): Promise<TakenBack[]> {
  const events = await db.jobEvent.findMany({
    where: { jobId, kind: 'entry-taken-back' },
    orderBy: { version: 'asc' },
  });
  if (events.length === 0) return [];
  const where = { jobId, takenBackAt: { not: null } };
  const [findings, work, wires] = await Promise.all([
    db.finding.findMany({ where, select: { id: true, text: true } }),
    db.workEntry.findMany({ where, select: { id: true, text: true } }),
    db.jumperWire.findMany({ where, select: { id: true, fromPoint: true, toPoint: true, milliohms: true } }),
  ]);
  const said = new Map([
    ...[...findings, ...work].map(({ id, text }) => [id, text] as const),
    ...wires.map(
      ({ id, fromPoint, toPoint, milliohms }) => [id, `${fromPoint} to ${toPoint}, ${milliohms} mΩ`] as const,
    ),
  ]);
  return events.flatMap(({ data, at, actorId }) => {
    const event = parseEvent('entry-taken-back', data);
    if (event.kind !== 'entry-taken-back') return [];
    const { id } = event.data;
    return [{ id, at, userId: actorId, said: said.get(id) ?? '', why: eventLine(event.kind, event.data) }];
  });
}
