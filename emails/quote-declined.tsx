import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { fullDay } from './words';

export const quoteDeclined: Writer<'quote-declined'> = ({ yesUntil }, setting) => ({
  to: 'customer',
  subject: `You said no: quote ${setting.job.number}`,
  summary: 'Nothing is booked, and nothing is owed.',
  body: (
    <>
      <Title>You said no to the price</Title>
      <Para>
        That is fine. We do nothing to {setting.job.unit}, and you owe us nothing. If it was not you, tell us.
      </Para>
      {yesUntil ? (
        <Para>
          Changed your mind, or pressed the wrong button? You can still say yes at this price, until the end
          of {fullDay(yesUntil, setting)}. The button is on the page of the quote.
        </Para>
      ) : null}
      <JobPage setting={setting}>See the quote again</JobPage>
      <Next
        what="Nothing. You can ask us for a price again at any time."
        when="When it suits you."
        costs="Nothing."
      />
    </>
  ),
});
