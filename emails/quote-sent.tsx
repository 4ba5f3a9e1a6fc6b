import { workingDaysWords } from '@/lib/calendar/working';
import { askedWords } from '@/lib/quotes/rules/asked-words';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { cost, fullDay, money } from './words';

export const quoteSent: Writer<'quote-sent'> = (facts, setting) => {
  const until = fullDay(facts.validUntil, setting);
  const words = askedWords(facts.isInspection ?? false, money(facts.gross, setting));
  const days = workingDaysWords(facts.workingDays);
  return {
    to: 'customer',
    subject: `Your price is here: quote ${setting.job.number}`,
    summary: `${cost(facts.gross, setting)}. It holds until ${until}.`,
    body: (
      <>
        <Title>Your price is here</Title>
        <Para>
          {facts.revision === 1
            ? `We have a price for the ${words.isFor} of ${setting.job.unit}.`
            : `We have a new price for the ${words.isFor} of ${setting.job.unit}. It takes the place of the one we sent before.`}
        </Para>
        <Lines
          items={[
            { term: 'Price', text: cost(facts.gross, setting) },
            { term: 'Holds until the end of', text: until },
            { term: 'Usual time', text: `${days} from the day your unit is here` },
          ]}
        />
        <JobPage setting={setting}>See every line, and say yes or no</JobPage>
        <Next
          what={`If you say yes, you book in a few short steps and post the unit. ${words.isFor === 'inspection' ? 'We inspect it and send you a price for the repair. ' : ''}If you say no, nothing happens. Both answers are fine with us.`}
          when={`Any day until ${until}.`}
          costs={`Yes: ${cost(facts.gross, setting)}, ${words.paid}. No: nothing.`}
        />
      </>
    ),
  };
};
