import { JobPage, Next, Title, Words } from './frame';
import type { Writer } from './letter';

export const quoteTurnedDown: Writer<'quote-turned-down'> = ({ text }, setting) => ({
  to: 'customer',
  subject: `We cannot repair this one: quote ${setting.job.number}`,
  summary: `About ${setting.job.unit}. Nothing is owed.`,
  body: (
    <>
      <Title>We cannot repair this one</Title>
      <Words from={setting.workshop.name}>{text}</Words>
      <JobPage setting={setting}>See your request</JobPage>
      <Next
        what="We close the request. You can write to us about it, or ask about another unit."
        when="When it suits you."
        costs="You owe us nothing."
      />
    </>
  ),
});
