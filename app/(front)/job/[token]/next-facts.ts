import { compareDays, type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { type JobRecord, readKind, readStage } from '@/lib/jobs/records';
import { endedPrice, heldPrice } from '@/lib/jobs/rules/asked-price';
import { comingOn } from '@/lib/jobs/rules/awaited-parts';
import { lastDecision } from '@/lib/jobs/rules/decision';
import type { JobFacts } from '@/lib/jobs/rules/guards';
import { isClosedByTime, isCollected, isNotGone, waitsForAddress } from '@/lib/jobs/rules/handover';
import type { NextFacts } from '@/lib/jobs/rules/next-step';
import type { ParcelSearch } from '@/lib/jobs/rules/parcel-search';
import { isPromiseOver } from '@/lib/jobs/rules/promise-to-come';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { formatMoney } from '@/lib/money/amount';
import { type Carrier, transitTo } from '@/lib/parcels/rules/carriers';
import { onArrival } from '@/lib/promise/rules/on-arrival';
import type { StatedTime } from '@/lib/promise/rules/promise-words';
import { offerOf } from '@/lib/quotes/rules/agreed';
import { isBookedAtQuote } from '@/lib/quotes/rules/asked-words';
import { readRuling } from '@/lib/warranty/stored-ruling';
import type { WorkshopCard } from '@/lib/workshop/card';

/** What of a job decides the sentence that tells its customer what happens next. */
export function nextFactsOf(o: {
  job: JobRecord;
  facts: JobFacts;
  workshop: WorkshopCard;
  today: Day;
  ended: ReturnType<typeof readEndedPrice>;
  search: ParcelSearch | null;
  carriers: readonly Carrier[];
  /** pieces of it that the page warns of */
  recalled: readonly { isCell: boolean }[];
  claimAgain: NextFacts['claimAgain'];
}): NextFacts {
  const { job, facts, workshop, today, ended, search, carriers, recalled, claimAgain } = o;
  const { timeZone, currency, locale } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const offer = offerOf(job);
  const promisedOn = job.promisedOn && !isPromiseOver(facts) ? dayFromDate(job.promisedOn) : null;
  return {
    stage: readStage(job.stage),
    kind: readKind(job.kind),
    promisedOn,
    stated: statedTime(job, facts),
    isLate: promisedOn !== null && compareDays(promisedOn, today) < 0,
    owed: facts.owed > 0 ? money(facts.owed) : null,
    startAfter: facts.isStartAllowed ? null : facts.withdrawUntil,
    ended: ended && {
      ...ended,
      gross: money(ended.gross),
      on: ended.how === 'lapsed' ? ended.validUntil : dayInZone(ended.endedAt, timeZone),
    },
    partOn: comingOn(awaitedPartsOf(job), today),
    offerUntil: offer ? dayFromDate(offer.validUntil) : null,
    isOfferOver: isOfferOver(offer, today),
    isPosted: job.inboundReference !== '',
    carrier: job.carrier,
    transitDays: transitTo(
      { carrier: job.carrier, from: workshop.country, to: job.customer.country },
      carriers,
    ),
    isClosedByTime: isClosedByTime(job.events),
    isCollected: collectedOnOf(job, timeZone) !== null,
    waitsForAddress: waitsForAddress(job.events),
    isNotGone: isNotGone(job.events),
    search: search && {
      state: search.state,
      since: job.soughtSince && dayInZone(job.soughtSince, timeZone),
    },
    ruling: facts.ruling,
    isLookedAtAgain: isLookedAtAgain(job),
    isPaidAgreed: facts.hasAgreedPaidOffer,
    isNoFault: isNoFault(job),
    isPriceOpen: !facts.isPriceAgreed,
    isQuoted: isBookedAtQuote(job),
    hasCertificate: job.certificates.length > 0,
    recalled: recalledKind(recalled),
    claimAgain,
    decision: lastDecision(job.events)?.decision ?? null,
  };
}

function statedTime(job: JobRecord, facts: JobFacts): StatedTime | null {
  if (readKind(job.kind) === 'claim') return null;
  const { quotedDays } = onArrival(job);
  return {
    days: quotedDays ?? job.repair.workingDays,
    isQuoted: quotedDays !== null,
    waitsUntil: facts.isStartAllowed ? null : facts.withdrawUntil,
  };
}

/** The last day of an open price has passed; within the hour the clock lets it lapse (lib/jobs/start-clock.ts). */
export function isOfferOver(offer: { validUntil: Date } | undefined, today: Day): boolean {
  return offer !== undefined && compareDays(dayFromDate(offer.validUntil), today) < 0;
}

/** A ruling of the claim was told once and ended, by a contest or by the owner, and the next one is to come. */
export function isLookedAtAgain({ claim }: Pick<JobRecord, 'claim'>): boolean {
  if (!claim || readRuling(claim)?.isFinal) return false;
  return claim.contestedAt !== null || claim.reopenedAt !== null;
}

/** What was found on a claim is that the unit works. */
export function isNoFault({ claim }: Pick<JobRecord, 'claim'>): boolean {
  return claim?.cause === 'no-fault-found';
}

/** The day on which the customer collected the unit in person; null where they did not. */
export function collectedOnOf(job: JobRecord, timeZone: string): Day | null {
  return job.sentBackAt && isCollected(job.events) ? dayInZone(job.sentBackAt, timeZone) : null;
}

/** The price they were asked about that ended, with what it came to and the last day of what they were told. */
export function readEndedPrice(job: JobRecord, today: Day) {
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
