import { isUnruled, type JobFacts } from './guards';
import type { Stage } from './stages';

/** What a press on the private page did, as its address keeps it: people keep that address, and open it days later. */
export const DONE = [
  'accepted',
  'declined',
  'rest-declined',
  'message',
  'reference',
  'no-reference',
  'cancelled',
  'start',
  'withdrawn',
  'contested',
  'postage',
] as const;
export type Done = (typeof DONE)[number];

export type DoneFacts = Pick<JobFacts, 'stage' | 'kind' | 'ruling' | 'hasOpenOffer'> & {
  hasReference: boolean;
  isStartAsked: boolean;
  isWithdrawn: boolean;
  isContested: boolean;
  isPostageAsked: boolean;
  /** nobody has answered the customer's last message */
  hasLastWord: boolean;
};

const GOES_AHEAD: readonly Stage[] = ['on-bench', 'awaiting-parts'];
const WAITS_TO_START: readonly Stage[] = [
  'booked',
  'arrived',
  'assessing',
  'awaiting-approval',
  'awaiting-parts',
  'on-bench',
];

const goesAhead = (facts: DoneFacts) => GOES_AHEAD.includes(facts.stage) && !facts.hasOpenOffer;

const STILL: Record<Done, (facts: DoneFacts) => boolean> = {
  accepted: goesAhead,
  'rest-declined': goesAhead,
  declined: ({ stage }) => stage === 'declined',
  message: ({ hasLastWord }) => hasLastWord,
  reference: ({ stage, hasReference }) => stage === 'booked' && hasReference,
  'no-reference': ({ stage, hasReference }) => stage === 'booked' && !hasReference,
  cancelled: ({ stage }) => stage === 'cancelled',
  start: ({ stage, isStartAsked, isWithdrawn }) =>
    WAITS_TO_START.includes(stage) && isStartAsked && !isWithdrawn,
  withdrawn: ({ stage, isWithdrawn }) => isWithdrawn && (stage === 'declined' || stage === 'cancelled'),
  contested: (facts) => facts.isContested && isUnruled(facts),
  postage: ({ isPostageAsked }) => isPostageAsked,
};

/**
 * What the page says was just done, or null where that is not true any more: a yes of last week must not stand above the
 * price that waits for the next one.
 *
 * stillDone('accepted', { stage: 'awaiting-approval', hasOpenOffer: true, … }) -> null
 */
export function stillDone(said: unknown, facts: DoneFacts): Done | null {
  const done = DONE.find((each) => each === said);
  return done && STILL[done](facts) ? done : null;
}
