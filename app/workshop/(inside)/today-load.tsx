import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { BarLoad } from '@/app/ui/plots/bar-load';
import { formatDay, formatTick } from '@/lib/calendar/format';
import type { BenchLoad } from '@/lib/jobs/rules/bench-load';
import type { WorkshopCard } from '@/lib/workshop/card';
import { inHours } from './today-rows';

/** Work promised against the hours the bench has, and in words whether all of it can be kept. */
export function LoadPart({ load, workshop }: { load: BenchLoad; workshop: WorkshopCard }) {
  const capacity = workshop.capacityMinutesDay;
  const isEmpty = load.days.every(({ minutes }) => minutes === 0);
  return (
    <section aria-labelledby="load">
      <h2 id="load">The bench, next ten working days</h2>
      {load.short ? (
        <Notice kind="warn" heading="More is promised than the bench has">
          <p>
            {`By the end of ${formatDay(load.short.day, workshop.locale, 'weekday')} it lacks ${inHours(load.short.minutes)}, with ${inHours(capacity)} a day. Start with the oldest promise, and tell early whom it will not reach:`}{' '}
            <TextLink href="/workshop/promise/move">promises to move</TextLink>.
          </p>
        </Notice>
      ) : (
        <p>
          {isEmpty
            ? `Nothing is promised for these days. The bench has ${inHours(capacity)} a day.`
            : `All that is promised fits, with ${inHours(capacity)} of bench time a day.`}
        </p>
      )}
      <p>
        <TextLink href="/workshop/promise">How often promises are kept</TextLink>
      </p>
      <p className="text-small text-soft">
        Planned minutes less those recorded, on the day they are promised for; what is late counts today.
        {load.unpromisedMinutes > 0
          ? ` Not counted, since no day is promised for it yet: ${inHours(load.unpromisedMinutes)}.`
          : ''}
        {load.laterMinutes > 0 ? ` Promised for later days: ${inHours(load.laterMinutes)}.` : ''}
      </p>
      {isEmpty ? null : (
        <div className="max-w-[52rem]">
          <BarLoad
            caption="Bench load by day"
            days={load.days.map(({ day, minutes }) => ({
              key: day,
              label: formatTick(day, workshop.locale, 'weekday'),
              hours: minutes / 60,
              capacity: capacity / 60,
            }))}
          />
        </div>
      )}
    </section>
  );
}
