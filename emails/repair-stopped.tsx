import { backSentence } from '@/lib/invoices/rules/money-words';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { replacedSentence } from './money-left';
import { feesOf, money } from './words';

/** The workshop sends a unit back unrepaired; `gross` is the fees alone. */
export const repairStopped: Writer<'repair-stopped'> = (
  { why, reason, gross, inspectionFee, refund, replaced },
  setting,
) => {
  const { job, workshop } = setting;
  const isAsked = why === 'customer-asked';
  const owed =
    gross === 0
      ? `Sending it back is free of charge (${money(0, setting)}).`
      : `With tax: ${feesOf({ returnFee: gross - inspectionFee, inspectionFee }, setting)}.`;
  return {
    to: 'customer',
    subject: isAsked
      ? `Your unit comes back, as you asked: job ${job.number}`
      : `We cannot repair your unit: job ${job.number}`,
    summary: 'Your unit comes back to you unrepaired.',
    body: (
      <>
        <Title>{isAsked ? 'We send your unit back, as you asked' : 'We cannot repair your unit'}</Title>
        <Words from={workshop.name}>{reason}</Words>
        <Next
          what="We close your unit up and pack it. We write again when it is ready to go back."
          when="Within a few days."
          costs={
            (refund > 0
              ? `${owed} You have paid ${money(refund, setting)} more than that. ${backSentence('it')}`
              : owed) + replacedSentence(replaced, setting)
          }
        />
        {job.kind === 'claim' ? (
          <Para>Your rights by law, as to your money back, stay as they are. Write to us about them.</Para>
        ) : null}
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
