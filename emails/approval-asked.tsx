import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { cost, costOfNo, fullDay, money } from './words';

export const approvalAsked: Writer<'approval-asked'> = (facts, setting) => {
  const until = fullDay(facts.validUntil, setting);
  const change = facts.gross - facts.previousGross;
  const isRest = facts.returnFee === null;
  const further = facts.furtherDays ?? 0;
  const isFirst = facts.isFirst ?? false;
  return {
    to: 'customer',
    subject: `We need your yes or no: job ${setting.job.number}`,
    summary: `The price would be ${money(facts.gross, setting)}. Please answer by ${until}.`,
    body: (
      <>
        <Title>Your yes or no, please</Title>
        <Para>
          {isRest
            ? `What your certificate covers is free of charge (${money(0, setting)}), whatever you answer. We found something else beside it, and that has a price. We have stopped work until you answer.`
            : isFirst
              ? 'We have looked at your unit, and this is what its repair costs. Nothing is done to it before you say yes.'
              : 'We found something that changes the price. We have stopped work until you answer.'}
        </Para>
        <Words from="What we found">{facts.reason}</Words>
        <Lines
          items={[
            ...(isFirst ? [] : [{ term: 'Agreed so far', text: cost(facts.previousGross, setting) }]),
            {
              term: `${isFirst ? 'Price' : 'New price'} (revision ${facts.revision} of the quote)`,
              text: cost(facts.gross, setting),
            },
            ...(isFirst
              ? []
              : [
                  {
                    term: 'Difference',
                    text: change < 0 ? `${money(-change, setting)} less` : `${money(change, setting)} more`,
                  },
                ]),
            ...(further > 0
              ? [
                  {
                    term: 'More time it takes',
                    text: further === 1 ? '1 working day' : `${further} working days`,
                  },
                ]
              : []),
          ]}
        />
        <JobPage setting={setting}>See the findings and answer</JobPage>
        <Next
          what={
            isRest
              ? 'If you say yes, we repair both parts. If you say no, we repair the covered part and leave the rest as it is. Both answers are fine with us.'
              : `If you say yes, ${isFirst ? 'we repair it' : 'the repair goes on'}. If you say no, your unit comes back unrepaired. Both answers are fine with us.`
          }
          when={`The price holds until the end of ${until}. Please answer by then. After that day the price is no longer held, and we write to you again. The time we wait for you is not counted in our promise.`}
          costs={`Yes: ${cost(facts.gross, setting)}. No: ${costOfNo(facts, setting)}.`}
        />
      </>
    ),
  };
};
