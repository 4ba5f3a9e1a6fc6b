import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { cost, fullDay, money } from './words';

export const approvalAsked: Writer<'approval-asked'> = (facts, setting) => {
  const until = fullDay(facts.validUntil, setting);
  const change = facts.gross - facts.previousGross;
  const isRest = facts.returnFee === null;
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
            : 'We found something that changes the price. We have stopped work until you answer.'}
        </Para>
        <Words from="What we found">{facts.reason}</Words>
        <Lines
          items={[
            { term: 'Agreed so far', text: cost(facts.previousGross, setting) },
            { term: `New price (revision ${facts.revision} of the quote)`, text: cost(facts.gross, setting) },
            {
              term: 'Difference',
              text: change < 0 ? `${money(-change, setting)} less` : `${money(change, setting)} more`,
            },
          ]}
        />
        <JobPage setting={setting}>See the findings and answer</JobPage>
        <Next
          what={
            isRest
              ? 'If you say yes, we repair both parts. If you say no, we repair the covered part and leave the rest as it is. Both answers are fine with us.'
              : 'If you say yes, the repair goes on. If you say no, your unit comes back unrepaired. Both answers are fine with us.'
          }
          when={`The price holds until the end of ${until}. Please answer by then. After that day the price is no longer held, and we write to you again.`}
          costs={`Yes: ${cost(facts.gross, setting)}. No: ${costOfNo(facts, setting)}.`}
        />
      </>
    ),
  };
};

function costOfNo({ returnFee, previousGross }: FactsOf<'approval-asked'>, setting: Setting): string {
  if (returnFee === null) return cost(previousGross, setting);
  return returnFee === 0
    ? `free of charge (${money(0, setting)})`
    : `the return fee of ${money(returnFee, setting)}, and nothing else`;
}
