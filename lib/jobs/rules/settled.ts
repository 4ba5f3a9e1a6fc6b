/** How a person says that words of a customer wait no more, without writing to them. */
export const SETTLED_BY = ['no-answer-needed', 'answered-otherwise'] as const;
export type SettledBy = (typeof SETTLED_BY)[number];

export const SETTLED_WORDS: Record<SettledBy, string> = {
  'no-answer-needed': 'Message needs no answer',
  'answered-otherwise': 'Message answered some other way',
};

type Words = { id: string; author: string; settledAt: Date | null };

/** The last message of a customer that waits for us; null where none does. Messages come oldest first. */
export function lastWaiting<M extends Words>(messages: readonly M[]): M | null {
  return messages.findLast(({ author, settledAt }) => author === 'customer' && settledAt === null) ?? null;
}
