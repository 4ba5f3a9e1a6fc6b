import { JobPage, Next, Title, Words } from './frame';
import type { Writer } from './letter';

export const quoteQuestion: Writer<'quote-question'> = ({ text }, setting) => ({
  to: 'customer',
  subject: `A question before we name a price: quote ${setting.job.number}`,
  summary: `About ${setting.job.unit}. Please answer on your page.`,
  body: (
    <>
      <Title>A question before we name a price</Title>
      <Words from={setting.workshop.name}>{text}</Words>
      <JobPage setting={setting}>Answer, with photos if you like</JobPage>
      <Next
        what="You answer on your page. Then we work out your price."
        when={`When it suits you. We go on within ${setting.workshop.answerWithin} of your answer.`}
        costs="Asking and answering are free."
      />
    </>
  ),
});
