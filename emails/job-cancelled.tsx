import { backSentence } from '@/lib/invoices/rules/money-words';
import { againWords } from '@/lib/jobs/rules/again-words';
import { Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const jobCancelled: Writer<'job-cancelled'> = (
  { reason, refund = 0, isQuoted = false, claimAgain },
  setting,
) => {
  const kind = setting.job.kind === 'claim' ? 'claim' : 'repair';
  const what = kind === 'claim' ? 'claim' : 'booking';
  return {
    to: 'customer',
    subject: `Job ${setting.job.number} is cancelled`,
    summary: refund > 0 ? 'We give back what you have paid.' : 'Nothing is owed and nothing more happens.',
    body: (
      <>
        <Title>This {what} is cancelled</Title>
        <Para>
          We have taken your {what} for {setting.job.unit} off our list.
        </Para>
        {reason.trim() === '' ? null : <Words from="The reason noted">{reason}</Words>}
        <Next
          what="Please do not post the unit. A parcel that is on its way already goes back to you unopened."
          when={`The ${what} ended today.`}
          costs={
            refund > 0
              ? `Nothing (${money(0, setting)}). You have paid ${money(refund, setting)}. ${backSentence('it')}`
              : `Cancelling is free of charge (${money(0, setting)}).`
          }
        />
        <Para>{againWords({ kind, isQuoted, claim: claimAgain }, setting.workshop.locale)}</Para>
      </>
    ),
  };
};
