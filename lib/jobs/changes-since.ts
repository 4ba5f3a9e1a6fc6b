import { formatInstant } from '@/lib/calendar/format';
import { db } from '@/lib/db/client';
import { readWorkshop } from '@/lib/workshop/records';
import { staffNames } from './records';
import { eventLine } from './rules/events';
import { isStage, STAGE_WORDS } from './rules/stages';

/** What happened to a job after a version, one line each: when, who, what. Empty when nothing did. */
export async function changesSince(jobNumber: string, version: number): Promise<string[]> {
  const [events, names, workshop] = await Promise.all([
    db.jobEvent.findMany({
      where: { job: { number: jobNumber }, version: { gt: version } },
      orderBy: { version: 'asc' },
      take: 20,
    }),
    staffNames(),
    readWorkshop(),
  ]);
  return events.map((event) => {
    const when = formatInstant(event.at, { locale: workshop.locale, zone: workshop.timeZone });
    const who = event.actorId ? (names.get(event.actorId)?.name ?? 'staff') : event.actorKind;
    return `${when}, ${who}: ${historyLine(event)}`;
  });
}

/** One event in words, with the stage it led to. */
export function historyLine(event: { kind: string; data: unknown; toStage: string | null }): string {
  const line = eventLine(event.kind, event.data);
  if (event.toStage === null || !isStage(event.toStage)) return line;
  const stage = STAGE_WORDS[event.toStage].label;
  return line === 'Moved on' || line === stage ? stage : `${stage}: ${line}`;
}
