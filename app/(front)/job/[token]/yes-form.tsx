import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import type { FormAction } from '@/app/ui/forms/form-state';
import { SubmitBar, SubmitButton } from '@/app/ui/forms/submit';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { startRequestWords } from '@/lib/quotes/rules/withdrawal-text';
import { readStartAfter } from '@/lib/quotes/stored-offer-words';
import { termsId } from '@/lib/workshop/terms-id';
import {
  ConsumerPart,
  lastDayToWithdraw,
  StartRequest,
  TermsBox,
} from '../../book/[draft]/[step]/consumer-part';
import type { PartProps } from './part-props';

type YesFormProps = Omit<PartProps, 'token'> & {
  action: FormAction;
  hidden: Record<string, string | number>;
  /** what the button says, and what is agreed to by it */
  yes: string;
  agreed: string;
  /** the page asks for no answer: the button stands in its place, and not at hand all the way down */
  isQuiet?: boolean;
};

/** The yes to a price, with what a yes that makes the contract needs beside it, and the wish for an early start. */
export async function YesForm({ job, workshop, action, hidden, yes, agreed, isQuiet }: YesFormProps) {
  const today = dayInZone(now(), workshop.timeZone);
  const makesContract = !factsOf(job, today).isContractMade;
  const withdrawBy = makesContract ? await lastDayToWithdraw(workshop) : null;
  const startAfter = makesContract ? null : readStartAfter(job, { workshop, today });
  return (
    <>
      {withdrawBy ? (
        // An inspection was done before this contract, so that its fee is not owed after a withdrawal from it.
        <ConsumerPart workshop={workshop} until={withdrawBy} inspectionFee={0} />
      ) : null}
      <ActionForm
        action={action}
        hidden={{ ...hidden, ...(makesContract && { shownTerms: termsId(workshop.termsText) }) }}
        label="Say yes"
      >
        {/* Who has not booked, or came with a claim, has not agreed to them. */}
        {makesContract ? <TermsBox /> : null}
        {withdrawBy ? <StartRequest until={withdrawBy} /> : null}
        {startAfter ? (
          <Checkbox
            name="start"
            label={startRequestWords(startAfter)}
            hint="You need not tick this. Without it we start work after that day."
          />
        ) : null}
        {isQuiet ? (
          <SubmitButton kind="second" label={yes} consequence={agreed} />
        ) : (
          <SubmitBar label={yes} consequence={agreed} />
        )}
      </ActionForm>
    </>
  );
}
