import { LinkButton } from '@/app/ui/page/button';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import { bookingsOfCustomer } from '@/lib/jobs/bookings-of-customer';
import type { JobRecord } from '@/lib/jobs/records';
import { moveOf } from '@/lib/jobs/rules/stages';
import { showNumber } from '@/lib/numbers/job-number';

/** The way out of a job that was opened for the parcel of a booking: those of the same address, and the search for another. */
export async function OfBookingPart({ job, locale }: { job: JobRecord; locale: string }) {
  const { label, consequence } = moveOf('is-of-booking');
  const bookings = await bookingsOfCustomer(job.customer.email);
  return (
    <details open={bookings.length > 0}>
      <summary>{label}</summary>
      {bookings.length > 0 ? (
        <>
          <p>Booked with the same address, and not here yet:</p>
          <ul>
            {bookings.map(({ number, unit, repair, bookedOn }) => (
              <li key={number}>
                <TextLink href={`/workshop/arrivals/${number}?opened=${job.number}`}>
                  Job <NumberText text={showNumber(number)} />
                </TextLink>
                {`, ${unit}: ${repair}, booked ${formatDay(bookedOn, locale, 'short')}`}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <p>
        <LinkButton href={`/workshop/arrivals?opened=${job.number}`} kind="second">
          Find its booking
        </LinkButton>
      </p>
      <p className="text-small text-soft">{consequence}</p>
    </details>
  );
}
