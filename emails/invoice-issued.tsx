import { JobPage, Next, Para, Title } from './frame';
import { HowToPay, shownReference } from './how-to-pay';
import type { Writer } from './letter';
import { leftSentence } from './money-left';
import { fullDay, money } from './words';

export const invoiceIssued: Writer<'invoice-issued'> = ({ number, balance, dueOn }, setting) => {
  const owes = balance > 0;
  return {
    to: 'customer',
    subject: owes
      ? `Invoice ${number}, ${money(balance, setting)} to pay: job ${setting.job.number}`
      : `Invoice ${number}: job ${setting.job.number}`,
    summary: owes ? `Please pay by ${fullDay(dueOn, setting)}.` : 'It is paid. Keep it with your papers.',
    body: (
      <>
        <Title>{`Invoice ${number}`}</Title>
        <Para>It is on the job page, to read, print and keep.</Para>
        {owes ? <HowToPay balance={balance} reference={number} setting={setting} /> : null}
        <Next
          what={
            owes
              ? `Pay ${money(balance, setting)} and give ${shownReference({ balance, reference: number, setting })} as the reference. We write to you when the money is here.`
              : 'You need to do nothing.'
          }
          when={owes ? `By ${fullDay(dueOn, setting)}.` : 'Now or later: the invoice stays on the job page.'}
          costs={leftSentence(balance, setting)}
        />
        <JobPage setting={setting}>See the job and the invoice</JobPage>
      </>
    ),
  };
};
