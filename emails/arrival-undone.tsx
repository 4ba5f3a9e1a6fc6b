import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { agreedCost } from './words';

export const arrivalUndone: Writer<'arrival-undone'> = ({ reason, hadPhotos }, setting) => {
  const { job, workshop } = setting;
  return {
    to: 'customer',
    subject: `Your parcel is not here yet after all: job ${job.number}`,
    summary: 'We wrote that your unit is here. That was a mistake of ours.',
    body: (
      <>
        <Title>Your unit is not here yet</Title>
        <Para>
          We wrote that your unit is with us. That was a mistake of ours: another parcel was taken in under
          your job. {hadPhotos ? 'The photos of it are off your job page. ' : ''}We are sorry.
        </Para>
        {reason.trim() === '' ? null : <Words from={workshop.name}>{reason}</Words>}
        <Next
          what="Have you posted it? Then you need do nothing. If not, post it as you booked it: the job page still has what goes with it. If you do not want to send it any more, you can cancel there."
          when="We write to you the day it really arrives. The day that we promised no longer counts; you get another one then."
          costs={agreedCost(setting)}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
