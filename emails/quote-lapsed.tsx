import { askedWords } from '@/lib/quotes/rules/asked-words';
import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { fullDay } from './words';

export const quoteLapsed: Writer<'quote-lapsed'> = (facts, setting) => {
  const { isFor } = askedWords(facts.isInspection ?? false, '');
  return {
    to: 'customer',
    subject: `This price is no longer held: quote ${setting.job.number}`,
    summary: 'Nothing is owed. Write to us for a new price.',
    body: (
      <>
        <Title>This price is no longer held</Title>
        <Para>
          Our price for the {isFor} of {setting.job.unit} was good until the end of{' '}
          {fullDay(facts.validUntil, setting)}. We have not heard from you, so it has lapsed.
        </Para>
        <JobPage setting={setting}>See the quote</JobPage>
        <Next
          what={`Nothing happens by itself. If you still want the ${isFor}, write to us and we send you a new price.`}
          when="When it suits you."
          costs="You owe us nothing."
        />
      </>
    ),
  };
};
