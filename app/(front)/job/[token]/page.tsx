import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { isUnread, readByCustomer } from '@/app/read-by-customer';
import { readWorkshop } from '@/app/read-workshop';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { dayInZone } from '@/lib/calendar/day';
import { workingDaysWords } from '@/lib/calendar/working';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { type JobRecord, readKind, readStage } from '@/lib/jobs/records';
import { isUnruled, type JobFacts } from '@/lib/jobs/rules/guards';
import { type Done, stillDone } from '@/lib/jobs/rules/just-done';
import { parcelSearch } from '@/lib/jobs/rules/newest-search';
import { nextForCustomer } from '@/lib/jobs/rules/next-step';
import { type ParcelSearch, SEARCH_END_WORDS } from '@/lib/jobs/rules/parcel-search';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { type JobKind, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { piecesToWarnOfOnJob, slipOfJob } from '@/lib/jobs/stored-recall';
import { ifMailed } from '@/lib/mail/mail-server';
import { readCarrierRows } from '@/lib/parcels/records';
import { isUnchecked } from '@/lib/parcels/rules/reference';
import { agreedOf, offerOf } from '@/lib/quotes/rules/agreed';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { readClaimAgain } from '@/lib/warranty/stored-claim-again';
import { readPostageStanding } from '@/lib/warranty/stored-postage';
import { RecallNotice } from '../../recall-notice';
import { AfterNoPart } from './after-no-part';
import { ApprovalPart } from './approval-part';
import { BookedPart } from './booked-part';
import { CertificatePart } from './certificate-part';
import { ClaimPart } from './claim-part';
import { DocketPart } from './docket-part';
import { FindingsPart } from './findings-part';
import { MessagesPart } from './messages-part';
import { MoneyPart } from './money-part';
import { isLookedAtAgain, isOfferOver, nextFactsOf, readEndedPrice } from './next-facts';
import { jobOfToken } from './open-job';
import { WithdrawPart } from './withdraw-part';

export const metadata: Metadata = { title: 'Your repair', robots: { index: false, follow: false } };

const doneWords = (answerWithin: string, reference: string): Record<Done, string> => ({
  accepted: `Thank you. We go ahead at this price${ifMailed(', and we have sent you a mail that says so')}.`,
  declined: 'Thank you. We pack your unit and send it back.',
  'rest-declined': 'Thank you. We repair the covered part, free of charge, and leave the rest as it is.',
  message: `Your message is here. We answer within ${answerWithin}.`,
  reference: `Thank you. We look out for your parcel.${isUnchecked(reference) ? ` ${AS_TYPED}` : ''}`,
  'no-reference': 'The number is taken off. You can give another one at any time.',
  cancelled: 'Your booking is cancelled. Nothing is owed.',
  start: 'Thank you. We start as soon as it is your unit’s turn.',
  withdrawn: `You have withdrawn from the contract.${ifMailed(' The receipt is on its way to you by mail.')}`,
  postage: 'Thank you. We pay your postage back, and write to you when we have.',
  contested: `Thank you. The owner looks again and answers within ${answerWithin}.`,
});

/** A slip in such a number is not found, so the customer is asked to look. */
const AS_TYPED =
  'We keep the number as you typed it: we cannot check one of this form, so compare it with your receipt once more.';

const STOPPED = 'Please do not post the unit. Below is why, and what to do instead.';

type Props = {
  params: Promise<{ token: string }>;
  searchParams: Promise<{ booked?: string | string[]; done?: string | string[] }>;
};

export default async function JobPage({ params, searchParams }: Props) {
  const { token } = await params;
  const { booked, done } = await searchParams;
  const job = await jobOfToken(token);
  if (!job) nothingHere();
  if (isUnread(job.messages)) await readByCustomer({ jobId: job.id });
  const workshop = await readWorkshop();
  const { locale, timeZone } = workshop;
  const today = dayInZone(now(), timeZone);
  const facts = factsOf(job, today);
  const stage = readStage(job.stage);
  const kind = readKind(job.kind);
  const isJustBooked = booked !== undefined && stage === 'booked';
  const justDone = stillDone(done, {
    ...facts,
    hasReference: job.inboundReference !== '',
    isStartAsked: job.startRequestedAt !== null,
    isWithdrawn: job.withdrawnAt !== null,
    isContested: job.claim?.contestedAt != null,
    isPostageAsked: readPostageStanding(job.claim) === 'asked',
    hasLastWord: job.messages.at(-1)?.author === 'customer',
  });
  const offer = offerOf(job);
  // A yes to it would be refused.
  const isAsked = stage === 'awaiting-approval' && offer && !isOfferOver(offer, today);
  const ended = readEndedPrice(job, today);
  const unit = unitName(job.model);
  const parts = { job, token, workshop };
  const [slip, pieces] = await Promise.all([slipOfJob(job), piecesToWarnOfOnJob(job)]);
  // Who took the battery out before posting has nothing to fear from the cell in the unit.
  const recalled = slip.isOffered ? pieces.filter((piece) => !piece.isCell) : pieces;
  const claimAgain =
    job.claim && (stage === 'booked' || stage === 'cancelled')
      ? await readClaimAgain(job.claim, { workshop, today })
      : undefined;
  const isStopped = !slip.isOffered && slip.stop !== null;
  const search = LEFT_STAGES.includes(stage) ? parcelSearch(job.events) : null;
  const carriers = await readCarrierRows();
  return (
    <>
      <PageHead
        title={
          isJustBooked
            ? bookedTitle(job, kind)
            : titleOf(facts, { search, isAgain: isLookedAtAgain(job), isOver: isOfferOver(offer, today) })
        }
        lead={
          isJustBooked
            ? `Keep this page: its address is your private link. ${ifMailed('We have sent it to you by mail too.', 'We send no mail yet, so write it down or save it.')}`
            : unit
        }
        next={
          isStopped
            ? STOPPED
            : nextForCustomer(
                nextFactsOf({ job, facts, workshop, today, ended, search, carriers, recalled, claimAgain }),
                locale,
              )
        }
      />
      <RecallNotice pieces={recalled} workshop={workshop} answer="Please answer us under Messages, below." />
      {justDone ? (
        <Notice kind="good" role="status">
          <p>{doneWords(workingDaysWords(workshop.answerDays), job.inboundReference)[justDone]}</p>
        </Notice>
      ) : null}
      {isAsked ? <ApprovalPart {...parts} offer={offer} /> : null}
      <AfterNoPart {...parts} />
      {search && search.note !== '' ? (
        <Notice kind="note" heading="What we wrote about your parcel">
          <p className="written">{search.note}</p>
        </Notice>
      ) : null}
      {ended && ended.reason !== '' ? (
        <Notice kind="note" heading="Why we took the price back">
          <p className="written">{ended.reason}</p>
        </Notice>
      ) : null}
      <DocketPart {...parts} facts={facts} carriers={carriers} />
      {stage === 'booked' ? <BookedPart {...parts} slip={slip} claimAgain={claimAgain} /> : null}
      <WithdrawPart {...parts} />
      <CertificatePart {...parts} />
      <ClaimPart {...parts} />
      <FindingsPart {...parts} isAsked={Boolean(isAsked)} />
      <MoneyPart {...parts} />
      <MessagesPart {...parts} />
    </>
  );
}

/**
 * A unit on its way back waits all the same for the answer to a contested claim; a parcel that does not come is not on its way.
 * Nobody finds out what is wrong any more once the ruling is told.
 */
function titleOf(
  facts: JobFacts,
  { search, isAgain, isOver }: { search: ParcelSearch | null; isAgain: boolean; isOver: boolean },
): string {
  if (search?.state === 'sought') return 'We are looking for your parcel.';
  if (search?.state === 'lost') return SEARCH_END_WORDS.lost.told;
  if (facts.stage === 'declined' && isUnruled(facts)) return 'We look at your claim again.';
  if (facts.stage === 'awaiting-approval' && isOver) return 'The price is no longer held.';
  if (facts.stage === 'assessing' && isAgain) return 'We look at your claim again.';
  if (facts.stage === 'assessing' && facts.ruling !== null) return 'Our ruling on your claim is here.';
  return STAGE_WORDS[facts.stage].customer;
}

function bookedTitle(job: JobRecord, kind: JobKind): string {
  if (kind === 'claim') return 'Your claim is open';
  const agreed = agreedOf(job);
  return agreed && isInspectionOnly(agreed) ? 'Your inspection is booked' : 'Your repair is booked';
}
