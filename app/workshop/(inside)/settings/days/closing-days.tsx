import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { addDays, type Day, day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { ClosingDayRow } from '@/lib/workshop/records';
import { type Closure, closures } from '@/lib/workshop/rules/closures';
import { addClosingDay, removeClosingDay } from '../actions';

type Props = { closingDays: readonly ClosingDayRow[]; calendar: WorkingCalendar; today: Day; locale: string };

/** The workshop's own closing days, and a look at the days off that the next twelve months hold. */
export function ClosingDays({ closingDays, calendar, today, locale }: Props) {
  const all = closures(closingDays, calendar);
  const past = all.filter(({ to }) => to < today);
  return (
    <section aria-labelledby="closing-days" className="mt-12 grid gap-6">
      <h2 id="closing-days">Closing days</h2>
      <Table
        caption="Closing days besides public holidays"
        captionHidden
        rows={all.filter(({ to }) => to >= today)}
        rowKey={(row) => row.from}
        empty="None. Add the days on which nobody is at the bench."
        columns={[
          { head: 'Days', kind: 'rowhead', cell: (row) => <Days closure={row} locale={locale} /> },
          { head: 'Why', cell: (row) => row.name },
          {
            head: 'Take off the list',
            cell: (row) => (
              <ActionForm
                action={removeClosingDay}
                hidden={{ from: row.from, to: row.to }}
                label={`Open from ${row.from} to ${row.to}`}
              >
                <SubmitButton kind="second" label="Open again" busy="Saving…" />
              </ActionForm>
            ),
          },
        ]}
      />
      <ActionForm action={addClosingDay} label="Add closing days">
        <TextField name="from" label="First day closed" type="date" width="short" />
        <TextField
          name="to"
          label="Last day closed"
          type="date"
          width="short"
          optional
          hint="Leave it empty where it is one day."
        />
        <TextField
          name="name"
          label="Why"
          hint="Customers read it beside dates that move, and on the front page from a fortnight before."
          width="half"
        />
        <SubmitButton
          label="Add closing days"
          busy="Adding…"
          consequence={
            <>
              Moves promises that are made from now on; those that stand are under{' '}
              <TextLink href="/workshop/promise/move">Promises to move</TextLink>.
            </>
          }
        />
      </ActionForm>
      <details>
        <summary>All days off in the next twelve months</summary>
        <ul className="mt-3">
          {daysOff(calendar, today).map(([off, name]) => (
            <li key={off}>
              <DayText day={off} locale={locale} />: {name}
            </li>
          ))}
        </ul>
      </details>
      {past.length === 0 ? null : (
        <details>
          <summary>Closing days that are past</summary>
          <ul className="mt-3">
            {past.toReversed().map((closure) => (
              <li key={closure.from}>
                <Days closure={closure} locale={locale} />: {closure.name}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Days({ closure: { from, to }, locale }: { closure: Closure; locale: string }) {
  if (from === to) return <DayText day={from} locale={locale} />;
  return (
    <>
      <DayText day={from} locale={locale} />
      {' to '}
      <DayText day={to} locale={locale} />
    </>
  );
}

function daysOff(calendar: WorkingCalendar, today: Day): [Day, string][] {
  const end = addDays(today, 366);
  return [...calendar.closed]
    .map(([text, name]): [Day, string] => [day(text), name])
    .filter(([off]) => off >= today && off < end)
    .sort(([a], [b]) => (a < b ? -1 : 1));
}
