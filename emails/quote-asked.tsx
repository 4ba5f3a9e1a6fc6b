import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';

export const quoteAsked: Writer<'quote-asked'> = (_facts, setting) => ({
  to: 'customer',
  subject: `We have your request: quote ${setting.job.number}`,
  summary: `We answer within ${setting.workshop.answerWithin}. Asking is free.`,
  body: (
    <>
      <Title>We have your request</Title>
      <Para>
        You asked us for a price for {setting.job.unit}. Your own page shows what you sent, and the price when
        we have it. Keep its address to yourself: it needs no password.
      </Para>
      <JobPage setting={setting}>See your request</JobPage>
      <Next
        what="We read what you wrote and look at your photos. Then we send you a price, or we ask you something first. Please keep the unit until you have said yes and booked."
        when={`Within ${setting.workshop.answerWithin}.`}
        costs="Asking is free. You pay nothing unless you say yes to a price."
      />
    </>
  ),
});
