import { Timeline } from '@/app/ui/page/timeline';
import type { readLot } from '@/lib/bench/part-records';
import { lotEventLine } from '@/lib/bench/rules/lot-events';
import { formatInstant } from '@/lib/calendar/format';
import type { WorkshopCard } from '@/lib/workshop/card';

type Props = {
  lot: Pick<NonNullable<Awaited<ReturnType<typeof readLot>>>, 'events'>;
  workshop: WorkshopCard;
  names: ReadonlyMap<string, { name: string }>;
};

/** What happened to the lot beside its pieces being fitted, the newest first; nothing where nothing did. */
export function LotHistory({ lot, workshop, names }: Props) {
  if (lot.events.length === 0) return null;
  const { locale, timeZone, currency } = workshop;
  return (
    <section aria-labelledby="history" className="mt-12">
      <h2 id="history" className="mb-3">
        History
      </h2>
      <Timeline
        label="What happened to the lot"
        entries={lot.events.map((event) => ({
          key: event.id,
          dateTime: event.at.toISOString(),
          on: formatInstant(event.at, { locale, zone: timeZone }),
          who: names.get(event.userId)?.name,
          what: lotEventLine(event.kind, event.data, { locale, currency }),
        }))}
      />
    </section>
  );
}
