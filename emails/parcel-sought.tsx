import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const parcelSought: Writer<'parcel-sought'> = ({ carrier, note }, setting) => {
  const { job, workshop } = setting;
  return {
    to: 'customer',
    subject: `We are looking for your parcel: job ${job.number}`,
    summary: 'It has not come as it should have, and we have asked the carrier.',
    body: (
      <>
        <Title>We are looking for your parcel</Title>
        <Para>
          {`Your unit left us with ${carrier}, and the parcel has not come as it should have. We have asked the carrier where it is.`}
        </Para>
        {note.trim() === '' ? null : <Words from={workshop.name}>{note}</Words>}
        <Next
          what="Has the parcel reached you after all, or do you find a card from the carrier? Write to us on the job page. Otherwise you need do nothing."
          when="We write to you as soon as we know what became of it. Until then your job stays with us."
          costs={`Looking for it costs you nothing (${money(0, setting)}).`}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
