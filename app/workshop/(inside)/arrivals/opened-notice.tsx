import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { OTHER_ADDRESS } from '@/lib/jobs/rules/one-address';
import { showNumber } from '@/lib/numbers/job-number';
import type { OpenedParcel } from './read-opened';

/** Where a parcel is taken in; of one for which a job was opened first, with that job. */
export function arrivalHref(number: string, opened: OpenedParcel | null) {
  return opened
    ? (`/workshop/arrivals/${number}?opened=${opened.number}` as const)
    : (`/workshop/arrivals/${number}` as const);
}

/** Says for which opened job a booking is looked for, or was found, or why its parcel is not that of one. */
export function OpenedNotice({ opened, isFound = false }: { opened: OpenedParcel; isFound?: boolean }) {
  const { number, unit, customer, why } = opened;
  const next = isFound
    ? 'Its photos and messages come along, and that job ends.'
    : 'Find the booking it belongs to, and take it in there.';
  return (
    <Notice
      kind={why === null ? 'note' : 'stop'}
      heading={why === null ? 'The parcel of a booking' : 'It stays a job of its own'}
    >
      <p>
        <TextLink href={`/workshop/jobs/${number}`}>
          Job <NumberText text={showNumber(number)} />
        </TextLink>
        {` was opened for it: ${unit}, from ${customer}. ${why ?? next}`}
      </p>
    </Notice>
  );
}

/** Says why a booking that was found is not that of the opened job's parcel, with the addresses and where each is put right. */
export function OtherAddressNotice(props: {
  opened: OpenedParcel;
  booking: { number: string; customer: { email: string } };
}) {
  const { opened, booking } = props;
  const jobs = [
    { number: opened.number, email: opened.email, what: 'opened for the parcel' },
    { number: booking.number, email: booking.customer.email, what: 'this booking' },
  ];
  return (
    <Notice kind="stop" heading="The booking of another address">
      <p>{OTHER_ADDRESS}</p>
      <ul>
        {jobs.map(({ number, email, what }) => (
          <li key={number}>
            {'Job '}
            <NumberText text={showNumber(number)} />
            {`, ${what}: ${email} `}
            <TextLink href={`/workshop/customers/${number}/contact`}>
              Correct the contact<span className="sr-only">{` of job ${showNumber(number)}`}</span>
            </TextLink>
          </li>
        ))}
      </ul>
      <p>
        <TextLink href={`/workshop/arrivals?opened=${opened.number}`}>Find another booking</TextLink>
      </p>
    </Notice>
  );
}
