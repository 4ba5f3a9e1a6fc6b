import { JobPage, Next, Para, Title } from './frame';
import type { Letter, Setting, Writer } from './letter';
import { cost, fullDay, money } from './words';

const WRITTEN = { accepted, declined, 'rest-declined': restDeclined } as const;

export const approvalRecorded: Writer<'approval-recorded'> = (facts, setting) =>
  WRITTEN[facts.decision](facts.revision, facts.gross, setting);

function accepted(revision: number, gross: number, setting: Setting): Letter {
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your yes is recorded: job ${job.number}`,
    summary: `The repair goes on at ${money(gross, setting)}.`,
    body: (
      <>
        <Title>Thank you, the repair goes on</Title>
        <Para>You said yes to revision {revision} of the quote. Keep this message as your record of it.</Para>
        <Next
          what="Your unit goes back on the bench. We write when it is proved and ready."
          when={
            job.promisedOn
              ? `We promise it ready to go back by ${fullDay(job.promisedOn, setting)}.`
              : 'The job page shows the date as soon as there is one.'
          }
          costs={
            job.kind === 'claim'
              ? `${cost(gross, setting)}. You pay when it is ready. What your certificate covers is free of charge (${money(0, setting)}).`
              : `${cost(gross, setting)}. You pay when it is ready.`
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
}

/** After a no, `owed` is the return fee alone, and nothing for a claim. */
function declined(revision: number, owed: number, setting: Setting): Letter {
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your no is recorded: job ${job.number}`,
    summary: 'Your unit comes back to you unrepaired.',
    body: (
      <>
        <Title>We send your unit back unrepaired</Title>
        <Para>
          You said no to revision {revision} of the quote. That price is off, and you owe us no reason.
        </Para>
        <Next
          what="We close your unit up and pack it. We write again when it is ready to go back."
          when="Within a few days."
          costs={
            owed === 0
              ? `Sending it back is free of charge (${money(0, setting)}).`
              : `The return fee of ${money(owed, setting)} with tax, and nothing else.`
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
}

/** A no to the rest of a claim: the covered part goes on, free of charge; `agreed` is what an earlier yes still costs. */
function restDeclined(revision: number, agreed: number, setting: Setting): Letter {
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Your no is recorded: job ${job.number}`,
    summary: 'We repair the covered part free of charge.',
    body: (
      <>
        <Title>We repair the covered part</Title>
        <Para>
          You said no to revision {revision} of the quote. That price is off, and you owe us no reason.
        </Para>
        <Next
          what="Your unit goes back on the bench. We repair what the certificate covers and leave the rest as it is."
          when={
            job.promisedOn
              ? `We promise it ready to go back by ${fullDay(job.promisedOn, setting)}.`
              : 'The job page shows the date as soon as there is one.'
          }
          costs={
            agreed === 0
              ? `The covered repair and the way back are free of charge (${money(0, setting)}).`
              : `The covered repair is free of charge (${money(0, setting)}). ${money(agreed, setting)} with tax stays agreed, as you said before.`
          }
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
}
