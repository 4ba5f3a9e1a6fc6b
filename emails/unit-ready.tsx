import { postingSentence } from '@/lib/jobs/rules/posting-words';
import { JobPage, Next, Para, Title } from './frame';
import { HowToPay, shownReference } from './how-to-pay';
import type { Writer } from './letter';
import { fullDay, money } from './words';

export const unitReady: Writer<'unit-ready'> = ({ balance, invoice }, setting) => {
  const { job } = setting;
  const owes = balance > 0;
  const reference = invoice?.number ?? job.number;
  return {
    to: 'customer',
    subject: owes
      ? `Ready to go back, ${money(balance, setting)} to pay: job ${job.number}`
      : `Ready to go back: job ${job.number}`,
    summary: `${owes ? '' : 'There is nothing to pay. '}${postingSentence(owes)}`,
    body: (
      <>
        <Title>{job.isRepaired ? 'Repaired, tested and ready' : 'Packed and ready to go back'}</Title>
        <Para>
          {job.isRepaired
            ? 'The repair is done, and every check on its sheet has passed. The readings come with your certificate.'
            : 'Your unit is packed as it came, without a repair.'}
        </Para>
        {invoice ? (
          <Para>
            {owes
              ? `Invoice ${invoice.number} is on the job page.${invoice.dueOn ? ` Please pay it by ${fullDay(invoice.dueOn, setting)}.` : ''}`
              : `Invoice ${invoice.number} is on the job page. It is paid.`}
          </Para>
        ) : null}
        {owes ? <HowToPay balance={balance} reference={reference} setting={setting} /> : null}
        <Next
          what={
            owes
              ? `Pay ${money(balance, setting)} and give ${shownReference({ balance, reference, setting })} as the reference. We then send you the carrier’s reference.`
              : 'We post the unit to you and send you the carrier’s reference.'
          }
          when={postingSentence(owes)}
          costs={costs(balance, owes, (minor) => money(minor, setting))}
        />
        <JobPage setting={setting}>{owes ? 'See the job and what is left to pay' : 'See the job'}</JobPage>
      </>
    ),
  };
};

function costs(balance: number, owes: boolean, shown: (minor: number) => string): string {
  if (owes) return `${shown(balance)} with tax is left to pay.`;
  if (balance < 0) return `You have paid ${shown(-balance)} too much. We give it back the way it came.`;
  return `Nothing is left to pay (${shown(0)}).`;
}
