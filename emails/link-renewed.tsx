import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { agreedCost, reach } from './words';

export const linkRenewed: Writer<'link-renewed'> = (_facts, setting) => ({
  to: 'customer',
  subject: `New private address for job ${setting.job.number}`,
  summary: 'Older addresses of this job no longer open it.',
  body: (
    <>
      <Title>Your job has a new private address</Title>
      <JobPage setting={setting}>Open the job</JobPage>
      <Para>
        Older addresses of this job no longer open it. Whoever has the new one can see the job and answer for
        you, so pass it on only to people you trust.
      </Para>
      <Next
        what="Use the new address from now on. The job itself goes on as before."
        when="The new address works now."
        costs={agreedCost(setting)}
      />
      {reach(setting) ? <Para>Did you not expect this? {reach(setting)}</Para> : null}
    </>
  ),
});
