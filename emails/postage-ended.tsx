import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money, reach } from './words';

/** The customer of a claim had asked for their postage, and the workshop ends that without paying; the reason is in its own words. */
export const postageEnded: Writer<'postage-ended'> = ({ claimNumber, amount, paid, reason }, setting) => ({
  to: 'customer',
  subject: `About the postage of claim ${showNumber(claimNumber)}`,
  summary: 'We have closed your request for the postage, and say why.',
  body: (
    <>
      <Title>We have closed your request for the postage</Title>
      <Para>
        You asked us to pay back what posting your unit to us cost you.{' '}
        {paid
          ? `${money(paid, setting)} of it is paid back. We do not pay the rest, and this is why.`
          : 'We do not pay it, and this is why.'}
      </Para>
      <Words from={setting.workshop.name}>{reason}</Words>
      <Lines
        items={[
          { term: 'Claim', text: showNumber(claimNumber), isMono: true },
          { term: 'You asked for', text: money(amount, setting) },
        ]}
      />
      <Next
        what="Nothing else changes about your claim."
        when="You need do nothing."
        costs={`Nothing (${money(0, setting)}). What your certificate covers stays free of charge.`}
      />
      <Para>Do you see it another way? {reach(setting) || 'Write to us on the job page.'}</Para>
      <JobPage setting={setting}>See the job</JobPage>
    </>
  ),
});
