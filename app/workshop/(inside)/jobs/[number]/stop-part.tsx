import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { moveOf } from '@/lib/jobs/rules/stages';
import { STOP_WORDS, STOPS, type Stop } from '@/lib/jobs/rules/stop';
import { formatMoney } from '@/lib/money/amount';
import { feesAfterNo, feesWords } from '@/lib/quotes/rules/after-no';
import { readLinesAfterNo } from '@/lib/quotes/stored-after-no';
import { stopWork } from './bench-actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

/** The way back for a unit that is not repaired after all, where the customer gives no answer on their page. */
export function StopPart({ job, workshop }: Pick<SheetProps, 'job' | 'workshop'>) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const owed = (why: Stop) => {
    const fees = feesAfterNo(readLinesAfterNo(job, workshop, { isReturnFree: why === 'cannot-repair' }));
    const isFree = fees.inspectionFee + fees.returnFee === 0;
    return isFree ? 'Nothing is owed.' : `Owed: ${feesWords(fees, money)}.`;
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
            hint: `${STOP_WORDS[value].consequence} ${owed(value)}`,
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
