import { workingDaysWords } from '@/lib/calendar/working';
import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, type Line, Lines, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { cost, costOfNo, fullDay, money } from './words';

type Facts = FactsOf<'approval-asked'>;

export const approvalAsked: Writer<'approval-asked'> = (facts, setting) => {
  const until = fullDay(facts.validUntil, setting);
  const { found, what } = wordsOf(facts, setting);
  return {
    to: 'customer',
    subject: `We need your yes or no: job ${setting.job.number}`,
    summary: `The price would be ${money(facts.gross, setting)}. Please answer by ${until}.`,
    body: (
      <>
        <Title>Your yes or no, please</Title>
        <Para>{found}</Para>
        <Words from="What we found">{facts.reason}</Words>
        <Lines items={[...priceLines(facts, setting), ...moreTime(facts)]} />
        <JobPage setting={setting}>See the findings and answer</JobPage>
        <Next
          what={`${what} Both answers are fine with us.`}
          when={`The price holds until the end of ${until}. Please answer by then. After that day the price is no longer held, and we write to you again. The time we wait for you is not counted in our promise.`}
          costs={`Yes: ${cost(facts.gross, setting)}. No: ${costOfNo(facts, setting)}.`}
        />
      </>
    ),
  };
};

const REPAIRED_ON_YES = 'If you say yes, we repair it. If you say no, your unit comes back unrepaired.';

/** A no sends nothing back where part of a claim is covered: the price is then for the rest. */
function wordsOf(
  { returnFee, isFirst, isAfterInspection, previousGross }: Facts,
  setting: Setting,
): { found: string; what: string } {
  if (returnFee === null) {
    return {
      found: `What your certificate covers is free of charge (${money(0, setting)}), whatever you answer. We found something else beside it, and that has a price. We have stopped work until you answer.`,
      what: 'If you say yes, we repair both parts. If you say no, we repair the covered part and leave the rest as it is.',
    };
  }
  if (isAfterInspection) {
    return {
      found: `The inspection is done, and this is what the repair costs. Nothing is repaired before you say yes. This is the whole price: the ${money(previousGross, setting)} for the inspection is not added to it.`,
      what: REPAIRED_ON_YES,
    };
  }
  if (isFirst) {
    return {
      found:
        'We have looked at your unit, and this is what its repair costs. Nothing is done to it before you say yes.',
      what: REPAIRED_ON_YES,
    };
  }
  return {
    found: 'We found something that changes the price. We have stopped work until you answer.',
    what: 'If you say yes, the repair goes on. If you say no, your unit comes back unrepaired.',
  };
}

function priceLines(
  { revision, gross, previousGross, isFirst, isAfterInspection }: Facts,
  setting: Setting,
): Line[] {
  const of = `(revision ${revision} of the quote)`;
  if (isFirst || isAfterInspection) return [{ term: `Price ${of}`, text: cost(gross, setting) }];
  const change = gross - previousGross;
  return [
    { term: 'Agreed so far', text: cost(previousGross, setting) },
    { term: `New price ${of}`, text: cost(gross, setting) },
    { term: 'Difference', text: `${money(Math.abs(change), setting)} ${change < 0 ? 'less' : 'more'}` },
  ];
}

function moreTime({ furtherDays = 0 }: Facts): Line[] {
  return furtherDays === 0 ? [] : [{ term: 'More time it takes', text: workingDaysWords(furtherDays) }];
}
