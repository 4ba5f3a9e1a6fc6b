import { isHeldForMoney } from '@/lib/jobs/rules/guards';
import { postingSentence } from '@/lib/jobs/rules/posting-words';
import { JobPage, Next, Para, Title } from './frame';
import type { Letter, Setting, Writer } from './letter';
import { leftSentence, towardsSentence } from './money-left';
import { money } from './words';

export const paymentReceived: Writer<'payment-received'> = (facts, setting) =>
  facts.amount < 0 ? givenBack({ ...facts, amount: -facts.amount }, setting) : received(facts, setting);

function received(facts: Paid, setting: Setting): Letter {
  const { amount, balance, isPriceOpen = false, isWaived = false } = facts;
  const { job } = setting;
  const left = isPriceOpen
    ? towardsSentence(balance, setting)
    : `${leftSentence(balance, setting)}${isWaived ? ' It stays owed.' : ''}`;
  return {
    to: 'customer',
    subject: `Thank you, ${money(amount, setting)} is here: job ${job.number}`,
    summary: left,
    body: (
      <>
        <Title>Thank you, your payment is here</Title>
        <Para>{`We have received ${money(amount, setting)}. Your receipt is on the job page.`}</Para>
        <Next
          what={balance > 0 ? 'The job page shows what is left to pay, and how.' : 'You need to do nothing.'}
          when={whenNext(facts)}
          costs={left}
        />
        <JobPage setting={setting}>See the job and the receipt</JobPage>
      </>
    ),
  };
}

function whenNext({ balance, isOver, isReady, isWaived = false }: Paid): string {
  if (isReady) {
    const isHeld = isHeldForMoney({ owed: balance, isOwedWaived: isWaived });
    const posted = isHeld ? 'We post it on the working day after the rest is here.' : postingSentence(false);
    return `${posted} You get the carrier’s reference by mail.`;
  }
  if (!isOver) return 'We write again when there is news of your unit.';
  return balance > 0 ? 'As soon as you can.' : 'Now or later: the receipt stays on the job page.';
}

type Paid = {
  amount: number;
  balance: number;
  isPostage?: boolean | undefined;
  postageLeft?: number | undefined;
  isPriceOpen?: boolean | undefined;
  isOver?: boolean | undefined;
  isReady?: boolean | undefined;
  isWaived?: boolean | undefined;
};

function givenBack(facts: Paid, setting: Setting): Letter {
  const { amount, balance, isPostage, postageLeft, isPriceOpen = false } = facts;
  return {
    to: 'customer',
    subject: `${money(amount, setting)} comes back to you: job ${setting.job.number}`,
    summary: isPostage
      ? 'Your claim is covered, and so is your postage.'
      : 'We have sent the money the way it came.',
    body: (
      <>
        <Title>Money on its way to you</Title>
        <Para>
          {isPostage
            ? postageLeft
              ? `We have paid back ${money(amount, setting)} of what posting your unit to us cost you. ${money(postageLeft, setting)} of it is still to come.`
              : `We have paid back the ${money(amount, setting)} that posting your unit to us cost you. Your claim is covered, so it costs you nothing.`
            : `We have given ${money(amount, setting)} back. The receipt on the job page shows it.`}
        </Para>
        <Next
          what={
            isPostage
              ? 'The money is on its way. You need to do nothing.'
              : 'The money comes the way you paid. You need to do nothing.'
          }
          when="Banks often take a few working days."
          costs={isPriceOpen ? towardsSentence(balance, setting) : leftSentence(balance, setting)}
        />
        <JobPage setting={setting}>{isPostage ? 'See the job' : 'See the job and the receipt'}</JobPage>
      </>
    ),
  };
}
