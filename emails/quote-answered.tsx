import { Action, Next, Title, Words } from './frame';
import type { Writer } from './letter';

export const quoteAnswered: Writer<'quote-answered'> = ({ text }, setting) => ({
  to: 'workshop',
  subject: `The customer of quote ${setting.job.number} answered`,
  summary: setting.job.unit,
  body: (
    <>
      <Title>An answer from the customer</Title>
      <Words from={setting.job.customer}>{text}</Words>
      <Action href={setting.desk}>Go on with the quote</Action>
      <Next
        what="Send a price, or ask again. An answer to this mail does not reach the customer."
        when={`We told the customer ${setting.workshop.answerWithin}.`}
        costs="Nothing has been agreed yet."
      />
    </>
  ),
});
