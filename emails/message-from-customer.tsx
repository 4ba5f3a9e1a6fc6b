import { Action, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';

export const messageFromCustomer: Writer<'message-from-customer'> = ({ text, photos = 0 }, setting) => ({
  to: 'workshop',
  subject: `The customer of job ${setting.job.number} wrote`,
  summary: `${setting.job.unit}, ${setting.job.repair}`,
  body: (
    <>
      <Title>A message from the customer</Title>
      <Words from={setting.job.customer}>{text}</Words>
      {photos > 0 ? (
        <Para>{`${photos === 1 ? 'A photo' : `${photos} photos`} came with it: see the job.`}</Para>
      ) : null}
      <Action href={setting.desk}>Answer on the job</Action>
      <Next
        what="Answer on the job, so that the answer is kept with it. An answer to this mail does not reach the customer."
        when="Today shows the message until it is answered, or somebody says on the job that it needs no answer."
        costs="Nothing changes in the price."
      />
    </>
  ),
});
