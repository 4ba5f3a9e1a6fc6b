import { JobPage, type Line, Lines, Next, Para, PlainLink, Title } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const referenceCorrected: Writer<'reference-corrected'> = (facts, setting) => {
  const { job } = setting;
  const { carrier, carrierReference, tracking } = facts;
  const lines: Line[] = [{ term: 'Carrier', text: carrier }];
  if (carrierReference) lines.push({ term: 'Carrier’s reference', text: carrierReference, isMono: true });
  if (tracking) lines.push({ term: 'Where it is', text: <PlainLink href={tracking} /> });
  return {
    to: 'customer',
    subject: `The right reference of your parcel: job ${job.number}`,
    summary: 'The reference we wrote to you before was wrong.',
    body: (
      <>
        <Title>This is the right reference</Title>
        <Para>The carrier’s reference in our last mail was wrong. Your parcel is the same.</Para>
        <Lines items={lines} />
        <Next
          what="Use this reference when you look for the parcel or ask the carrier about it."
          when="It comes as it would have come; nothing else has changed."
          costs={`Nothing (${money(0, setting)}).`}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
