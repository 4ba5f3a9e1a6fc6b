import { formatInstant } from '@/lib/calendar/format';
import { db } from '@/lib/db/client';
import { staffNames } from '@/lib/jobs/records';
import { readWorkshop } from '@/lib/workshop/records';
import { quoteEventLine } from './rules/quote-events';

/** What happened to a quote after a version, one line each: when, who, what. Empty when nothing did. */
export async function quoteChangesSince(number: string, version: number): Promise<string[]> {
  const [events, names, workshop] = await Promise.all([
    db.quoteEvent.findMany({
      where: { quote: { number }, version: { gt: version } },
      orderBy: { version: 'asc' },
      take: 20,
    }),
    staffNames(),
    readWorkshop(),
  ]);
  return events.map((event) => {
    const when = formatInstant(event.at, { locale: workshop.locale, zone: workshop.timeZone });
    const who = event.actorId ? (names.get(event.actorId)?.name ?? 'staff') : event.actorKind;
    return `${when}, ${who}: ${quoteEventLine(event.kind, event.data)}`;
  });
}
