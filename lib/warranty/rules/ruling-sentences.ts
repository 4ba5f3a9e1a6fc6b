import type { Ruling } from './causes';

/** Finished text from settings and the quote; null where no price has been worked out yet. */
export type RulingFormat = {
  /** For instance '3 working days'. */
  repairWithin: string;
  /** Gross amount of the offered paid job, or null when the offer still has to be written. */
  offeredPrice: string | null;
  /** What the customer said to that price; absent while it waits for an answer. */
  answer?: 'accepted' | 'declined' | undefined;
  /** What it costs to get the unit back unrepaired: 'free' or an amount. */
  returnPrice: string;
};

/** What a ruling means for the customer, what comes next, when and what it costs. The reason itself is written by a person. */
export function rulingSentence(ruling: Ruling, format: RulingFormat): string {
  const { repairWithin, returnPrice, answer } = format;
  if (answer !== undefined && ruling !== 'returned-free') return answeredSentence(ruling, answer, format);
  const price =
    format.offeredPrice === null ? 'We send you a price first.' : `The price is ${format.offeredPrice}.`;
  switch (ruling) {
    case 'covered':
      return `This is covered. We put it right within ${repairWithin} and send it back. You pay nothing.`;
    case 'partly':
      return `Part of this is covered. We put that part right within ${repairWithin}, and you pay nothing for it. The rest is up to you. ${price} You can say yes or no.`;
    case 'not-covered':
      return `This is not part of the cover. We can repair it as a paid job. ${price} You can say yes or no. If you say no, we send it back. Sending it back: ${returnPrice}.`;
    case 'returned-free':
      return 'On our bench the unit works as it should. We send it back to you within a few days. You pay nothing. If it happens again, tell us: a short film of it helps most.';
  }
}

/** The same once the customer has answered a price: what was asked for happens, and what it costs. */
function answeredSentence(
  ruling: Exclude<Ruling, 'returned-free'>,
  answer: 'accepted' | 'declined',
  { offeredPrice, returnPrice }: RulingFormat,
): string {
  const agreed = `You said yes to a price: ${offeredPrice ?? 'as agreed'}.`;
  switch (ruling) {
    case 'covered':
    case 'partly':
      return answer === 'accepted'
        ? `What is covered we put right, and you pay nothing for it. ${agreed} That is for the rest, and we do both in one go.`
        : 'What is covered we put right, and you pay nothing for it. The rest we leave as it is, as you asked.';
    case 'not-covered':
      return answer === 'accepted'
        ? `This is not part of the cover. ${agreed} We repair it as a paid job.`
        : `This is not part of the cover. You said no to a price, and we send it back. Sending it back: ${returnPrice}.`;
  }
}

/** Offered under every ruling that can be contested. */
export function contestSentence(answerWithin: string): string {
  return `Do you see it another way? Tell us once, here, in your own words, as long as the unit is with us. The owner looks again and answers within ${answerWithin}. It is free.`;
}

/** In its place once the unit has left, or waits to be fetched. */
export const CONTEST_OVER =
  'Do you see it another way? The unit is not on our bench any more, so please write to us below.';

/** Asked with every ruling that is covered or partly covered; the answer may add or change a check. */
export const CATCH_QUESTION = 'What would have caught this before it went back?';
