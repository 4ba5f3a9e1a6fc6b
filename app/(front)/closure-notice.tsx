import { Notice } from '@/app/ui/page/notice';
import { DayText } from '@/app/ui/words/day-text';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import type { WorkshopCard } from '@/lib/workshop/card';
import { readClosureToTell } from '@/lib/workshop/records';

/** Says from a fortnight before that nobody is here for some days, where somebody decides when to post; else nothing. */
export async function ClosureNotice({ workshop }: { workshop: WorkshopCard }) {
  const { locale, timeZone } = workshop;
  const closure = await readClosureToTell(workshop, dayInZone(now(), timeZone));
  if (!closure) return null;
  const { from, to, name, backOn } = closure;
  return (
    <Notice kind="note" heading={`We are closed for some days: ${name}`}>
      <p>
        {from === to ? 'On ' : 'From '}
        <DayText day={from} locale={locale} />
        {from === to ? null : (
          <>
            {' to '}
            <DayText day={to} locale={locale} />
          </>
        )}
        {' nobody is here. A parcel that comes then is taken in on '}
        <DayText day={backOn} locale={locale} />
        {', and days that we promise leave these out already.'}
      </p>
    </Notice>
  );
}
