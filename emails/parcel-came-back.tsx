import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';

export const parcelCameBack: Writer<'parcel-came-back'> = ({ reason, hasCertificate }, setting) => {
  const { job, workshop } = setting;
  return {
    to: 'customer',
    subject: `Your parcel came back to us: job ${job.number}`,
    summary: 'It was not delivered. Please tell us whether your address is right.',
    body: (
      <>
        <Title>Your parcel came back to us</Title>
        <Para>
          The carrier brought it back without delivering it. Your unit is here and safe.
          {hasCertificate ? ' Your certificate stands as it was issued.' : ''}
        </Para>
        {reason.trim() === '' ? null : <Words from={workshop.name}>{reason}</Words>}
        <Next
          what="Look at the address on the job page, under “Goes back to”. Write to us there whether it is right, or what has to be put right."
          when="We send it again on the working day after your answer."
          costs="You owe nothing for this now. Should sending it again cost you something, we ask you first."
        />
        <JobPage setting={setting}>See the address and write to us</JobPage>
      </>
    ),
  };
};
