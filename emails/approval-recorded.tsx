import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Letter, Setting, Writer } from './letter';
import { leftSentence, replacedSentence } from './money-left';
import { ReadyNoMore } from './ready-no-more';
import { AgreedTerms } from './terms-part';
import { ToldPart } from './told-part';
import { LawsWords, RightToWithdraw } from './withdrawal-part';
import { cost, feesOf, fullDay, money } from './words';

type Facts = FactsOf<'approval-recorded'>;

const WRITTEN = { accepted, declined, 'rest-declined': restDeclined } as const;

export const approvalRecorded: Writer<'approval-recorded'> = (facts, setting) =>
  WRITTEN[facts.decision](facts, setting);

const WAITS_ON = 'A part for your unit is on its way to us, and it goes back on the bench when that is here.';

function accepted(facts: Facts, setting: Setting): Letter {
  const {
    revision,
    gross,
    promise,
    startAfter,
    afterNoTo,
    told,
    hadLapsed,
    wasReady = false,
    waitsForPart = false,
    isFirst = false,
    isAfterInspection = false,
  } = facts;
  const price = `${cost(gross, setting)}. ${leftAfterYes(facts, setting)}`;
  const starts = isFirst || isAfterInspection;
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your yes is recorded: job ${job.number}`,
    summary: starts
      ? `You agreed to ${money(gross, setting)} with tax.`
      : `The repair goes on at ${money(gross, setting)}.`,
    body: (
      <>
        <Title>{starts ? 'Thank you, your yes is recorded' : 'Thank you, the repair goes on'}</Title>
        {afterNoTo === undefined ? (
          <Para>
            You said yes to revision {revision} of the quote. Keep this message as your record of it.
          </Para>
        ) : (
          <Para>
            You said no to revision {afterNoTo} of the quote, and then yes after all. The yes is kept as
            revision {revision}, at the same price. Keep this message as your record of it.
          </Para>
        )}
        <ToldPart
          told={told}
          as={`your yes to ${money(gross, setting)} with tax`}
          hadLapsed={hadLapsed}
          setting={setting}
        />
        {wasReady ? <ReadyNoMore /> : null}
        <Moved promise={promise} setting={setting} />
        <Next
          what={
            startAfter
              ? `Work ${starts ? 'starts' : 'goes on'} after ${fullDay(startAfter, setting)}, when your right to withdraw ends. On the job page you can ask us to start before. We write when your unit is proved and ready.`
              : `${waitsForPart ? WAITS_ON : `Your unit goes ${starts ? '' : 'back '}on the bench.`} We write when it is proved and ready.`
          }
          when={
            job.promisedOn
              ? `We promise it ready to go back by ${fullDay(job.promisedOn, setting)}.`
              : 'The job page shows the date as soon as there is one.'
          }
          costs={
            job.kind === 'claim'
              ? `${price} What your certificate covers is free of charge (${money(0, setting)}).`
              : price
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
        {isFirst ? <RightToWithdraw setting={setting} /> : null}
        {isFirst ? <AgreedTerms setting={setting} /> : null}
        {isFirst ? <LawsWords setting={setting} /> : null}
      </>
    ),
  };
}

/** What is left to pay after a yes, and when: by the day of the invoice that was written with it, else when the unit is ready. */
function leftAfterYes({ balance, replaced }: Facts, setting: Setting): string {
  if (balance === undefined) return 'You pay when it is ready.';
  const left = leftSentence(balance, setting);
  if (replaced) return `${left}${replacedSentence(replaced, setting)}`;
  return balance > 0 ? `${left} You pay that when it is ready.` : left;
}

/** After a no, `gross` is the fees alone, and nothing for a claim. */
function declined(facts: Facts, setting: Setting): Letter {
  const { revision, gross, inspectionFee = 0, balance, replaced, yesUntil, told, hadLapsed } = facts;
  const left =
    balance === undefined ? '' : ` ${leftSentence(balance, setting)}${replacedSentence(replaced, setting)}`;
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your no is recorded: job ${job.number}`,
    summary: 'Your unit comes back to you unrepaired.',
    body: (
      <>
        <Title>We send your unit back unrepaired</Title>
        <Para>
          You said no to revision {revision} of the quote.
          {yesUntil ? '' : ' That price no longer applies.'} You need not give a reason.
        </Para>
        <ToldPart told={told} as="your no" hadLapsed={hadLapsed} setting={setting} />
        {yesUntil ? (
          <Para>
            Changed your mind, or pressed the wrong button? You can still say yes at that price, until the end
            of {fullDay(yesUntil, setting)} or until your unit is packed, whichever comes first. The button is
            on the job page.
          </Para>
        ) : null}
        <Next
          what="We close your unit up and pack it. We write again when it is ready to go back."
          when="Within a few days."
          costs={
            gross === 0
              ? `Sending it back is free of charge (${money(0, setting)}).${left}`
              : `With tax: ${feesOf({ returnFee: gross - inspectionFee, inspectionFee }, setting)}.${left}`
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
}

/** A no to the rest of a claim: the covered part goes on, free of charge; `gross` is what an earlier yes still costs. */
function restDeclined(facts: Facts, setting: Setting): Letter {
  const { revision, gross, promise, told, hadLapsed, waitsForPart = false } = facts;
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your no is recorded: job ${job.number}`,
    summary: 'We repair the covered part free of charge.',
    body: (
      <>
        <Title>We repair the covered part</Title>
        <Para>
          You said no to revision {revision} of the quote. That price no longer applies. You need not give a
          reason.
        </Para>
        <ToldPart told={told} as="your no to the rest" hadLapsed={hadLapsed} setting={setting} />
        <Moved promise={promise} setting={setting} />
        <Next
          what={`${waitsForPart ? WAITS_ON : 'Your unit goes back on the bench.'} We repair what the certificate covers and leave the rest as it is.`}
          when={
            job.promisedOn
              ? `We promise it ready to go back by ${fullDay(job.promisedOn, setting)}.`
              : 'The job page shows the date as soon as there is one.'
          }
          costs={
            gross === 0
              ? `The covered repair and the way back are free of charge (${money(0, setting)}).`
              : `The covered repair is free of charge (${money(0, setting)}). ${money(gross, setting)} with tax stays agreed, as you said before.`
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
}

/** The promise before and after, with the reason, where the answer moved it. */
function Moved({ promise, setting }: { promise: Facts['promise']; setting: Setting }) {
  if (!promise) return null;
  return (
    <Lines
      items={[
        { term: 'Date until now', text: fullDay(promise.from, setting) },
        { term: 'New date', text: fullDay(promise.to, setting) },
        { term: 'Why', text: promise.reason },
      ]}
    />
  );
}
