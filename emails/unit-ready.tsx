import { backSentence } from '@/lib/invoices/rules/money-words';
import { isHeldForMoney } from '@/lib/jobs/rules/guards';
import { postingSentence } from '@/lib/jobs/rules/posting-words';
import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, Next, Para, Title } from './frame';
import { HowToPay, shownReference } from './how-to-pay';
import type { Writer } from './letter';
import { fullDay, money } from './words';

type Facts = FactsOf<'unit-ready'>;

export const unitReady: Writer<'unit-ready'> = (facts, setting) => {
  const { balance, invoice, asksAddress = false, isWaived = false } = facts;
  const { job } = setting;
  const owes = balance > 0;
  const isHeld = isHeldForMoney({ owed: balance, isOwedWaived: isWaived });
  const reference = invoice?.number ?? job.number;
  const when = asksAddress ? AFTER_ANSWER : postingSentence(isHeld);
  return {
    to: 'customer',
    subject: isHeld
      ? `Ready to go back, ${money(balance, setting)} to pay: job ${job.number}`
      : `Ready to go back: job ${job.number}`,
    summary: `${owes ? '' : 'There is nothing to pay. '}${when}`,
    body: (
      <>
        <Title>{job.isRepaired ? 'Repaired, tested and ready' : 'Packed and ready to go back'}</Title>
        <Para>
          {job.isRepaired
            ? `The repair is done, and every check on its sheet has passed. ${readings(facts)}`.trim()
            : 'Your unit is packed as it came, without a repair.'}
        </Para>
        {invoice ? (
          <Para>
            {owes
              ? `Invoice ${invoice.number} is on the job page.${invoice.dueOn ? ` Please pay it by ${fullDay(invoice.dueOn, setting)}.` : ''}`
              : `Invoice ${invoice.number} is on the job page. It is paid.`}
          </Para>
        ) : null}
        {asksAddress ? (
          <Para>
            Your parcel came back to us, and we have not heard whether your address is right. Look at the job
            page, under “Goes back to”, and write to us there.
          </Para>
        ) : null}
        {owes ? <HowToPay balance={balance} reference={reference} setting={setting} /> : null}
        <Next
          what={
            isHeld
              ? `Pay ${money(balance, setting)} and give ${shownReference({ balance, reference, setting })} as the reference. We then send you the carrier’s reference.`
              : asksAddress
                ? 'Tell us whether your address is right. We then post the unit and send you the carrier’s reference.'
                : 'We post the unit to you and send you the carrier’s reference.'
          }
          when={when}
          costs={costs({ balance, isWaived }, (minor) => money(minor, setting))}
        />
        <JobPage setting={setting}>{owes ? 'See the job and what is left to pay' : 'See the job'}</JobPage>
      </>
    ),
  };
};

const AFTER_ANSWER = 'We post it on the working day after you told us whether your address is right.';

/** A certificate is issued when a unit first leaves: one that left before has it, or gets none. */
function readings({ isAgain, hasCertificate }: Facts): string {
  if (!isAgain) return 'The readings come with your certificate.';
  return hasCertificate ? 'Your certificate stands as it was issued.' : '';
}

function costs(
  { balance, isWaived }: { balance: number; isWaived: boolean },
  shown: (minor: number) => string,
): string {
  if (balance > 0) return `${shown(balance)} with tax is left to pay.${isWaived ? ' It stays owed.' : ''}`;
  if (balance < 0) return `You have paid ${shown(-balance)} too much. ${backSentence('it')}`;
  return `Nothing is left to pay (${shown(0)}).`;
}
