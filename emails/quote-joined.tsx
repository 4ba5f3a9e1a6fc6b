import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';

export const quoteJoined: Writer<'quote-joined'> = (_facts, setting) => ({
  to: 'customer',
  subject: `Added to your request: quote ${setting.job.number}`,
  summary: 'You had asked about this unit before. We put both together.',
  body: (
    <>
      <Title>Added to your request</Title>
      <Para>
        You asked us about {setting.job.unit} before, and we had not sent a price yet. We put what you sent
        now with what you sent then. If it was not you, tell us.
      </Para>
      <JobPage setting={setting}>See your request</JobPage>
      <Next
        what="We read both together. Then we send you a price, or we ask you something first."
        when={`Within ${setting.workshop.answerWithin}.`}
        costs="Asking is free. You pay nothing unless you say yes to a price."
      />
    </>
  ),
});
