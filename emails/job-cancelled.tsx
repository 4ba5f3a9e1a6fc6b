import { Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const jobCancelled: Writer<'job-cancelled'> = ({ reason }, setting) => ({
  to: 'customer',
  subject: `Job ${setting.job.number} is cancelled`,
  summary: 'Nothing is owed and nothing more happens.',
  body: (
    <>
      <Title>This booking is cancelled</Title>
      <Para>We have taken your booking for {setting.job.unit} off our list.</Para>
      {reason.trim() === '' ? null : <Words from="The reason noted">{reason}</Words>}
      <Next
        what="Nothing. Please do not post the unit. A parcel that is on its way already goes back to you unopened."
        when="The booking ended today."
        costs={`Nothing (${money(0, setting)}).`}
      />
      <Para>You can book again from the price list at any time.</Para>
    </>
  ),
});
