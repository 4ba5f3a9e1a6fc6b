import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { isUnread, readByCustomer } from '@/app/read-by-customer';
import { readWorkshop } from '@/app/read-workshop';
import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { type Day, day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { factsOf } from '@/lib/jobs/facts';
import { newestQuoteTokenOf } from '@/lib/jobs/private-link';
import { type JobRecord, readKind, readStage, stagesReached } from '@/lib/jobs/records';
import { endedPrice, heldPrice } from '@/lib/jobs/rules/asked-price';
import { comingOn } from '@/lib/jobs/rules/awaited-parts';
import { lastDecision } from '@/lib/jobs/rules/decision';
import { parseEvent } from '@/lib/jobs/rules/events';
import { isUnruled, type JobFacts } from '@/lib/jobs/rules/guards';
import { isClosedByTime, isCollected, isNotGone, waitsForAddress } from '@/lib/jobs/rules/handover';
import { type Done, stillDone } from '@/lib/jobs/rules/just-done';
import { parcelSearch } from '@/lib/jobs/rules/newest-search';
import { nextForCustomer } from '@/lib/jobs/rules/next-step';
import { type ParcelSearch, SEARCH_END_WORDS } from '@/lib/jobs/rules/parcel-search';
import { BEFORE_READY, LEFT_STAGES, NO_MORE_NEWS } from '@/lib/jobs/rules/stage-sets';
import { type JobKind, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { piecesToWarnOfOnJob, slipOfJob } from '@/lib/jobs/stored-recall';
import { ifMailed } from '@/lib/mail/mail-server';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { readCarrierRows } from '@/lib/parcels/records';
import { trackingAddress, transitTo } from '@/lib/parcels/rules/carriers';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { isUnchecked } from '@/lib/parcels/rules/reference';
import { keptWords } from '@/lib/promise/rules/promise-words';
import { keptPromises } from '@/lib/promise/stored-kept';
import { quoteAskedFor } from '@/lib/quotes/records';
import { agreedOf, offerOf } from '@/lib/quotes/rules/agreed';
import { isBookedAtQuote } from '@/lib/quotes/rules/asked-words';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { readClaimAgain } from '@/lib/warranty/stored-claim-again';
import { readPostageStanding } from '@/lib/warranty/stored-postage';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { RecallNotice } from '../../recall-notice';
import { AfterNoPart } from './after-no-part';
import { ApprovalPart } from './approval-part';
import { BookedPart } from './booked-part';
import { CertificatePart } from './certificate-part';
import { ClaimPart } from './claim-part';
import { FindingsPart } from './findings-part';
import { MessagesPart } from './messages-part';
import { MoneyPart } from './money-part';
import { jobOfToken } from './open-job';
import type { PartProps } from './part-props';
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
  const { locale, timeZone, currency } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
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
  const ended = readEndedPrice(job, today);
  const unit = `${job.model.maker} ${job.model.name}`;
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
  const collectedOn = job.sentBackAt && isCollected(job.events) ? dayInZone(job.sentBackAt, timeZone) : null;
  const carriers = await readCarrierRows();
  const tracking = trackingAddress(job.carrier, job.carrierReference, carriers);
  return (
    <>
      <PageHead
        title={isJustBooked ? bookedTitle(job, kind) : titleOf(facts, search)}
        lead={
          isJustBooked
            ? `Keep this page: its address is your private link. ${ifMailed('We have sent it to you by mail too.', 'We send no mail yet, so write it down or save it.')}`
            : unit
        }
        next={
          isStopped
            ? STOPPED
            : nextForCustomer(
                {
                  stage,
                  kind,
                  promisedOn: job.promisedOn ? dayFromDate(job.promisedOn) : null,
                  owed: facts.owed > 0 ? money(facts.owed) : null,
                  startAfter: facts.isStartAllowed ? null : facts.withdrawUntil,
                  ended: ended && {
                    ...ended,
                    gross: money(ended.gross),
                    on: ended.how === 'lapsed' ? ended.validUntil : dayInZone(ended.endedAt, timeZone),
                  },
                  partOn: comingOn(awaitedPartsOf(job), today),
                  offerUntil: offer ? dayFromDate(offer.validUntil) : null,
                  carrier: job.carrier,
                  transitDays: transitTo(
                    { carrier: job.carrier, from: workshop.country, to: job.customer.country },
                    carriers,
                  ),
                  isClosedByTime: isClosedByTime(job.events),
                  isCollected: collectedOn !== null,
                  waitsForAddress: waitsForAddress(job.events),
                  isNotGone: isNotGone(job.events),
                  search: search && {
                    state: search.state,
                    since: job.soughtSince && dayInZone(job.soughtSince, timeZone),
                  },
                  ruling: facts.ruling,
                  isPaidAgreed: facts.hasAgreedPaidOffer,
                  isNoFault: job.claim?.cause === 'no-fault-found',
                  isPriceOpen: !facts.isPriceAgreed,
                  isQuoted: isBookedAtQuote(job),
                  hasCertificate: job.certificates.length > 0,
                  recalled: recalledKind(recalled),
                  claimAgain,
                  decision: lastDecision(job.events)?.decision ?? null,
                },
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
      {stage === 'awaiting-approval' && offer ? <ApprovalPart {...parts} offer={offer} /> : null}
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
      <Docket
        kind={kind === 'claim' ? 'Claim job' : 'Job'}
        number={showNumber(job.number)}
        heading={unit}
        tag={<StageTag stage={stage} />}
        qr={{ text: `${config.appUrl}/track/${job.number}`, alt: 'QR code that opens the stage of this job' }}
        stubFacts={[
          { term: 'Booked', text: formatDay(dayInZone(job.bookedAt, timeZone), locale, 'short') },
          {
            term: 'Promise',
            text: job.promisedOn
              ? formatDay(dayFromDate(job.promisedOn), locale, 'weekday')
              : promiseToCome(facts),
          },
        ]}
        stamps={stampSteps({ stage, reached: stagesReached(job.events) }, { locale, timeZone })}
      >
        <Facts
          items={[
            { term: 'Repair', text: job.repair.name },
            { term: 'Agreed in', text: await quoteLink(job.id) },
            {
              term: 'Terms',
              text: job.termsId && job.termsAcceptedAt && (
                <TextLink
                  href={`/terms/${job.termsId}`}
                >{`As you agreed to them on ${formatDay(dayInZone(job.termsAcceptedAt, timeZone), locale, 'short')}`}</TextLink>
              ),
            },
            { term: 'Serial', text: <NumberText text={job.serialTyped} /> },
            { term: 'What you told us', text: <span className="written">{job.problem}</span> },
            { term: 'Promises so far', text: await promisesSoFar(parts) },
            { term: 'Promise moved', text: promiseMoved(job, locale) },
            { term: 'Sent along', text: job.accessories.map((each) => accessoryWords(each)).join(', ') },
            {
              term: 'Goes back to',
              text: [
                job.customer.name,
                ...postalLines(job.customer, countryAbroad(job.customer.country, workshop)),
              ].join(', '),
            },
            { term: 'Mail goes to', text: job.customer.email },
            { term: 'Telephone', text: job.customer.phone },
            { term: 'Collected', text: collectedOn && formatDay(collectedOn, locale, 'short') },
            { term: 'Carrier', text: job.carrier },
            {
              term: 'Carrier’s reference',
              text: job.carrierReference === '' ? null : <NumberText text={job.carrierReference} />,
            },
            { term: 'Where it is', text: tracking && <a href={tracking}>{`The page of ${job.carrier}`}</a> },
          ]}
        />
        {NO_MORE_NEWS.includes(stage) ? null : (
          <p>
            Is something of this wrong, or have you moved? Write to us below before the unit is posted back,
            and we put it right.
          </p>
        )}
      </Docket>
      {stage === 'booked' ? <BookedPart {...parts} slip={slip} claimAgain={claimAgain} /> : null}
      <WithdrawPart {...parts} />
      <CertificatePart {...parts} />
      <ClaimPart {...parts} />
      <FindingsPart {...parts} isAsked={stage === 'awaiting-approval' && Boolean(offer)} />
      <MoneyPart {...parts} />
      <MessagesPart {...parts} />
    </>
  );
}

/** The price they were asked about that ended, with what it came to and the last day of what they were told. */
function readEndedPrice(job: JobRecord, today: Day) {
  const ended = endedPrice(job.events);
  const revisions = job.quotes[0]?.revisions ?? [];
  const priced = revisions.find(({ revision }) => revision === ended?.revision);
  if (!ended || !priced) return null;
  const held = heldPrice({ events: job.events, revisions, today });
  const validUntil = dayFromDate(priced.validUntil);
  return { ...ended, gross: priced.grossMinor, validUntil, heldUntil: held?.validUntil ?? null };
}

function recalledKind(pieces: readonly { isCell: boolean }[]): 'cell' | 'part' | null {
  if (pieces.length === 0) return null;
  return pieces.some(({ isCell }) => isCell) ? 'cell' : 'part';
}

/** A unit on its way back waits all the same for the answer to a contested claim; a parcel that does not come is not on its way. */
function titleOf(facts: JobFacts, search: ParcelSearch | null): string {
  if (search?.state === 'sought') return 'We are looking for your parcel.';
  if (search?.state === 'lost') return SEARCH_END_WORDS.lost.told;
  if (facts.stage === 'declined' && isUnruled(facts)) return 'We look at your claim again.';
  return STAGE_WORDS[facts.stage].customer;
}

/** The quote that the price was agreed in, with the photos and messages that led to it. */
async function quoteLink(jobId: string) {
  const quote = await quoteAskedFor(jobId);
  const token = quote && (await newestQuoteTokenOf(quote.id));
  return token ? <TextLink href={`/quote/${token}`}>{`Quote ${showNumber(quote.number)}`}</TextLink> : null;
}

/** The promise as it was moved last, and why. */
function promiseMoved(job: JobRecord, locale: string): string | null {
  // A promise that was made when another parcel was taken in by mistake is none.
  const since = job.events.findLastIndex(({ kind }) => kind === 'arrival-undone');
  const last = job.events.slice(since + 1).findLast(({ kind }) => kind === 'promise-moved');
  const moved = last && parseEvent('promise-moved', last.data);
  if (moved?.kind !== 'promise-moved') return null;
  const { data } = moved;
  const to = formatDay(day(data.to), locale, 'weekday');
  const from = data.from === null ? '' : `, from ${formatDay(day(data.from), locale, 'weekday')}`;
  return `To ${to}${from}. ${data.reason}`;
}

/** How often promises were kept, while one is still to be kept here. */
async function promisesSoFar({ job, workshop }: Pick<PartProps, 'job' | 'workshop'>): Promise<string | null> {
  const stage = readStage(job.stage);
  const isAhead = job.promisedOn && (stage === 'awaiting-approval' || BEFORE_READY.includes(stage));
  return isAhead ? keptWords(await keptPromises(now(), workshop)) : null;
}

/** When a day is promised where none is yet; null where none is to come. */
function promiseToCome({ stage, isPriceAgreed }: JobFacts): string | null {
  if (stage === 'booked') return 'once it is here';
  const isToAgree = stage === 'awaiting-approval' || BEFORE_READY.includes(stage);
  return isToAgree && !isPriceAgreed ? 'with your yes to a price' : null;
}

function bookedTitle(job: JobRecord, kind: JobKind): string {
  if (kind === 'claim') return 'Your claim is open';
  const agreed = agreedOf(job);
  return agreed && isInspectionOnly(agreed) ? 'Your inspection is booked' : 'Your repair is booked';
}

function accessoryWords(each: { name: string; isTold: boolean; isArrived: boolean | null }): string {
  if (each.isArrived === null) return each.name;
  if (!each.isTold) return `${each.name} (came with it)`;
  return each.isArrived ? `${each.name} (here)` : `${each.name} (was not in the parcel)`;
}
