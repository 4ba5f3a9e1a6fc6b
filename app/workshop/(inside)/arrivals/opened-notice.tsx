import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
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
