import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { factsOf } from '@/lib/jobs/facts';
import { isUnruled, mayMove } from '@/lib/jobs/rules/guards';
import { ifMailed } from '@/lib/mail/mail-server';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { inspectionFeeOf } from '@/lib/quotes/rules/after-no';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { rightSentences, startRequestWords } from '@/lib/quotes/rules/withdrawal-text';
import { readLine } from '@/lib/quotes/stored-lines';
import { owedIfWithdrawn } from '@/lib/quotes/stored-withdrawal';
import { askForStart, withdrawFromContract } from './actions';
import type { PartProps } from './part-props';

/**
 * The way out of the contract within its period (Directive 2011/83/EU Art. 11a): what would be owed now, then one
 * confirmation. Beside it the wish for an early start, for those who did not ask for it when booking.
 */
export function WithdrawPart({ job, token, workshop }: PartProps) {
  const facts = factsOf(job, dayInZone(now(), workshop.timeZone));
  const isOpen = job.stage === 'booked' || mayMove('withdraw', facts, 'customer').allowed;
  if (!facts.mayWithdraw || facts.withdrawUntil === null || !isOpen) return null;
  const until = formatDay(facts.withdrawUntil, workshop.locale, 'weekday');
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const owed = owedIfWithdrawn(job);
  const back = balanceOf(job).paid - owed;
  const isStartAsked = job.startRequestedAt !== null;
  const agreed = agreedOf(job);
  const fee = agreed ? inspectionFeeOf(agreed.lines.map(readLine), agreed.isGross) : 0;
  const inspectionFee = fee > 0 ? money(fee) : null;
  return (
    <section aria-labelledby="withdraw">
      <h2 id="withdraw">Your right to withdraw</h2>
      {rightSentences({ until, isStartAsked, inspectionFee }).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Facts
        items={[
          { term: 'If you withdraw now, you owe', text: owed === 0 ? `Nothing (${money(0)})` : money(owed) },
          { term: 'You get back', text: back > 0 ? `${money(back)}, within 14 days` : null },
        ]}
      />
      {isStartAsked ? null : (
        <ActionForm action={askForStart.bind(null, token)} label="Ask for an early start">
          <SubmitButton
            label="Please start before that day"
            consequence={startRequestWords(until)}
            kind="second"
          />
        </ActionForm>
      )}
      <ActionForm
        action={withdrawFromContract.bind(null, token)}
        hidden={{ shownOwed: owed }}
        label="Withdraw"
      >
        <ConfirmButton
          label="Withdraw from this contract"
          question={`Withdraw from the contract for job ${showNumber(job.number)}, ${job.repair.name}?`}
          confirm="Confirm the withdrawal"
          consequence={consequence(job.stage === 'booked', owed === 0 ? null : money(owed), isUnruled(facts))}
        />
      </ActionForm>
      <p>
        <TextLink href="/withdrawal">The law’s own words, and the form it gives you</TextLink>
      </p>
    </section>
  );
}

function consequence(isBooked: boolean, owed: string | null, isAnswerDue: boolean): string {
  const receipt = ifMailed(' You get a receipt by mail.');
  const pay = owed === null ? 'You owe nothing' : `You owe ${owed} for the work done`;
  if (isAnswerDue)
    return `${pay}. We still look again at your claim, as you asked, and the unit stays here until you have our answer.${receipt}`;
  return isBooked
    ? `${pay}. Please do not post the unit afterwards.${receipt}`
    : `${pay}, and the unit comes back unrepaired.${receipt}`;
}
