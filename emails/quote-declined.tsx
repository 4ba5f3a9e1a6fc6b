import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';

export const quoteDeclined: Writer<'quote-declined'> = (_facts, setting) => ({
  to: 'customer',
  subject: `You said no: quote ${setting.job.number}`,
  summary: 'Nothing is booked, and nothing is owed.',
  body: (
    <>
      <Title>You said no to the price</Title>
      <Para>
        That is fine. We do nothing to {setting.job.unit}, and you owe us nothing. If it was not you, tell us.
      </Para>
      <JobPage setting={setting}>See the quote again</JobPage>
      <Next
        what="Nothing. You can ask us for a price again at any time."
        when="When it suits you."
        costs="Nothing."
      />
    </>
  ),
});
