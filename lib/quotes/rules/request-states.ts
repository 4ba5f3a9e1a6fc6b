/**
 * The life of a quote that was asked for, in one table. Screens, permissions, verbs and tests read it.
 *
 * state    where the quote stands
 * move     one action that takes it from one state to the next; a move to the state it is in keeps it there
 */

export const REQUEST_STATES = [
  'asked',
  'questioned',
  'quoted',
  'accepted',
  'booked',
  'declined',
  'lapsed',
  'turned-down',
] as const;
export type RequestState = (typeof REQUEST_STATES)[number];

export type RequestMoveBy = 'customer' | 'staff' | 'clock';

export type RequestMove = {
  readonly key: string;
  readonly from: readonly RequestState[];
  readonly to: RequestState;
  readonly by: RequestMoveBy;
  /** What the button says, and the consequence written under it. */
  readonly label: string;
  readonly consequence: string;
};

export const REQUEST_MOVES = [
  {
    key: 'ask-question',
    from: ['asked', 'questioned'],
    to: 'questioned',
    by: 'staff',
    label: 'Ask the customer',
    consequence: 'Sends your question by mail; the request waits on the customer until it is answered.',
  },
  {
    key: 'answer',
    from: ['questioned'],
    to: 'asked',
    by: 'customer',
    label: 'Send the answer',
    consequence: 'We read it and answer.',
  },
  {
    key: 'add',
    from: ['asked', 'questioned'],
    to: 'asked',
    by: 'customer',
    label: 'Add to the request',
    consequence: 'We read it together with what you sent before.',
  },
  {
    key: 'send-quote',
    from: ['asked', 'questioned', 'quoted', 'declined', 'lapsed'],
    to: 'quoted',
    by: 'staff',
    label: 'Send the quote',
    consequence: 'Sends the customer the price with a private link to say yes or no.',
  },
  {
    key: 'accept',
    from: ['quoted'],
    to: 'accepted',
    by: 'customer',
    label: 'Yes, at this price',
    consequence: 'The price is agreed. You book next, and pay nothing before the work is done.',
  },
  {
    key: 'decline',
    from: ['quoted'],
    to: 'declined',
    by: 'customer',
    label: 'No, thank you',
    consequence: 'Nothing is booked and nothing is owed.',
  },
  {
    key: 'accept-after-no',
    from: ['declined'],
    to: 'accepted',
    by: 'customer',
    label: 'Yes after all',
    consequence: 'The price is agreed. You book next, and pay nothing before the work is done.',
  },
  {
    key: 'lapse',
    from: ['quoted'],
    to: 'lapsed',
    by: 'clock',
    label: 'Let the price lapse',
    consequence: 'Tells the customer that the price is no longer held.',
  },
  {
    key: 'book',
    from: ['accepted'],
    to: 'booked',
    by: 'customer',
    label: 'Go on to book',
    consequence: 'A few short steps. What you told us is filled in already.',
  },
  {
    key: 'turn-down',
    from: ['asked', 'questioned', 'quoted', 'accepted', 'lapsed'],
    to: 'turned-down',
    by: 'staff',
    label: 'Turn it down',
    consequence: 'Tells the customer why, and ends it: nothing is booked and nothing is owed.',
  },
] as const satisfies readonly RequestMove[];

export type RequestMoveKey = (typeof REQUEST_MOVES)[number]['key'];

/** One row of the table: requestMove('accept').to is 'accepted'. */
export function requestMove(key: RequestMoveKey): RequestMove {
  const move = REQUEST_MOVES.find((row) => row.key === key);
  if (!move) throw new Error(`no move of a quote is called ${key}`);
  return move;
}

/** The moves somebody may make from a state, in the table's order. */
export function movesFrom(state: RequestState, by: RequestMoveBy): RequestMove[] {
  return REQUEST_MOVES.filter(
    (move) => move.by === by && (move.from as readonly RequestState[]).includes(state),
  );
}

/** Where a request waits for an answer of either side, or to be booked. */
export const WAITING_REQUESTS: readonly RequestState[] = ['asked', 'questioned', 'quoted', 'accepted'];

/** States in which the customer may add words and photos: nothing was booked or turned down. */
export const CUSTOMER_MAY_WRITE: readonly RequestState[] = [
  'asked',
  'questioned',
  'quoted',
  'accepted',
  'declined',
  'lapsed',
];

/** States in which the workshop writes beside the price; before one, its words are a question. */
export const STAFF_MAY_WRITE: readonly RequestState[] = ['quoted', 'accepted', 'declined', 'lapsed'];

/** What each state is called in the workshop, and what it says to the customer. */
export const REQUEST_WORDS: Record<RequestState, { label: string; customer: string }> = {
  asked: { label: 'Price asked', customer: 'We are working out your price' },
  questioned: { label: 'Question asked', customer: 'We have a question for you' },
  quoted: { label: 'Price sent', customer: 'Your price is here' },
  accepted: { label: 'Accepted', customer: 'You said yes to the price' },
  booked: { label: 'Booked', customer: 'Your repair is booked' },
  declined: { label: 'Declined', customer: 'You said no to the price' },
  lapsed: { label: 'Lapsed', customer: 'This price is no longer held' },
  'turned-down': { label: 'Turned down', customer: 'We cannot repair this one' },
};

/** What a state says to the customer, of an inspection alone too, and once the booking of its job was cancelled too: that a price was closed is not always that the unit cannot be repaired. */
export function customerWords(
  state: RequestState,
  {
    hasPrice,
    isCancelled,
    isInspection = false,
  }: { hasPrice: boolean; isCancelled: boolean; isInspection?: boolean },
): string {
  if (isCancelled) return 'Your booking is cancelled';
  if (state === 'booked' && isInspection) return 'Your inspection is booked';
  return state === 'turned-down' && hasPrice ? 'This quote is closed' : REQUEST_WORDS[state].customer;
}

export function isRequestState(text: string): text is RequestState {
  return (REQUEST_STATES as readonly string[]).includes(text);
}

/** Reads a stored state back; throws where a row does not fit the table. */
export function readRequestState(text: string): RequestState {
  if (isRequestState(text)) return text;
  throw new Error(`a quote is in the unknown state ${text}`);
}
