import { askedWords } from '@/lib/quotes/rules/asked-words';
import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { cost, money } from './words';

export const quoteAccepted: Writer<'quote-accepted'> = (facts, setting) => {
  const words = askedWords(facts.isInspection ?? false, money(facts.gross, setting));
  return {
    to: 'customer',
    subject: `You said yes: quote ${setting.job.number}`,
    summary: 'One more step: book, so that we expect your parcel.',
    body: (
      <>
        <Title>You said yes</Title>
        <Para>
          Thank you. The price for the {words.isFor} of {setting.job.unit} is agreed:{' '}
          {cost(facts.gross, setting)}. If it was not you, tell us.
        </Para>
        <JobPage setting={setting}>Go on to book</JobPage>
        <Next
          what="You book in a few short steps. What you told us is filled in. Then you get a packing slip and post the unit."
          when="When it suits you. The agreed price stands."
          costs={`${cost(facts.gross, setting)}, ${words.paid}. You pay nothing now.`}
        />
      </>
    ),
  };
};
