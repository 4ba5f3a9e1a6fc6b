import { showNumber } from '@/lib/numbers/job-number';
import { Action, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';

export const claimContested: Writer<'claim-contested'> = ({ claimNumber, text }, setting) => ({
  to: 'workshop',
  subject: `Claim ${showNumber(claimNumber)} is contested`,
  summary: `Job ${setting.job.number}, ${setting.job.unit}: the customer asks for a second answer.`,
  body: (
    <>
      <Title>The customer contests the ruling</Title>
      <Para>
        Claim {showNumber(claimNumber)} on {setting.job.unit}. A ruling can be contested once; the owner
        answers.
      </Para>
      <Words from="In the customer’s words">{text}</Words>
      <Next
        what="The owner looks at the unit and the photos again, and answers in writing."
        when="The unit stays here as it is until then."
        costs="Nothing for the customer."
      />
      <Action href={setting.desk}>Open the job</Action>
    </>
  ),
});
