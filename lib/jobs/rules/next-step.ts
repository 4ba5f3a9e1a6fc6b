import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { type StatedTime, statedTimeWords } from '@/lib/promise/rules/promise-words';
import type { ClaimAgain } from '@/lib/warranty/rules/claim-again';
import { KEEP_POSTAGE_RECEIPT } from '@/lib/warranty/rules/postage-words';
import { againWords } from './again-words';
import { isUnruled, type JobFacts } from './guards';
import type { SearchEnd } from './parcel-search';
import { lookAtParcel, postingSentence } from './posting-words';
import { NOT_WITH_US } from './stage-sets';
import type { JobKind, Stage } from './stages';
import { DECISION_WORDS, type Decision } from './unclaimed';

export type NextFacts = {
  stage: Stage;
  kind: JobKind;
  promisedOn: Day | null;
  /** of a booked repair, while no day is promised; null of a claim, whose ruling comes first */
  stated?: StatedTime | null;
  /** that day has passed */
  isLate?: boolean;
  /** still to pay, as text, or null when nothing is owed */
  owed: string | null;
  /** while the customer may withdraw and did not ask for an early start: work begins after this day */
  startAfter: Day | null;
  /** the price they were asked about ended without an answer, and nothing was sent since: it, and the day it holds until still; on: the last day it held, or the day it was taken back */
  ended?: { gross: string; how: 'lapsed' | 'taken-back'; on: Day; heldUntil: Day | null } | null;
  /** the day a missing part should be here, where one is known and not past */
  partOn?: Day | null;
  /** when a sent offer stops being valid */
  offerUntil: Day | null;
  /** that day has passed, and the clock has not come round to let it lapse */
  isOfferOver?: boolean;
  /** the customer has given the number of a parcel on its way here */
  isPosted?: boolean;
  carrier: string;
  /** working days that its parcel usually travels at most */
  transitDays: number;
  /** it counts as delivered because time passed, and nobody has said that it came */
  isClosedByTime?: boolean;
  /** the customer fetched the unit here */
  isCollected?: boolean;
  /** its carrier brought the parcel back, and the customer has not said yet whether their address is right */
  waitsForAddress?: boolean;
  /** they were told that it had left, or that they collected it, and it is here */
  isNotGone?: boolean;
  /** how the search for their parcel stands, and since when it is looked for; null where none was begun */
  search?: { state: 'sought' | SearchEnd; since: Day | null } | null;
  /** the final ruling of a claim, or null */
  ruling: JobFacts['ruling'];
  /** a ruling was told before: the customer contested it, or the owner took it back */
  isLookedAtAgain?: boolean;
  /** the customer has said yes to no price yet: the parcel came without a booking */
  isPriceOpen?: boolean;
  /** a paid price stands on a claim, whatever was ruled since */
  isPaidAgreed?: boolean;
  /** the unit works on the bench */
  isNoFault?: boolean;
  /** booked at a price that was asked for, and not from the price list */
  isQuoted?: boolean;
  hasCertificate: boolean;
  /** of a claim that was cancelled: whether it can be opened again */
  claimAgain?: ClaimAgain | undefined;
  /** a piece of a recalled lot is in a unit that is with its customer: a cell, or another part */
  recalled?: 'cell' | 'part' | null;
  /** what the owner decided about a unit that nobody fetched, or null */
  decision: Decision | null;
};

/**
 * What happens next, when, and what it costs: one or two sentences for the customer at every stage.
 *
 * nextForCustomer({ stage: 'ready', owed: '£96.00', … }, 'en-GB')
 *   -> 'We post it on the working day after your payment is here. £96.00 is left to pay. How to pay is below.'
 */
export function nextForCustomer(facts: NextFacts, locale: string): string {
  const by = promised(facts, locale);
  const wait = facts.startAfter
    ? ` Work starts after ${formatDay(facts.startAfter, locale, 'weekday')}, when your right to withdraw ends. You can ask us below to start before.`
    : '';
  const free = facts.kind === 'claim' ? claimCost(facts) : '';
  if (facts.recalled && NOT_WITH_US.includes(facts.stage)) {
    const missing = missingWords(facts, locale);
    return missing === null
      ? recallFirst(facts.recalled, facts.owed)
      : `${missing} ${shouldItCome(facts.recalled)}`;
  }
  switch (facts.stage) {
    case 'booked':
      return `${facts.isPosted ? POSTED : TO_POST} ${onArrival(facts, locale)}${facts.kind === 'claim' ? ` Our inspection costs you nothing. ${KEEP_POSTAGE_RECEIPT}` : ''}`;
    case 'arrived':
      if (facts.isPriceOpen) return `We look at it in its turn. ${ASKED_FIRST}`;
      return `We look at it in its turn.${by}${wait}${free}`;
    case 'assessing':
      if (facts.ended) return endedWords(facts.ended, locale);
      if (facts.isPriceOpen) return `We find out what is wrong. ${ASKED_FIRST}`;
      return facts.kind === 'claim'
        ? assessingClaim(facts, by)
        : `We find out what is wrong.${by}${wait} If it needs more than you booked, we ask you first.`;
    case 'awaiting-approval':
      if (facts.isOfferOver && facts.offerUntil)
        return `The price held until ${formatDay(facts.offerUntil, locale, 'weekday')}, and no answer came. We write to you about it today. Want it at that price, or the unit back as it is? Write to us below.`;
      return `Please say yes or no below${facts.offerUntil ? ` by ${formatDay(facts.offerUntil, locale, 'weekday')}` : ''}. Until then your unit is safe here and nothing is charged. The time we wait for your answer is not counted in our promise.`;
    case 'awaiting-parts':
      return `We go on as soon as the part is here.${facts.partOn ? ` We expect it by ${formatDay(facts.partOn, locale, 'weekday')}.` : ''}${by}${free}`;
    case 'on-bench':
    case 'proving':
      return `Once it is repaired, it has to pass its tests before we call it ready, and we write to you then.${by}${wait}${free}`;
    case 'ready':
      return ready(facts, free);
    case 'sent-back':
      if (facts.search?.state === 'sought') return sought(facts, locale);
      return `${facts.carrier === '' ? 'It' : `${facts.carrier} has it. It`} usually arrives within ${facts.transitDays} working days. If it has not come by then, write to us here. ${lookAtParcel('here')}`;
    case 'closed':
      return closed(facts, locale);
    case 'cancelled':
      return `Nothing is owed. ${againWords({ kind: facts.kind, isQuoted: facts.isQuoted ?? false, claim: facts.claimAgain }, locale)}`;
    case 'declined':
      if (isUnruled(facts))
        return `We are looking at your claim again. We write to you with the answer and its reasons; until then your unit stays here.${facts.owed === null ? ' This costs you nothing.' : ''}`;
      if (facts.kind === 'claim' && facts.owed === null)
        return 'We are packing your unit. It comes back free of charge.';
      return facts.owed === null
        ? 'We are packing your unit. It comes back, and nothing is left to pay.'
        : `We are packing your unit. It comes back once ${facts.owed} has reached us; what that is for is below.`;
    case 'unclaimed':
      return unclaimed(facts);
  }
}

const TO_POST =
  'Print the packing slip, or write the job number on a piece of paper, and post the unit to us.';
const POSTED = 'Your parcel is on its way, and we look out for it.';

function onArrival({ stated }: NextFacts, locale: string): string {
  return stated ? statedTimeWords(stated, locale) : 'We write to you the day it arrives.';
}

/** The day that was promised; once it has passed, that too, since nobody waits well who is told an old day. */
function promised({ promisedOn, isLate = false }: NextFacts, locale: string): string {
  if (promisedOn === null) return '';
  const day = formatDay(promisedOn, locale, 'weekday');
  return isLate
    ? ` We promised to have it ready by ${day}, and are late. We are sorry. Do you need it by a certain day? Write to us below.`
    : ` We promised to have it ready by ${day}.`;
}

/** As the mail says that tells of it. */
function endedWords(ended: NonNullable<NextFacts['ended']>, locale: string): string {
  const on = formatDay(ended.on, locale, 'weekday');
  if (ended.how === 'lapsed')
    return `The price of ${ended.gross} that we asked you about is no longer held: it held until ${on}, and no answer came. We send you a new one within a few days. Want it at that price, or the unit back as it is? Write to us below.`;
  const held = ended.heldUntil
    ? ` Until ${formatDay(ended.heldUntil, locale, 'weekday')} it is not higher, unless you ask for a change or we find another fault.`
    : '';
  return `We took the price of ${ended.gross} back on ${on}, and you need not answer it. We send you a new one within a few days.${held} Want the unit back as it is? Write to us below.`;
}

/** Whatever else is to be said of a unit that is with its customer, that a part of it is in doubt comes first. One whose parcel has not come is not. */
function recallFirst(recalled: 'cell' | 'part', owed: string | null): string {
  const first =
    recalled === 'cell'
      ? 'Please stop using the unit, do not charge it and do not post it.'
      : 'Please stop using the unit.';
  const left = owed === null ? '' : ` ${leftToPay(owed)}`;
  return `${first} Read what we say below about a part in it, and answer us there. Putting it right costs you nothing.${left}`;
}

/** The warning behind what is said of a parcel that has not come: nobody can stop using what they do not have. */
function shouldItCome(recalled: 'cell' | 'part'): string {
  const warned =
    recalled === 'cell'
      ? 'please do not use it, do not charge it and do not post it'
      : 'please do not use it';
  return `Should it come after all, ${warned}: read what we say below about a part in it.`;
}

const ASKED_FIRST =
  'Then we send you a price. Nothing is repaired before you say yes to it, and until then you pay nothing.';

/** Before the ruling, how it comes about; after it, what follows from it. */
function assessingClaim(facts: NextFacts, by: string): string {
  const { ruling, owed, isPaidAgreed = false } = facts;
  const asAgreed = `at the price you agreed to.${by} ${owed === null ? 'You have paid for it.' : `For that you pay ${owed} when it is ready.`}`;
  const free = claimCost(facts);
  switch (ruling) {
    case null:
      return `${facts.isLookedAtAgain ? 'We look at it again and write to you with our answer and its reasons.' : 'We find out why it failed and tell you our ruling with the reasons.'}${free}`;
    case 'covered':
      return `Your claim is covered, and we repair it in its turn.${by}${free}`;
    case 'partly':
      if (isPaidAgreed)
        return `We repair the covered part, which costs you nothing, and the rest ${asAgreed}`;
      return owed === null
        ? `We repair the covered part.${by} It costs you nothing. For the rest we send you a price, and you say yes or no to it.`
        : `We repair the covered part.${by}${free}`;
    case 'not-covered':
      if (facts.isNoFault && !isPaidAgreed)
        return `It works on our bench. We pack it and send it back.${free}`;
      if (isPaidAgreed) return `The certificate does not cover this. We repair it ${asAgreed}`;
      return 'The certificate does not cover this. If you want it repaired all the same, we send you a price, and you say yes or no to it. After a no it comes back free of charge. Until you say yes you pay nothing.';
    case 'returned-free':
      return `It works on our bench. We pack it and send it back.${free}`;
  }
}

const ASKED_ADDRESS =
  'Please write to us below whether the address under “Goes back to” is right. We send it again on the working day after your answer.';

function ready(facts: NextFacts, free: string): string {
  const { owed, decision, waitsForAddress = false, isNotGone = false, hasCertificate } = facts;
  if (waitsForAddress) {
    const stands = hasCertificate ? ' Your certificate stands as it was issued.' : '';
    return `Your parcel came back to us undelivered. ${ASKED_ADDRESS} You owe nothing for this now; if sending it again costs something, we ask you first.${stands}`;
  }
  const reference = 'You get the carrier’s reference by mail.';
  const here = isNotGone
    ? 'We wrote that your unit had left us. That was a mistake of ours: it is here. '
    : '';
  if (owed === null) return `${here}${postingSentence(false)} ${reference}${free}`;
  return decision === 'send-back-unpaid'
    ? `${here}${postingSentence(false)} ${reference} ${owed} stays owed. How to pay is below.`
    : `${here}${postingSentence(true)} ${leftToPay(owed)}`;
}

/** What a unit that nobody answered about waits for: an address, the money, or a word from its customer. */
function unclaimed({ owed, decision, waitsForAddress = false }: NextFacts): string {
  const isWaived = decision === 'send-back-unpaid';
  if (waitsForAddress) {
    const left = owed === null ? '' : isWaived ? ` ${owed} stays owed.` : ` ${leftToPay(owed)}`;
    return `Your parcel came back to us undelivered, and your unit waits here. ${ASKED_ADDRESS}${left}`;
  }
  return owed === null || isWaived
    ? 'Your unit waits here to go back to you. Please write to us here whether we can send it.'
    : `Your unit waits here for your payment. ${postingSentence(true)} ${leftToPay(owed)} If something stands in the way, write to us here.`;
}

function leftToPay(owed: string): string {
  return `${owed} is left to pay. How to pay is below.`;
}

/** A parcel that has not come, while its carrier is asked. */
function sought({ search, carrier, owed }: NextFacts, locale: string): string {
  const since = search?.since ? ` since ${formatDay(search.since, locale, 'weekday')}` : '';
  const left = owed === null ? '' : ` ${leftToPay(owed)}`;
  return `We ask ${carrier === '' ? 'the carrier' : carrier} for it${since}, and write to you as soon as we know what became of it. Has it reached you, or do you find a card from the carrier? Write to us below.${left}`;
}

function lost({ owed }: NextFacts): string {
  const left = owed === null ? '' : ` ${leftToPay(owed)}`;
  return `We looked for it with the carrier, and it was not found. We are sorry. What we do about it stands below. Do you see it otherwise? Write to us there.${left}`;
}

/** What is said of a parcel that has not come; null where it came, or nobody looks for it. */
function missingWords(facts: NextFacts, locale: string): string | null {
  switch (facts.search?.state) {
    case 'sought':
      return sought(facts, locale);
    case 'lost':
      return lost(facts);
    default:
      return null;
  }
}

const NOT_COME = 'Has it not come, or did it come damaged? Write to us below.';

function closed(facts: NextFacts, locale: string): string {
  const missing = missingWords(facts, locale);
  if (missing !== null) return missing;
  return facts.isClosedByTime ? `${closedWords(facts)} ${NOT_COME}` : closedWords(facts);
}

function closedWords({ owed, hasCertificate, decision, kind, isCollected = false }: NextFacts): string {
  const left = owed === null ? 'There is nothing left to do.' : leftToPay(owed);
  if (decision === 'give-away' || decision === 'recycle' || decision === 'sell') {
    return `${left} ${DECISION_WORDS[decision].told} We wrote to you about it.`;
  }
  if (hasCertificate) {
    const fetched = isCollected ? 'You collected your unit. ' : '';
    return `${left} ${fetched}Keep the certificate: if it fails again, it opens your claim.`;
  }
  return kind === 'claim'
    ? `${left} The certificate you have stands as it did.`
    : `${left} ${isCollected ? 'You collected your unit.' : 'Your unit went back to you.'}`;
}

/** On a claim the covered part is free whatever else was agreed; only a price the customer said yes to is paid, and says so after it is. */
function claimCost({ ruling, owed, isPaidAgreed = false }: NextFacts): string {
  if (owed === null && !isPaidAgreed) return ' This costs you nothing.';
  switch (ruling) {
    case null:
      return owed === null
        ? ' What you have paid comes back to you if it is covered.'
        : ' You pay nothing before you have our ruling.';
    case 'covered':
    case 'partly':
      return owed === null
        ? ' The covered part costs you nothing, and you have paid for the rest.'
        : ` The covered part costs you nothing. For the rest you pay ${owed} when it is ready, as you agreed.`;
    case 'not-covered':
    case 'returned-free':
      return owed === null ? ' You have paid for it.' : ` You pay ${owed} when it is ready, as you agreed.`;
  }
}
