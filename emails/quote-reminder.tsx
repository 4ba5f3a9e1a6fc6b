import { askedWords } from '@/lib/quotes/rules/asked-words';
import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { cost, fullDay, money } from './words';

export const quoteReminder: Writer<'quote-reminder'> = (facts, setting) => {
  const until = fullDay(facts.validUntil, setting);
  const words = askedWords(facts.isInspection ?? false, money(facts.gross, setting));
  return {
    to: 'customer',
    subject: `Your price holds a few more days: quote ${setting.job.number}`,
    summary: `${cost(facts.gross, setting)} until ${until}.`,
    body: (
      <>
        <Title>Your price holds a few more days</Title>
        <Para>
          We sent you a price for the {words.isFor} of {setting.job.unit} and have not heard from you. It
          holds until the end of {until}. If you have made up your mind not to, one tap on “No” is all we
          need. We do not write about it again before that day.
        </Para>
        <JobPage setting={setting}>See the price and answer</JobPage>
        <Next
          what="If you say yes, you book next. If you say nothing, the price lapses and nothing else happens."
          when={`The last day is ${until}.`}
          costs={`Yes: ${cost(facts.gross, setting)}, ${words.paid}. No, or no answer: nothing.`}
        />
      </>
    ),
  };
};
