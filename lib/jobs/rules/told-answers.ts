import { answerMove, type JobFacts, lateAnswerMove, mayMove } from './guards';

/** What staff may write down as told to them, in the order of the form. */
export const TOLD_ANSWERS = ['accepted', 'accepted-after-no', 'declined', 'withdrawn', 'contested'] as const;
export type ToldAnswer = (typeof TOLD_ANSWERS)[number];

/** hasNo: the unit goes back because its customer said no to a price, held still or not */
type Beside = { hasNo: boolean };

const IS_OPEN: Record<ToldAnswer, (facts: JobFacts, beside: Beside) => boolean> = {
  // A yes that makes the contract is given on the customer's page, where the terms are agreed to.
  accepted: (facts) =>
    facts.hasOpenOffer && facts.isContractMade && mayMove('approve', facts, 'staff').allowed,
  // It may have been said while the price was held: its day is asked for, and whoever writes it down decides by that.
  'accepted-after-no': (facts, { hasNo }) =>
    hasNo &&
    facts.isContractMade &&
    mayMove('approve-after-no', { ...facts, isNoHeld: true }, 'staff').allowed,
  declined: (facts) => facts.hasOpenOffer && mayMove(answerMove('declined', facts), facts, 'staff').allowed,
  // A letter posted within the period is in time whenever it comes (Directive 2011/83/EU Art. 11(2)): its day is asked for.
  withdrawn: (facts) =>
    facts.withdrawUntil !== null && mayMove('withdraw', { ...facts, mayWithdraw: true }, 'staff').allowed,
  contested: (facts) => mayMove('contest', facts, 'staff').allowed,
};

/** The answers that a job's customer could have given some other way than on their page. */
export function toldAnswers(facts: JobFacts, beside: Beside): ToldAnswer[] {
  return TOLD_ANSWERS.filter((answer) => IS_OPEN[answer](facts, beside));
}

/** The answers to a price that has lapsed: told while it was held, which their day decides. A yes that makes the contract is not among them. */
export function lateAnswers(facts: JobFacts): Extract<ToldAnswer, 'accepted' | 'declined'>[] {
  return (['accepted', 'declined'] as const).filter(
    (answer) =>
      (answer === 'declined' || facts.isContractMade) &&
      mayMove(lateAnswerMove(answer, facts), facts, 'staff').allowed,
  );
}
