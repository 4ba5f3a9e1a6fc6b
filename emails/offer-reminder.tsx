import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { cost, costOfNo, fullDay, money } from './words';

export const offerReminder: Writer<'offer-reminder'> = (facts, setting) => {
  const isOfRepair = facts.isFirst || facts.isAfterInspection;
  const until = fullDay(facts.validUntil, setting);
  return {
    to: 'customer',
    subject: `We still need your yes or no: job ${setting.job.number}`,
    summary: `The price of ${money(facts.gross, setting)} holds until ${until}.`,
    body: (
      <>
        <Title>We still need your yes or no</Title>
        <Para>
          We sent you a {isOfRepair ? '' : 'new '}price and have not heard from you. Your unit is safe with
          us. We do not work on it until you answer.
        </Para>
        <Lines
          items={[
            {
              term: `${isOfRepair ? 'Price' : 'New price'} (revision ${facts.revision} of the quote)`,
              text: cost(facts.gross, setting),
            },
            { term: 'It holds until the end of', text: until },
          ]}
        />
        <JobPage setting={setting}>See the findings and answer</JobPage>
        <Next
          what={
            facts.returnFee === null
              ? 'If you say yes, we repair both parts. If you say no, we repair the covered part and leave the rest as it is.'
              : `If you say yes, ${isOfRepair ? 'we repair it' : 'the repair goes on'}. If you say no, your unit comes back unrepaired. Both answers are fine with us.`
          }
          when={`Please answer by ${until}. After that day the price is no longer held. We do not remind you again.`}
          costs={`Yes: ${cost(facts.gross, setting)}. No: ${costOfNo(facts, setting)}.`}
        />
      </>
    ),
  };
};
