import type { RequestState } from '@/lib/quotes/rules/request-states';

/**
 * How long what is known of people is kept, and what outlives it. Glossary:
 * - person: everybody who wrote under one e-mail address; each booking keeps its own copy of name and address.
 * - remove: take out name, address, ways to reach somebody, their words and photos. What was done to a unit stays.
 * - live cover: a certificate in force whose last day to claim has not passed.
 */

/** Requests for a price that nobody booked are removed after so many months; common practice, no source. */
export const REQUEST_MONTHS = 6;

/** Requests that stay longer: a price that was agreed stands until it is booked or the workshop ends it, and says so. */
export const KEPT_REQUESTS: readonly RequestState[] = ['asked', 'quoted', 'accepted', 'booked'];

/**
 * The instant a number of calendar months before another, in UTC; the last day of the month where the date does not
 * exist. monthsBefore(2026-08-31T10:00Z, 6) -> 2026-02-28T10:00Z
 */
export function monthsBefore(now: Date, months: number): Date {
  const earlier = new Date(now.getTime());
  earlier.setUTCDate(1);
  earlier.setUTCMonth(earlier.getUTCMonth() - months);
  const lastDay = new Date(Date.UTC(earlier.getUTCFullYear(), earlier.getUTCMonth() + 1, 0)).getUTCDate();
  earlier.setUTCDate(Math.min(now.getUTCDate(), lastDay));
  return earlier;
}

export type RemovalFacts = {
  /** numbers of jobs that are not closed or cancelled */
  openJobs: readonly string[];
  /** numbers of quotes that wait for an answer of either side, or to be booked */
  openQuotes: readonly string[];
  /** numbers of claims, whoever opened them, that are open on a certificate of theirs */
  openClaims: readonly string[];
  /** numbers of jobs, closed ones too, whose parcel is looked for */
  soughtParcels: readonly string[];
  /** numbers of jobs whose customer has asked for their postage, and waits for it */
  postageAsked: readonly string[];
  /** numbers of certificates whose cover lives */
  liveCover: readonly string[];
};

export type RemovalProblem =
  | 'open-job'
  | 'open-quote'
  | 'open-claim'
  | 'sought-parcel'
  | 'postage-asked'
  | 'live-cover';

/**
 * What stands against removing somebody's data; empty where nothing does. Live cover stands in the way until the owner has
 * confirmed that it can then be claimed only with the certificate in hand, and no longer be looked up by mail.
 *
 * removalProblems({ liveCover: ['W…'], and nothing else }, false) -> ['live-cover']; confirmed -> []
 */
export function removalProblems(facts: RemovalFacts, isCoverConfirmed: boolean): RemovalProblem[] {
  const problems: RemovalProblem[] = [];
  if (facts.openJobs.length > 0) problems.push('open-job');
  if (facts.openQuotes.length > 0) problems.push('open-quote');
  if (facts.openClaims.length > 0) problems.push('open-claim');
  if (facts.soughtParcels.length > 0) problems.push('sought-parcel');
  if (facts.postageAsked.length > 0) problems.push('postage-asked');
  if (facts.liveCover.length > 0 && !isCoverConfirmed) problems.push('live-cover');
  return problems;
}

export const REMOVAL_SENTENCES: Record<RemovalProblem, string> = {
  'open-job': 'A job of this person is not closed yet. Close or cancel it first.',
  'open-quote': 'A price this person asked for still waits. Turn it down or let it lapse first.',
  'open-claim':
    'A claim is open on a certificate of this person, and is compared with what is kept of their repair. Wait until it is closed.',
  'sought-parcel':
    'A parcel of this person is looked for, and they wait to hear of it. Say on the job how that ended first.',
  'postage-asked':
    'This person has asked for the postage of a claim, and said where it is to go. Pay it back first, or end it on the job with a reason.',
  'live-cover':
    'A certificate of this person still holds. Confirm that its cover can no longer be claimed by mail, or wait until it has ended.',
};

/** What removal leaves, and why; shown wherever data is removed. The law named is the reason, not advice. */
export const WHAT_STAYS: readonly { what: string; why: string }[] = [
  {
    what: 'Invoices and credit notes',
    why: 'with name and address as on the day of issue, because bookkeeping law asks for them unchanged for years (GDPR Article 17(3)(b)); local law says for how many.',
  },
  { what: 'Amounts, payments and prices agreed to', why: 'they belong to the same books.' },
  {
    what: 'Certificates, claims and their rulings',
    why: 'number, unit, serial, dates and what was found, without a name: whoever holds the paper can still claim (Article 17(3)(e)).',
  },
  {
    what: 'What was done to the unit',
    why: 'findings, work, parts, readings and the history of the job in the workshop’s words, without a name: they prove the repair and warn of bad parts.',
  },
  { what: 'Who of the staff saw the data', why: 'it holds no name or address of the person.' },
];
