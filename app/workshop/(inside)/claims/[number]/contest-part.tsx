import { Notice } from '@/app/ui/page/notice';
import { formatInstant } from '@/lib/calendar/format';
import { EVENT_DATA } from '@/lib/jobs/rules/events';
import { toldWhen } from '@/lib/jobs/rules/told';
import { earlierRulings } from '@/lib/warranty/earlier-rulings';
import { causeRow } from '@/lib/warranty/rules/causes';
import { RULING_WORDS } from '../words';
import type { CaseProps } from './open-case';

/** What the customer says against a ruling, with that ruling and its reason: read before anything else. */
export function ContestPart({ found, workshop }: CaseProps) {
  const { claim, job } = found;
  if (!claim.contestedAt) return null;
  const isReopened = claim.reopenedAt !== null && claim.reopenedAt > claim.contestedAt;
  const earlier = earlierRulings(job.events).at(-1);
  const contested = job.events.findLast(({ kind }) => kind === 'claim-contested');
  const told = contested && EVENT_DATA['claim-contested'].parse(contested.data).told;
  const when = formatInstant(claim.contestedAt, { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <Notice kind="warn" heading={`The customer sees it another way, ${when}`}>
      <p className="written">{claim.contestText}</p>
      {told ? (
        <p>{`They told us ${toldWhen(told, workshop.locale)}, and it was written down here in their words.`}</p>
      ) : null}
      {earlier ? (
        <p>{`It was ruled ${RULING_WORDS[earlier.ruling]}: ${causeRow(earlier.cause).label.toLowerCase()}.`}</p>
      ) : null}
      {claim.ruling === null && claim.reasonText && !isReopened ? (
        <p>
          The reason we gave: <span className="written">{claim.reasonText}</span>
        </p>
      ) : null}
      <p>A ruling can be contested once. The next one stands.</p>
    </Notice>
  );
}
