import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { moveOf } from '@/lib/jobs/rules/stages';
import { goesByWithdrawal, STOP_WORDS, STOPS, type Stop, WITHDRAWAL_INSTEAD } from '@/lib/jobs/rules/stop';
import { formatMoney } from '@/lib/money/amount';
import { feesAfterNo, feesWords } from '@/lib/quotes/rules/after-no';
import { readLinesAfterNo } from '@/lib/quotes/stored-after-no';
import { openWithdrawal } from '@/lib/quotes/stored-withdrawal';
import { stopWork } from './bench-actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

/** The way back for a unit that is not repaired after all, where the customer gives no answer on their page. */
export function StopPart({ job, workshop }: Pick<SheetProps, 'job' | 'workshop'>) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const ifWithdrawn = openWithdrawal(job, dayInZone(now(), workshop.timeZone));
  const hint = (why: Stop) => {
    const fees = feesAfterNo(readLinesAfterNo(job, workshop, { isReturnFree: why === 'cannot-repair' }));
    const owed = fees.inspectionFee + fees.returnFee;
    if (goesByWithdrawal(why, { fees: owed, owed: ifWithdrawn })) return WITHDRAWAL_INSTEAD;
    const costs = owed === 0 ? 'Nothing is owed.' : `Owed: ${feesWords(fees, money)}.`;
    return `${STOP_WORDS[why].consequence} ${costs}`;
  };
  const { label, consequence } = moveOf('stop-repair');
  return (
    <ActionForm action={stopWork.bind(null, job.number)} hidden={carriedFields(job.version)} label={label}>
      <ConfirmButton
        label={label}
        question={`${label}?`}
        confirm={`Yes: ${label.toLowerCase()}`}
        consequence={consequence}
      >
        <RadioGroup
          name="why"
          label="Why it is not repaired"
          choices={STOPS.map((value) => ({
            value,
            label: STOP_WORDS[value].label,
            hint: hint(value),
          }))}
        />
        <TextArea
          name="reason"
          label="In your words"
          hint="The customer reads it, in the mail and in the history of the price."
          rows={3}
          maxLength={1000}
        />
      </ConfirmButton>
    </ActionForm>
  );
}
