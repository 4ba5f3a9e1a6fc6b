import type { Ruling } from './causes';
import type { ClaimEnd } from './claim-end';
import type { AfterCover } from './ruling';

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
  /** what became of the claim; absent while what the ruling announces is still to come */
  end?: ClaimEnd | null;
  /** the claim came after cover had ended and was not let in */
  afterCover?: AfterCover | null;
};

/** What a ruling means for the customer, what comes next, when and what it costs. The reason itself is written by a person. */
export function rulingSentence(ruling: Ruling, format: RulingFormat): string {
  const { repairWithin, returnPrice, answer, end } = format;
  if (end) return endedSentence(ruling, end, format);
  if (answer !== undefined && ruling !== 'returned-free') return answeredSentence(ruling, answer, format);
  const price =
    format.offeredPrice === null ? 'We send you a price first.' : `The price is ${format.offeredPrice}.`;
  switch (ruling) {
    case 'covered':
      return `This is covered. We put it right within ${repairWithin} and send it back. You pay nothing.`;
    case 'partly':
      return `Part of this is covered. We put that part right within ${repairWithin}, and you pay nothing for it. The rest is up to you. ${price} You can say yes or no.`;
    case 'not-covered':
      if (format.afterCover === 'no-fault') return `${ENDED} ${WORKS}`;
      return `${ground(format)} We can repair it as a paid job. ${price} You can say yes or no. If you say no, we send it back. Sending it back: ${returnPrice}.`;
    case 'returned-free':
      return WORKS;
  }
}

/** Its customer's page takes photos; a film is larger than a form can take. */
const TELL_US =
  'If it happens again, tell us: a short film helps most, sent in answer to our mail, or a few photos here.';
const WORKED = 'On our bench the unit works as it should.';
const WORKS = `${WORKED} We send it back to you within a few days. You pay nothing. ${TELL_US}`;
const ENDED =
  'The cover had ended when you opened this claim, so the certificate does not cover it any more.';

/** Why a claim is not covered: by its day, or by what failed. */
function ground({ afterCover }: RulingFormat): string {
  return afterCover ? ENDED : 'This is not part of the cover.';
}

function verdictOf(ruling: Ruling, format: RulingFormat): string {
  switch (ruling) {
    case 'covered':
      return 'This is covered.';
    case 'partly':
      return 'Part of this is covered.';
    case 'not-covered':
      return format.afterCover === 'no-fault' ? `${ENDED} ${WORKED}` : ground(format);
    case 'returned-free':
      return WORKED;
  }
}

/** The same once the claim has ended: what was done, and nothing that is to come. */
function endedSentence(ruling: Ruling, end: ClaimEnd, format: RulingFormat): string {
  const verdict = verdictOf(ruling, format);
  switch (end) {
    case 'repaired':
      return `${verdict} ${repairedSentence(ruling, format)}`.trim();
    case 'stopped':
      return `${verdict} The repair was stopped, and we wrote to you about it. The unit goes back unrepaired.`;
    case 'stopped-left':
      return `${verdict} The repair was stopped, and we wrote to you about it. The unit went back unrepaired.`;
    case 'left':
      if (ruling === 'returned-free' || format.afterCover === 'no-fault')
        return `${verdict} It went back to you, and you pay nothing. ${TELL_US}`;
      return `${verdict} ${format.answer === 'declined' ? 'You said no to a price, and the unit' : 'The unit'} went back unrepaired. Sending it back: ${format.returnPrice}.`;
    case 'kept':
      return `${verdict} We wrote to you what became of the unit.`;
  }
}

function repairedSentence(ruling: Ruling, { answer, offeredPrice }: RulingFormat): string {
  const agreed = `You said yes to a price: ${offeredPrice ?? 'as agreed'}.`;
  if (ruling === 'returned-free') return '';
  if (ruling === 'not-covered')
    return answer === 'accepted' ? `${agreed} We repaired it as a paid job.` : 'We repaired it.';
  if (answer === 'accepted')
    return `What is covered we put right, and you pay nothing for it. ${agreed} That was for the rest, and we did both in one go.`;
  if (ruling === 'covered' && answer === undefined) return 'We put it right, and you pay nothing.';
  return 'What is covered we put right, and you pay nothing for it. The rest we left as it is.';
}

/** The same once the customer has answered a price: what was asked for happens, and what it costs. */
function answeredSentence(
  ruling: Exclude<Ruling, 'returned-free'>,
  answer: 'accepted' | 'declined',
  format: RulingFormat,
): string {
  const { offeredPrice, returnPrice } = format;
  const agreed = `You said yes to a price: ${offeredPrice ?? 'as agreed'}.`;
  switch (ruling) {
    case 'covered':
    case 'partly':
      return answer === 'accepted'
        ? `What is covered we put right, and you pay nothing for it. ${agreed} That is for the rest, and we do both in one go.`
        : 'What is covered we put right, and you pay nothing for it. The rest we leave as it is, as you asked.';
    case 'not-covered':
      return answer === 'accepted'
        ? `${ground(format)} ${agreed} We repair it as a paid job.`
        : `${ground(format)} You said no to a price, and we send it back. Sending it back: ${returnPrice}.`;
  }
}

/**
 * Asked of whoever is about to make a ruling that nobody looks at a second time. A cause that is not covered may lead there too, where
 * the evidence does not carry it.
 */
export function toldAtOnceSentence({ isByDoubt }: { isByDoubt: boolean }): string {
  const because = isByDoubt
    ? 'The evidence is unclear, or no photo shows it, so this rules the claim covered.'
    : 'This rules the claim covered.';
  return `${because} The customer is told at once, and nobody looks at it a second time. Tick that it is right, and send it again.`;
}

/** Offered under every ruling that can be contested. */
export function contestSentence(answerWithin: string): string {
  return `Do you see it another way? Tell us once, here, in your own words, as long as the unit is with us. The owner looks again and answers within ${answerWithin}. It is free.`;
}

/** In its place once the unit has left, or waits to be fetched. */
export const CONTEST_OVER =
  'Do you see it another way? The unit is not on our bench any more, so please write to us below.';

/** In its place where the unit is here, since it never left, but a certificate was issued when it was recorded as gone. */
export const CONTEST_OVER_HERE =
  'Do you see it another way? The certificate of this claim is issued, so please write to us below.';

/** Asked with every ruling that is covered or partly covered; the answer may add or change a check. */
export const CATCH_QUESTION = 'What would have caught this before it went back?';
