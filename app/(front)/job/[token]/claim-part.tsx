import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { NumberText } from '@/app/ui/words/number-text';
import { workingDaysWords } from '@/lib/calendar/working';
import { factsOf } from '@/lib/jobs/facts';
import { readStage } from '@/lib/jobs/records';
import { mayMove } from '@/lib/jobs/rules/guards';
import { isBackWithUs, isNotGone, wasAway } from '@/lib/jobs/rules/handover';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { answerToOffer } from '@/lib/quotes/rules/answer-to-offer';
import { claimFormat } from '@/lib/warranty/claim-format';
import { CAUSE_TOLD } from '@/lib/warranty/rules/causes';
import { claimEnd } from '@/lib/warranty/rules/claim-end';
import { inspectedWords } from '@/lib/warranty/rules/inspection';
import { sentence } from '@/lib/warranty/rules/reason-sentences';
import { afterCover, mayContest } from '@/lib/warranty/rules/ruling';
import {
  CONTEST_OVER,
  CONTEST_OVER_HERE,
  contestSentence,
  rulingSentence,
} from '@/lib/warranty/rules/ruling-sentences';
import { symptomWords } from '@/lib/warranty/rules/standing';
import { readAssessment } from '@/lib/warranty/stored-assessment';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { contest } from './actions';
import type { PartProps } from './part-props';
import { isSentOtherwise, photosOf, SENT_OTHERWISE } from './photos-of';
import { PostagePart } from './postage-part';

/** A claim job's own part: the preliminary answer as it was given, the ruling with its reasons, and the one contest. */
export function ClaimPart({ job, token, workshop }: PartProps) {
  const { claim } = job;
  if (!claim) return null;
  const format = claimFormat(workshop);
  const ruled = readRuling(claim);
  const isTold = ruled?.isFinal === true;
  const asked = claim.ruledAt ? answerToOffer(job.quotes[0]?.revisions ?? [], claim.ruledAt) : null;
  const mayAsk = mayMove('contest', factsOf(job), 'customer').allowed;
  return (
    <section aria-labelledby="claim">
      <h2 id="claim">Your claim</h2>
      <Facts
        items={[
          { term: 'Claim', text: <NumberText text={showNumber(claim.number)} /> },
          { term: 'On certificate', text: <NumberText text={showNumber(claim.certificateNumber)} /> },
          {
            term: 'What you told us',
            text: [symptomWords(claim.symptom), claim.details].filter((text) => text !== '').join('. '),
          },
          {
            term: 'How you see it',
            text: claim.contestText && <span className="written">{claim.contestText}</span>,
          },
        ]}
      />
      <PhotoStrip
        label="Your photos"
        photos={photosOf(job, token, (photo) => photo.purpose === 'claim' && !isSentOtherwise(photo))}
      />
      <PhotoStrip label={SENT_OTHERWISE} photos={photosOf(job, token, isSentOtherwise)} />
      <h3>What we could say before seeing it</h3>
      <ul className="plain-list">
        {readAssessment(claim.preliminary).reasons.map((reason) => (
          <li key={sentence(reason, format)}>{sentence(reason, format)}</li>
        ))}
      </ul>
      <h3>{isTold ? 'Our ruling' : 'Our ruling is still to come'}</h3>
      {isTold ? (
        <>
          <p>
            {rulingSentence(ruled.ruling, {
              repairWithin: workingDaysWords(job.repair.workingDays),
              offeredPrice: asked ? formatMoney(asked.gross, workshop.currency, workshop.locale) : null,
              answer: asked && asked.answer !== 'waiting' ? asked.answer : undefined,
              returnPrice: 'free',
              end: endOf(job),
              afterCover: afterCover({ ...ruled, isLetIn: claim.isLetIn }),
            })}
          </p>
          {claim.reasonText ? <p className="written">{claim.reasonText}</p> : null}
          <Facts
            items={[
              {
                // After the cover had ended its day decides, and not what failed.
                term: afterCover({ ...ruled, isLetIn: claim.isLetIn }) ? 'What we found' : 'Cause',
                text: CAUSE_TOLD[ruled.cause],
              },
            ]}
          />
          <PhotoStrip
            label="Photos of the inspection"
            photos={photosOf(
              job,
              token,
              (photo) => photo.purpose === 'inspection',
              (photo) => inspectedWords(claim.inspection, photo.id),
            )}
          />
          <PostagePart job={job} token={token} workshop={workshop} />
        </>
      ) : (
        <p>{toComeWords(claim, format.answerWithin)}</p>
      )}
      {/* Also once it is paid back or ended, and while a new ruling is to come: it is what they sent us. */}
      <PhotoStrip
        label="Your receipt for the postage"
        photos={photosOf(job, token, ({ purpose }) => purpose === 'receipt')}
      />
      {mayAsk ? (
        <ActionForm action={contest.bind(null, token)} label="Ask us to look again">
          <ConfirmButton
            label="I see it another way"
            question={contestSentence(format.answerWithin)}
            confirm="Ask the owner to look again"
            consequence="Free, and once for each claim."
          >
            <TextArea name="text" label="How do you see it?" maxLength={4000} rows={4} />
          </ConfirmButton>
        </ActionForm>
      ) : isTold &&
        mayContest({ ruling: ruled.ruling, timesContested: claim.contestedAt ? 1 : 0 }).allowed ? (
        <p>{isNotGone(job.events) ? CONTEST_OVER_HERE : CONTEST_OVER}</p>
      ) : null}
    </section>
  );
}

/** When the ruling comes: the first one, or the one after a ruling that the customer contested or we took back. */
function toComeWords(
  claim: Pick<NonNullable<PartProps['job']['claim']>, 'contestedAt' | 'reopenedAt'>,
  answerWithin: string,
): string {
  const { contestedAt, reopenedAt } = claim;
  if (reopenedAt && (!contestedAt || reopenedAt > contestedAt))
    return `We took our ruling back and wrote to you why. The new one comes within ${answerWithin}.`;
  return contestedAt
    ? `You asked us to look again. The owner answers within ${answerWithin}.`
    : `We look at it within ${answerWithin} after it arrives.`;
}

/** What became of the claim, from its job's history. */
function endOf({ stage, events }: PartProps['job']) {
  return claimEnd({
    stage: readStage(stage),
    isRepaired: isRepaired(events),
    isGone: wasAway(events) && !isBackWithUs(events),
    isStopped: events.some(({ kind }) => kind === 'repair-stopped' || kind === 'withdrawn'),
  });
}
