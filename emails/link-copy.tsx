import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { agreedCost, reach } from './words';

export const linkCopy: Writer<'link-copy'> = (_facts, setting) => ({
  to: 'customer',
  subject: `The way to your job ${setting.job.number}`,
  summary: 'Your private address, sent again.',
  body: (
    <>
      <Title>Here is your private address again</Title>
      <Para>Somebody asked us on our page to send it again, to the address on file and to no other.</Para>
      <JobPage setting={setting}>Open the job</JobPage>
      <Para>Whoever has this address can see the job and answer for you. Keep it to yourself.</Para>
      <Next
        what="On the job page you see where your unit is, answer us, and write to us."
        when="The address works now. Older ones work as before."
        costs={agreedCost(setting)}
      />
      {reach(setting) ? (
        <Para>Did you not ask for this? You need to do nothing. {reach(setting)}</Para>
      ) : null}
    </>
  ),
});
