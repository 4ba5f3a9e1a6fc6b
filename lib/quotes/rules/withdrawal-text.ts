import { WITHDRAWAL_DAYS, type WithdrawalRule } from './withdrawal';

/** Who the customer contracts with, as the law wants it named (Art. 6(1)(b), (c)). */
export type Trader = {
  name: string;
  addressLines: readonly string[];
  email: string;
  phone: string;
};

type AppliedRule = Exclude<WithdrawalRule, 'off'>;

// The British regulations call it cancelling; the directive and everybody else withdrawing.
const WORDS = {
  eu: {
    act: 'withdraw from',
    noun: 'withdrawal',
    head: 'Right of withdrawal',
    form: 'Model withdrawal form',
  },
  uk: { act: 'cancel', noun: 'cancellation', head: 'Right to cancel', form: 'Model cancellation form' },
} as const;

/** The trader on one line: 'Quay & Alder, 4 Slip Lane, Sandmouth QM1 4QA, 01632 960101, bench@…'. */
export function traderLine({ name, addressLines, phone, email }: Trader): string {
  return [name, ...addressLines, phone, email].filter((part) => part !== '').join(', ');
}

export type TextPart = { heading: string; paragraphs: readonly string[] };

/**
 * The model instructions for a service contract made on a website, filled in with the trader (Directive 2011/83/EU Annex
 * I(A), as amended by Directive (EU) 2019/2161; SI 2013/3134 Schedule 3 Part A). `address` is the page on which the
 * customer can withdraw. A trader who gives them filled in has informed as the law asks (Art. 6(4)).
 */
export function modelInstructions(rule: AppliedRule, trader: Trader, address: string): TextPart[] {
  const { act, noun, head } = WORDS[rule];
  return [
    {
      heading: head,
      paragraphs: [
        `You have the right to ${act} this contract within ${WITHDRAWAL_DAYS} days without giving any reason.`,
        `The ${noun} period will expire after ${WITHDRAWAL_DAYS} days from the day of the conclusion of the contract.`,
        `To exercise the right ${rule === 'uk' ? 'to cancel' : 'of withdrawal'}, you must inform us (${traderLine(trader)}) of your decision to ${act} this contract by a clear statement (e.g. a letter sent by post or e-mail). You may use the attached model ${noun} form, but it is not obligatory.`,
        `You can also make your statement electronically on our website: ${address}. If you use this option, we will communicate to you an acknowledgement of receipt of such a ${noun} on a durable medium (e.g. by e-mail) without delay.`,
        `To meet the ${noun} deadline, it is sufficient for you to send your communication concerning your exercise of the right ${rule === 'uk' ? 'to cancel' : 'of withdrawal'} before the ${noun} period has expired.`,
      ],
    },
    {
      heading: `Effects of ${noun}`,
      paragraphs: [
        `If you ${act} this contract, we will reimburse to you all payments received from you, without undue delay, and not later than 14 days after the day on which we are informed about your decision to ${act} this contract. We will make the reimbursement using the same means of payment as you used for the initial transaction, unless you have expressly agreed otherwise; in any event, you will not incur any fees as a result of the reimbursement.`,
        `If you requested to begin the performance of services during the ${noun} period, you shall pay us an amount which is in proportion to what has been performed until you have communicated us your ${noun} from this contract, in comparison with the full coverage of the contract.`,
      ],
    },
  ];
}

export type ModelForm = { heading: string; note: string; lines: readonly string[] };

/** The model form to send back on paper or by mail (Annex I(B); SI 2013/3134 Schedule 3 Part B), one line a part. */
export function modelForm(rule: AppliedRule, trader: Trader): ModelForm {
  const { act, form } = WORDS[rule];
  const given = act === 'cancel' ? 'cancel my/our' : 'withdraw from my/our';
  return {
    heading: form,
    note: `Complete and return this form only if you wish to ${act} the contract.`,
    lines: [
      `To ${traderLine(trader)}:`,
      `I/We (*) hereby give notice that I/We (*) ${given} (*) contract for the provision of the following service:`,
      'Ordered on:',
      'Name of consumer(s):',
      'Address of consumer(s):',
      'Signature of consumer(s) (only if this form is notified on paper):',
      'Date:',
      '(*) Delete as appropriate.',
    ],
  };
}

/** The period as it is named before it begins, in the words of the model instructions. */
export const DAYS_TO_WITHDRAW = `the ${WITHDRAWAL_DAYS} days in which you may withdraw`;

/** What the customer says who wants work to start within the period: the wish, and what they know it means. */
export function startRequestWords(until: string): string {
  return `Please start before my right to withdraw ends on ${until}. I know that I then pay for the work done if I withdraw, and that the right is gone once the repair is fully done.`;
}

/**
 * The right in plain words, for the booking, the mail and the private page (Art. 6(1)(h), (j), (k)). `until` is the last
 * day as text; `isStartAsked` is null before the customer has booked; `inspectionFee`, as text, where the price has one, since
 * what is paid apart and in full must be agreed to as such (CJEU C-641/19).
 */
export function rightSentences(o: {
  until: string;
  isStartAsked: boolean | null;
  inspectionFee?: string | null;
}): string[] {
  const right = `You can withdraw from this contract until the end of ${o.until}. You need give no reason.`;
  const gone = 'Once the repair is fully done, the right is gone.';
  const inspected = o.inspectionFee
    ? ` If the inspection is finished by then, you pay its price of ${o.inspectionFee} in full.`
    : '';
  switch (o.isStartAsked) {
    case null:
      return [
        right,
        'We start work after that day, unless you ask us to start before.',
        `If you ask for an early start and then withdraw, you pay for the part of the work that is done by then.${inspected} ${gone}`,
        'If you do not ask for it and withdraw, you owe nothing. What you have paid, you get back within 14 days.',
      ];
    case true:
      return [
        right,
        `You asked us to start before that day. If you withdraw, you pay for the part of the work that is done by then.${inspected} ${gone}`,
        'What you have paid beyond that, you get back within 14 days.',
      ];
    case false:
      return [
        right,
        'You did not ask for an early start, so we start work after that day. If you withdraw, you owe nothing.',
        'What you have paid, you get back within 14 days.',
      ];
  }
}
