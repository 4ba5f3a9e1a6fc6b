import { REFUND_DAYS } from '@/lib/invoices/rules/owed-back';
import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { leftSentence } from './money-left';
import { money } from './words';

export const creditNoteIssued: Writer<'credit-note-issued'> = (facts, setting) => ({
  to: 'customer',
  subject: `Credit note ${facts.number}, ${money(facts.amount, setting)}: job ${setting.job.number}`,
  summary: `It takes ${money(facts.amount, setting)} off invoice ${facts.invoice}.`,
  body: (
    <>
      <Title>{`Credit note ${facts.number}`}</Title>
      <Para>{`It takes ${money(facts.amount, setting)} off invoice ${facts.invoice}. Keep both.`}</Para>
      <Words from="Why">{facts.reason}</Words>
      <Lines items={[{ term: 'Taken off', text: money(facts.amount, setting) }]} />
      <Next
        what={
          facts.balance < 0
            ? 'We give the money back the way it came. We write when it is on its way.'
            : facts.balance > 0
              ? 'The job page shows what is left to pay, and how.'
              : 'You need to do nothing.'
        }
        when={facts.balance < 0 ? `Within ${REFUND_DAYS} days.` : 'Now or later: it stays on the job page.'}
        costs={leftSentence(facts.balance, setting)}
      />
      <JobPage setting={setting}>See the job and the credit note</JobPage>
    </>
  ),
});
