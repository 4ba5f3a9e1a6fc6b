import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { agreedCost, fullDay } from './words';

export const workReopened: Writer<'work-reopened'> = ({ reason, promisedOn, isAgain }, setting) => {
  const { job, workshop } = setting;
  return {
    to: 'customer',
    subject: `Not ready yet after all: job ${job.number}`,
    summary: 'We work on your unit again before it goes back.',
    body: (
      <>
        <Title>We work on your unit again</Title>
        <Para>
          {isAgain
            ? 'Your parcel came back to us. Before we post it again we took your unit to the bench.'
            : 'We wrote that it is ready. Before it was posted we took it back to the bench.'}
        </Para>
        {reason.trim() === '' ? null : <Words from={workshop.name}>{reason}</Words>}
        <Next
          what="We do the work and every check again, and write when the unit is ready."
          when={
            promisedOn
              ? `We promise it ready to go back by ${fullDay(promisedOn, setting)}.`
              : 'As soon as we can. The job page shows where it stands.'
          }
          costs={agreedCost(setting)}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
