import { addDays, compareDays, type Day } from '@/lib/calendar/day';

/**
 * Units that are ready, and that nobody pays for or answers about. Glossary:
 * - told: the message that the unit is ready has left, and did not come back.
 * - notice: a letter that the unit waits, with the last day to answer it.
 * - decision: what the owner does with the unit once the last notice was not answered. Local law says what may be done.
 */
export type UnclaimedSettings = {
  /** days from being told to the first notice */
  afterDays: number;
  /** days from one notice to the next, and from the last one to the decision */
  everyDays: number;
  /** 0 turns them off */
  notices: number;
};

export type UnclaimedFacts = {
  /** null while the customer has not been told; the day they were last heard where that is later */
  toldOn: Day | null;
  /** the days of the notices that were sent, the oldest first */
  sentOn: readonly Day[];
  /** last day for which the owner decided to keep it; null without such a decision */
  keptUntil: Day | null;
};

export type UnclaimedStep =
  | { step: 'none' }
  | { step: 'wait'; until: Day }
  | { step: 'notice'; notice: number; lastDay: Day; isLast: boolean }
  | { step: 'decide'; since: Day };

/**
 * What is due about a unit that waits for its owner: the next notice, the owner's decision, or nothing before a day.
 *
 * Told on 2026-11-02, first notice after 21 days, 21 days between notices, 3 of them: notice 1 is due on 2026-11-23 and
 * names 2026-12-13 as the last day; notice 2 is due the day after. Three notices on, the owner decides.
 * Somebody who was not told gets no notice. A round that comes late gives the full time from the day it comes.
 */
export function unclaimedStep(facts: UnclaimedFacts, settings: UnclaimedSettings, today: Day): UnclaimedStep {
  const { toldOn, sentOn, keptUntil } = facts;
  const last = sentOn.at(-1);
  if (last === undefined && (toldOn === null || settings.notices === 0)) return { step: 'none' };
  const due =
    last === undefined && toldOn !== null
      ? addDays(toldOn, settings.afterDays)
      : addDays(last ?? today, settings.everyDays);
  if (compareDays(today, due) < 0) return { step: 'wait', until: due };
  const notice = sentOn.length + 1;
  if (notice <= settings.notices) {
    const isLast = notice === settings.notices;
    return { step: 'notice', notice, lastDay: lastDayOf(today, settings), isLast };
  }
  if (keptUntil !== null && compareDays(today, keptUntil) <= 0) {
    return { step: 'wait', until: addDays(keptUntil, 1) };
  }
  return { step: 'decide', since: due };
}

/** The last day to answer a notice that leaves on a day. */
export function lastDayOf(sentOn: Day, settings: Pick<UnclaimedSettings, 'everyDays'>): Day {
  return addDays(sentOn, settings.everyDays - 1);
}

export const DECISIONS = ['keep-longer', 'send-back-unpaid', 'give-away', 'recycle', 'sell'] as const;
export type Decision = (typeof DECISIONS)[number];

/** After these the unit is nobody's to use, charge or post who had it before. */
export const GONE_FOR_GOOD: readonly Decision[] = ['give-away', 'recycle', 'sell'];

/** What each decision is called, what it does, and what the customer is told. */
export const DECISION_WORDS: Record<Decision, { label: string; consequence: string; told: string }> = {
  'keep-longer': {
    label: 'Keep it longer',
    consequence: 'The unit stays here. You are asked again after the day you name.',
    told: 'We keep your unit longer.',
  },
  'send-back-unpaid': {
    label: 'Send it back all the same',
    consequence:
      'The job is ready again and may be sent back with the amount still open. It stays owed; credit it where you give it up.',
    told: 'We send your unit back to you, although there is still something to pay.',
  },
  'give-away': {
    label: 'Give it away',
    consequence: 'Closes the job. The unit leaves the house and does not come back.',
    told: 'We have given your unit away, as the law here allows.',
  },
  recycle: {
    label: 'Have it recycled',
    consequence: 'Closes the job. The unit goes to a licensed collection point, its battery apart.',
    told: 'We have had your unit recycled, as the law here allows.',
  },
  sell: {
    label: 'Sell it',
    consequence: 'Closes the job. What it fetches beyond what is owed is often the customer’s by law.',
    told: 'We have sold your unit, as the law here allows.',
  },
};

/** The words of a decision about a unit for which something is still to pay, or nothing: then nothing is said of money. */
export function decisionWords(
  decision: Decision,
  { isOwed }: { isOwed: boolean },
): (typeof DECISION_WORDS)[Decision] {
  return decision === 'send-back-unpaid' && !isOwed ? SEND_BACK_PAID : DECISION_WORDS[decision];
}

const SEND_BACK_PAID = {
  label: DECISION_WORDS['send-back-unpaid'].label,
  consequence: 'The job is ready again and may be sent back to the address it has.',
  told: 'We send your unit back to you.',
};

/** What can be done although the last notice did not reach its reader: the unit is not lost to them by it. */
const UNTOLD_DECISIONS: readonly Decision[] = ['keep-longer', 'send-back-unpaid'];

/** Whether a decision is open: a unit leaves for good only when its owner was told, by the last notice or some other way. */
export function mayDecide(decision: Decision, o: { isReached: boolean; isToldOtherwise: boolean }): boolean {
  return o.isReached || o.isToldOtherwise || UNTOLD_DECISIONS.includes(decision);
}

/** Said wherever a decision is made: the law of the place comes first. */
export const UNCLAIMED_LAW =
  'What may be done with a unit that nobody claims is set by the law of your place: how it must be announced, how long it must be kept, whether it may be sold, and to whom the money goes. Data on it stays the customer’s. Ask before anything that cannot be undone; the program only keeps what you decided.';
