import { Notice } from '@/app/ui/page/notice';
import { formatInstant } from '@/lib/calendar/format';
import { EVENT_DATA } from '@/lib/jobs/rules/events';
import { earlierRulings } from '@/lib/warranty/earlier-rulings';
import { causeRow } from '@/lib/warranty/rules/causes';
import { RULING_WORDS } from '../words';
import type { CaseProps } from './open-case';

/** A ruling that the owner took back, why, and what it was, until there is the next one. */
export function ReopenedPart({ found, workshop }: CaseProps) {
  const { claim, job } = found;
  if (!claim.reopenedAt || claim.ruling !== null) return null;
  const event = job.events.findLast(({ kind }) => kind === 'claim-reopened');
  const earlier = earlierRulings(job.events, 'claim-reopened').at(-1);
  const when = formatInstant(claim.reopenedAt, { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <Notice kind="warn" heading={`Looked at again since ${when}`}>
      {event ? <p className="written">{EVENT_DATA['claim-reopened'].parse(event.data).reason}</p> : null}
      {earlier ? (
        <p>{`It was ruled ${RULING_WORDS[earlier.ruling]}: ${causeRow(earlier.cause).label.toLowerCase()}. The customer knows that this no longer stands.`}</p>
      ) : null}
      {claim.reasonText ? (
        <p>
          The reason we gave then: <span className="written">{claim.reasonText}</span>
        </p>
      ) : null}
    </Notice>
  );
}
